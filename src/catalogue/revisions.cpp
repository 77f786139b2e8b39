#include "catalogue/revisions.h"

#include <optional>
#include <string>
#include <string_view>

#include "catalogue/id_list.h"
#include "catalogue/sqlite_error.h"
#include "catalogue/statement.h"
#include "catalogue/tag_list.h"
#include "core/range_check.h"

namespace pantile::catalogue {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;
using core::TextureId;

std::string joinedTags(const std::vector<std::string>& tags) {
    std::string joined;
    for (const std::string& tag : tags) joined += (joined.empty() ? "" : " ") + tag;
    return joined;
}

/// The old value where it was changed, else NULL.
BoundValue oldText(const std::string& before, const std::string& after) {
    if (before == after) return {};
    return std::string_view(before);
}

BoundValue oldNumber(std::int64_t before, std::int64_t after) {
    if (before == after) return {};
    return before;
}

Result<void> noteRevision(Connection& connection, TextureId id, RevisionKind kind, std::int64_t now,
                          const TextureState& before, const TextureState& after) {
    const core::TextureText& old = before.text;
    const core::TextureText& fresh = after.text;
    const std::string oldTags = joinedTags(old.tags);
    PANTILE_RETURN_IF_ERROR(run(
        connection,
        "INSERT INTO revisions (texture_id, number, at, kind, title, author, licence, source, "
        "note, tags, was_removed, content_id, stars) SELECT ?1, revision, ?2, ?3, ?4, ?5, ?6, ?7, "
        "?8, ?9, ?10, ?11, ?12 FROM textures WHERE id = ?1",
        {id.value, now, static_cast<std::int64_t>(kind), oldText(old.title, fresh.title),
         oldText(old.author, fresh.author), oldText(old.licence, fresh.licence),
         oldText(old.source, fresh.source), oldText(old.note, fresh.note),
         oldText(oldTags, joinedTags(fresh.tags)),
         oldNumber(before.removed ? 1 : 0, after.removed ? 1 : 0),
         oldNumber(before.contentId, after.contentId), oldNumber(before.stars, after.stars)}));
    return {};
}

Result<void> checkContentIsFree(Connection& connection, TextureId id, std::int64_t contentId) {
    PANTILE_ASSIGN_OR_RETURN(
        const auto other,
        findNumber(connection, "SELECT id FROM textures WHERE content_id = ?1 AND id <> ?2",
                   {contentId, id.value}));
    if (!other) return {};
    return Error{ErrorKind::AlreadyExists,
                 "texture " + std::to_string(*other) + " has this picture already",
                 "use that one, or purge it first if it was removed"};
}

Result<void> storeState(Connection& connection, TextureId id, std::int64_t now,
                        const TextureState& before, const TextureState& after) {
    const core::TextureText& text = after.text;
    PANTILE_RETURN_IF_ERROR(
        run(connection,
            "UPDATE textures SET title = ?2, author = ?3, licence = ?4, source = ?5, note = ?6, "
            "content_id = ?7, changed_at = ?8, revision = revision + 1, stars = ?10, "
            "removed_at = CASE WHEN ?9 THEN ifnull(removed_at, ?8) END WHERE id = ?1",
            {id.value, text.title, text.author, text.licence, text.source, text.note,
             after.contentId, now, after.removed ? 1 : 0, after.stars}));
    if (before.text.tags != text.tags) {
        PANTILE_RETURN_IF_ERROR(storeTags(connection, id, text.tags));
    }
    if (before.contentId != after.contentId) {
        PANTILE_RETURN_IF_ERROR(
            run(connection, "DELETE FROM estimates WHERE texture_id = ?1", {id.value}));
    }
    return {};
}

void undo(const RevisionBefore& before, TextureState& state) {
    core::TextureText& text = state.text;
    if (before.title) text.title = *before.title;
    if (before.author) text.author = *before.author;
    if (before.licence) text.licence = *before.licence;
    if (before.source) text.source = *before.source;
    if (before.note) text.note = *before.note;
    if (before.tags) text.tags = *before.tags;
    if (before.stars) state.stars = *before.stars;
    if (before.removed) state.removed = *before.removed;
    if (before.contentId) state.contentId = *before.contentId;
}

}  // namespace

Result<TextureState> loadState(Connection& connection, TextureId id) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement row,
        Statement::prepare(connection,
                           "SELECT title, author, licence, source, note, removed_at, content_id, "
                           "stars "
                           "FROM textures WHERE id = ?1",
                           {id.value}));
    PANTILE_ASSIGN_OR_RETURN(const bool found, row.step());
    if (!found) return noSuchTexture(id);
    TextureState state;
    state.text.title = row.text(0);
    state.text.author = row.text(1);
    state.text.licence = row.text(2);
    state.text.source = row.text(3);
    state.text.note = row.text(4);
    state.removed = !row.isNull(5);
    state.contentId = row.integer(6);
    state.stars = row.smallInteger(7);
    PANTILE_RETURN_IF_ERROR(row.columnCheck());
    PANTILE_ASSIGN_OR_RETURN(state.text.tags, loadTags(connection, id));
    return state;
}

Result<std::int64_t> changeTexture(Connection& connection, TextureId id, RevisionKind kind,
                                   std::int64_t now, const StateChange& change) {
    PANTILE_ASSIGN_OR_RETURN(const TextureState before, loadState(connection, id));
    TextureState after = before;
    PANTILE_RETURN_IF_ERROR(change(after));
    core::normaliseTags(after.text.tags);
    PANTILE_RETURN_IF_ERROR(core::checkTextureText(after.text));
    PANTILE_RETURN_IF_ERROR(core::checkRange("the stars", after.stars, 0, kMostStars));
    if (before == after) return std::int64_t{0};
    PANTILE_RETURN_IF_ERROR(checkContentIsFree(connection, id, after.contentId));
    PANTILE_RETURN_IF_ERROR(storeState(connection, id, now, before, after));
    PANTILE_RETURN_IF_ERROR(noteRevision(connection, id, kind, now, before, after));
    return std::int64_t{1};
}

Result<TextureState> stateAfter(Connection& connection, TextureId id, int number) {
    PANTILE_ASSIGN_OR_RETURN(TextureState state, loadState(connection, id));
    PANTILE_ASSIGN_OR_RETURN(const auto revisions, loadRevisions(connection, id));
    if (number < 1 || number > revisions.back().number) {
        return Error{
            ErrorKind::NotFound,
            "texture " + std::to_string(id.value) + " has no revision " + std::to_string(number),
            "it has revisions 1 to " + std::to_string(revisions.back().number)};
    }
    for (auto at = revisions.rbegin(); at != revisions.rend() && at->number > number; ++at) {
        undo(at->before, state);
    }
    return state;
}

}  // namespace pantile::catalogue
