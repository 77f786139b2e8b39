#include "catalogue/writer.h"

#include <limits>

#include "catalogue/actions.h"
#include "catalogue/contents.h"
#include "catalogue/fact_index.h"
#include "catalogue/id_list.h"
#include "catalogue/index_changes.h"
#include "catalogue/revisions.h"
#include "catalogue/statement.h"
#include "catalogue/tag_list.h"
#include "core/range_check.h"
#include "core/text.h"

namespace pantile::catalogue {
namespace {

using core::Result;
using core::TextureId;

Result<TextureId> insertTexture(Library& library, const core::Texture& texture,
                                std::int64_t contentId) {
    Connection& connection = library.connection();
    const core::TextureText& text = texture.text();
    const std::int64_t now = library.now();
    PANTILE_RETURN_IF_ERROR(
        run(connection,
            "INSERT INTO textures (content_id, title, author, licence, source, note, added_at, "
            "changed_at, revision) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?7, 1)",
            {contentId, text.title, text.author, text.licence, text.source, text.note, now}));
    const TextureId id{connection.lastInsertedId()};
    PANTILE_ASSIGN_OR_RETURN(auto tags, meantTags(connection, text.tags));
    core::normaliseTags(tags);
    PANTILE_RETURN_IF_ERROR(storeTags(connection, id, tags));
    PANTILE_RETURN_IF_ERROR(run(
        connection, "INSERT INTO revisions (texture_id, number, at, kind) VALUES (?1, 1, ?2, ?3)",
        {id.value, now, static_cast<std::int64_t>(RevisionKind::Added)}));
    return id;
}

Result<AddedTexture> addIn(Library& library, const core::Texture& texture) {
    using Outcome = AddedTexture::Outcome;
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t content,
                             storeContent(connection, texture.grid(), texture.palette()));
    PANTILE_ASSIGN_OR_RETURN(
        const auto known,
        findNumber(connection, "SELECT id FROM textures WHERE content_id = ?1", {content}));
    if (!known) {
        PANTILE_ASSIGN_OR_RETURN(const TextureId id, insertTexture(library, texture, content));
        return AddedTexture{id, Outcome::Added};
    }
    const TextureId id{*known};
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t recovered,
                             changeTexture(connection, id, RevisionKind::Recovered, library.now(),
                                           [](TextureState& state) {
                                               state.removed = false;
                                               return Result<void>();
                                           }));
    return AddedTexture{id, recovered > 0 ? Outcome::Recovered : Outcome::AlreadyThere};
}

}  // namespace

Result<AddedTexture> addTexture(Library& library, const core::Texture& texture) {
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Add texture " + nameInWords(texture.text().title));
    PANTILE_ASSIGN_OR_RETURN(const AddedTexture added, addIn(library, texture));
    PANTILE_RETURN_IF_ERROR(transaction.commit());
    return added;
}

Result<void> setEstimate(Library& library, TextureId id, const Estimate& estimate) {
    constexpr std::int64_t kMost = std::numeric_limits<std::int64_t>::max();
    PANTILE_RETURN_IF_ERROR(core::checkRange("the time to draw in ms", estimate.drawMs, 0, kMost));
    PANTILE_RETURN_IF_ERROR(core::checkRange("the bytes in a load", estimate.loadBytes, 0, kMost));
    PANTILE_RETURN_IF_ERROR(
        core::checkText(estimate.profileKey, {"profile key", kMaxProfileKeyCharacters}));
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    PANTILE_RETURN_IF_ERROR(knownIds(library.connection(), {&id, 1}));
    PANTILE_RETURN_IF_ERROR(
        run(library.connection(),
            "INSERT INTO estimates (texture_id, draw_ms, load_bytes, profile_key) "
            "VALUES (?1, ?2, ?3, ?4) ON CONFLICT (texture_id) DO UPDATE SET draw_ms = ?2, "
            "load_bytes = ?3, profile_key = ?4",
            {id.value, estimate.drawMs, estimate.loadBytes, estimate.profileKey}));
    return transaction.commit();
}

Result<void> dropEstimate(Library& library, TextureId id) {
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    PANTILE_RETURN_IF_ERROR(
        run(library.connection(), "DELETE FROM estimates WHERE texture_id = ?1", {id.value}));
    return transaction.commit();
}

Result<void> setSeam(Library& library, TextureId id, std::int64_t hundredths) {
    constexpr std::int64_t kMost = std::numeric_limits<std::int64_t>::max();
    PANTILE_RETURN_IF_ERROR(core::checkRange("the seam in hundredths", hundredths, 0, kMost));
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    PANTILE_RETURN_IF_ERROR(knownIds(library.connection(), {&id, 1}));
    PANTILE_RETURN_IF_ERROR(run(library.connection(),
                                "UPDATE contents SET seam = ?2 WHERE id = (SELECT content_id FROM "
                                "textures WHERE id = ?1)",
                                {id.value, hundredths}));
    return transaction.commit();
}

Result<std::vector<TextureId>> texturesWithoutSeam(const Library& library) {
    Connection& connection = library.connection();
    PANTILE_RETURN_IF_ERROR(connection.indexChanges().write(connection));
    PANTILE_ASSIGN_OR_RETURN(FactReader reader,
                             FactReader::create(connection, {Fact::Presence, Fact::Seam}));
    std::vector<TextureId> ids;
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, reader.next());
        if (!more) return ids;
        for (std::size_t place = 0; place < kTexturesPerFactPage; ++place) {
            const bool isThere = reader.values(0)[place] != kNoTexture;
            if (!isThere || reader.values(1)[place] != kUnknownFact) continue;
            ids.push_back({reader.firstId() + static_cast<std::int64_t>(place)});
        }
    }
}

}  // namespace pantile::catalogue
