#include "catalogue/edit.h"

#include <algorithm>

#include "catalogue/actions.h"
#include "catalogue/contents.h"
#include "catalogue/id_list.h"
#include "catalogue/revisions.h"
#include "catalogue/statement.h"
#include "catalogue/tag_list.h"
#include "catalogue/tags.h"
#include "core/text.h"
#include "core/texture.h"
#include "core/trimmed.h"

namespace pantile::catalogue {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;
using core::TextureId;

/// What a change of that kind does, for the name of the action.
std::string wordsFor(RevisionKind kind) {
    switch (kind) {
        case RevisionKind::Text:
            return "Change the words of ";
        case RevisionKind::Tags:
            return "Change the tags of ";
        case RevisionKind::Removed:
            return "Remove ";
        case RevisionKind::Recovered:
            return "Recover ";
        case RevisionKind::Content:
            return "Change the picture of ";
        default:
            return "Change ";
    }
}

Result<std::int64_t> changeAll(Library& library, std::span<const TextureId> ids, RevisionKind kind,
                               const StateChange& change) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    PANTILE_ASSIGN_OR_RETURN(const auto known, knownIds(connection, ids));
    std::vector<TextureId> changed;
    const std::int64_t now = library.now();
    for (const TextureId id : known) {
        Result<std::int64_t> one = changeTexture(connection, id, kind, now, change);
        if (!one) return one.error().at("texture " + std::to_string(id.value));
        if (*one > 0) changed.push_back(id);
    }
    nameAction(library, wordsFor(kind) + texturesInWords(changed));
    if (kind == RevisionKind::Tags) PANTILE_RETURN_IF_ERROR(dropUnusedTags(connection));
    PANTILE_RETURN_IF_ERROR(transaction.commit());
    return std::ssize(changed);
}

Result<std::int64_t> setRemoved(Library& library, std::span<const TextureId> ids,
                                RevisionKind kind) {
    return changeAll(library, ids, kind, [kind](TextureState& state) {
        state.removed = kind == RevisionKind::Removed;
        return Result<void>();
    });
}

Result<void> checkMayBePurged(Connection& connection, TextureId id) {
    const std::string name = "texture " + std::to_string(id.value);
    PANTILE_ASSIGN_OR_RETURN(const TextureState state, loadState(connection, id));
    if (!state.removed) {
        return Error{ErrorKind::InvalidInput, name + " is not removed", "remove it first"};
    }
    PANTILE_ASSIGN_OR_RETURN(
        const auto loads, allTexts(connection,
                                   "SELECT name FROM loads JOIN load_slots ON load_id = loads.id "
                                   "WHERE texture_id = ?1 ORDER BY name",
                                   {id.value}));
    if (loads.empty()) return {};
    return Error{ErrorKind::InvalidInput,
                 name + " stands in the load '" + core::excerpt(loads.front()) + "'",
                 "remove the load first"};
}

}  // namespace

Result<std::int64_t> setText(Library& library, std::span<const TextureId> ids,
                             const TextPatch& patch) {
    return changeAll(library, ids, RevisionKind::Text, [&](TextureState& state) {
        core::TextureText& text = state.text;
        const auto put = [](std::string& field, const std::optional<std::string>& given) {
            if (given) field = core::trimmed(*given);
        };
        put(text.title, patch.title);
        put(text.author, patch.author);
        put(text.licence, patch.licence);
        put(text.source, patch.source);
        text.note = patch.note.value_or(text.note);
        state.stars = patch.stars.value_or(state.stars);
        return Result<void>();
    });
}

Result<std::int64_t> changeTags(Library& library, std::span<const TextureId> ids,
                                std::span<const std::string> add,
                                std::span<const std::string> drop) {
    for (const std::string& tag : add) PANTILE_RETURN_IF_ERROR(checkNewTag(tag));
    PANTILE_ASSIGN_OR_RETURN(const auto added, meantTags(library.connection(), add));
    PANTILE_ASSIGN_OR_RETURN(const auto dropped, meantTags(library.connection(), drop));
    return changeAll(library, ids, RevisionKind::Tags, [&](TextureState& state) {
        std::vector<std::string>& tags = state.text.tags;
        const auto isDropped = [&](const std::string& tag) {
            return std::find(dropped.begin(), dropped.end(), tag) != dropped.end();
        };
        tags.erase(std::remove_if(tags.begin(), tags.end(), isDropped), tags.end());
        tags.insert(tags.end(), added.begin(), added.end());
        return Result<void>();
    });
}

Result<std::int64_t> setContent(Library& library, TextureId id, const core::Grid& grid,
                                const core::Palette& palette) {
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    PANTILE_RETURN_IF_ERROR(knownIds(library.connection(), {&id, 1}));
    PANTILE_RETURN_IF_ERROR(core::Texture::create(grid, palette));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t content,
                             storeContent(library.connection(), grid, palette));
    PANTILE_ASSIGN_OR_RETURN(
        const std::int64_t changed,
        changeAll(library, {&id, 1}, RevisionKind::Content, [content](TextureState& state) {
            state.contentId = content;
            return Result<void>();
        }));
    PANTILE_RETURN_IF_ERROR(transaction.commit());
    return changed;
}

Result<std::int64_t> removeTextures(Library& library, std::span<const TextureId> ids) {
    return setRemoved(library, ids, RevisionKind::Removed);
}

Result<std::int64_t> recoverTextures(Library& library, std::span<const TextureId> ids) {
    return setRemoved(library, ids, RevisionKind::Recovered);
}

Result<std::int64_t> purgeRemoved(Library& library, std::span<const TextureId> ids) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Destroy " + texturesInWords(ids));
    connection.actionJournal().destroys();
    PANTILE_ASSIGN_OR_RETURN(const auto known, knownIds(connection, ids));
    for (const TextureId id : known) {
        PANTILE_RETURN_IF_ERROR(checkMayBePurged(connection, id));
        PANTILE_RETURN_IF_ERROR(run(connection, "DELETE FROM textures WHERE id = ?1", {id.value}));
    }
    PANTILE_RETURN_IF_ERROR(dropUnusedTags(connection));
    PANTILE_RETURN_IF_ERROR(dropUnusedContents(connection));
    PANTILE_RETURN_IF_ERROR(transaction.commit());
    return static_cast<std::int64_t>(known.size());
}

}  // namespace pantile::catalogue
