#include "catalogue/history.h"

#include "catalogue/actions.h"
#include "catalogue/id_list.h"
#include "catalogue/revisions.h"
#include "catalogue/sqlite_error.h"
#include "catalogue/statement.h"
#include "catalogue/tag_list.h"

namespace pantile::catalogue {
namespace {

using core::Result;

Result<Revision> readRevision(Statement& row) {
    Revision revision;
    revision.number = row.smallInteger(0);
    revision.at = row.integer(1);
    const int kind = row.smallInteger(2);
    RevisionBefore& before = revision.before;
    before.title = row.textOrNull(3);
    before.author = row.textOrNull(4);
    before.licence = row.textOrNull(5);
    before.source = row.textOrNull(6);
    before.note = row.textOrNull(7);
    if (const auto tags = row.textOrNull(8)) before.tags = splitTags(*tags);
    if (const auto removed = row.integerOrNull(9)) before.removed = *removed != 0;
    before.contentId = row.integerOrNull(10);
    if (!row.isNull(11)) before.stars = row.smallInteger(11);
    PANTILE_RETURN_IF_ERROR(row.columnCheck());
    if (kind < static_cast<int>(RevisionKind::Added) ||
        kind > static_cast<int>(RevisionKind::Content)) {
        return corruptError("revision " + std::to_string(revision.number) + " of a texture");
    }
    revision.kind = static_cast<RevisionKind>(kind);
    return revision;
}

}  // namespace

std::string_view revisionKindName(RevisionKind kind) {
    switch (kind) {
        case RevisionKind::Added:
            return "added";
        case RevisionKind::Text:
            return "text";
        case RevisionKind::Tags:
            return "tags";
        case RevisionKind::Removed:
            return "removed";
        case RevisionKind::Recovered:
            return "recovered";
        case RevisionKind::Reverted:
            return "reverted";
        case RevisionKind::Content:
            return "content";
    }
    return "unknown";
}

Result<std::vector<Revision>> loadRevisions(Connection& connection, core::TextureId id) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement row,
        Statement::prepare(connection,
                           "SELECT number, at, kind, title, author, licence, source, note, tags, "
                           "was_removed, content_id, stars FROM revisions WHERE texture_id = ?1 "
                           "ORDER BY number",
                           {id.value}));
    std::vector<Revision> revisions;
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, row.step());
        if (!more) break;
        PANTILE_ASSIGN_OR_RETURN(Revision revision, readRevision(row));
        revisions.push_back(std::move(revision));
    }
    if (revisions.empty()) return noSuchTexture(id);
    return revisions;
}

Result<std::vector<Revision>> history(const Library& library, core::TextureId id) {
    return loadRevisions(library.connection(), id);
}

Result<std::int64_t> revertTexture(Library& library, core::TextureId id, int revision) {
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    nameAction(library, "Revert texture " + std::to_string(id.value) + " to revision " +
                            std::to_string(revision));
    PANTILE_ASSIGN_OR_RETURN(const TextureState wanted,
                             stateAfter(library.connection(), id, revision));
    PANTILE_ASSIGN_OR_RETURN(const std::int64_t changed,
                             changeTexture(library.connection(), id, RevisionKind::Reverted,
                                           library.now(), [&](TextureState& state) {
                                               state = wanted;
                                               return Result<void>();
                                           }));
    PANTILE_RETURN_IF_ERROR(dropUnusedTags(library.connection()));
    PANTILE_RETURN_IF_ERROR(transaction.commit());
    return changed;
}

}  // namespace pantile::catalogue
