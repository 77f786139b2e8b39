#include "catalogue/actions.h"

#include "catalogue/edit.h"
#include "catalogue/sqlite_error.h"
#include "catalogue/statement.h"
#include "catalogue/undo_changes.h"
#include "core/text.h"

namespace pantile::catalogue {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;

constexpr std::string_view kColumns = "SELECT id, at, what, state FROM actions ";

Result<std::vector<Action>> readActions(Connection& connection, std::string_view which,
                                        std::initializer_list<BoundValue> values) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement row,
        Statement::prepare(connection, std::string(kColumns) + std::string(which), values));
    std::vector<Action> actions;
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, row.step());
        if (!more) return actions;
        const int state = row.smallInteger(3);
        if (state < static_cast<int>(ActionState::Done) ||
            state > static_cast<int>(ActionState::DoneForGood)) {
            return corruptError("the list of actions");
        }
        actions.push_back(
            {row.integer(0), row.integer(1), row.text(2), static_cast<ActionState>(state)});
        PANTILE_RETURN_IF_ERROR(row.columnCheck());
    }
}

Result<std::optional<Action>> firstAction(Connection& connection, std::string_view which,
                                          ActionState state) {
    PANTILE_ASSIGN_OR_RETURN(auto found,
                             readActions(connection, which, {static_cast<std::int64_t>(state)}));
    if (found.empty()) return std::optional<Action>();
    return std::optional<Action>(std::move(found.front()));
}

/// The newest that is not undone.
Result<std::optional<Action>> newestDone(Connection& connection) {
    return firstAction(connection, "WHERE state <> ?1 ORDER BY id DESC LIMIT 1",
                       ActionState::Undone);
}

Result<std::optional<Action>> oldestUndone(Connection& connection) {
    return firstAction(connection, "WHERE state = ?1 ORDER BY id LIMIT 1", ActionState::Undone);
}

Result<std::string> changesOf(Connection& connection, std::int64_t action) {
    PANTILE_ASSIGN_OR_RETURN(
        Statement row,
        Statement::prepare(connection,
                           "SELECT body FROM action_changes WHERE action_id = ?1 ORDER BY id",
                           {action}));
    std::string changes;
    for (;;) {
        PANTILE_ASSIGN_OR_RETURN(const bool more, row.step());
        if (!more) return changes;
        changes += row.bytesView(0);
        PANTILE_RETURN_IF_ERROR(row.columnCheck());
    }
}

/// Off while it lives: rows are put back in the order that they went, each by itself.
class ForeignKeysOff {
public:
    explicit ForeignKeysOff(Connection& connection) : m_connection(connection) {
        m_isOff = m_connection.execute("PRAGMA foreign_keys=OFF");
    }

    ForeignKeysOff(const ForeignKeysOff&) = delete;
    ForeignKeysOff& operator=(const ForeignKeysOff&) = delete;

    ~ForeignKeysOff() { (void)m_connection.execute("PRAGMA foreign_keys=ON"); }

    const Result<void>& isOff() const { return m_isOff; }

private:
    Connection& m_connection;
    Result<void> m_isOff;
};

/// Takes an action's changes back and keeps the way forward in their place.
Result<UndoneAction> turnBack(Library& library, const Action& action, ActionState becomes) {
    Connection& connection = library.connection();
    PANTILE_ASSIGN_OR_RETURN(const std::string packed, changesOf(connection, action.id));
    PANTILE_ASSIGN_OR_RETURN(const auto changes, unpackChanges(packed));
    PANTILE_ASSIGN_OR_RETURN(UndoneChanges undone, undoChanges(connection, changes));
    if (!undone.added.empty()) {
        PANTILE_RETURN_IF_ERROR(removeTextures(library, undone.added));
    }
    PANTILE_RETURN_IF_ERROR(storeChanges(connection, action.id, connection.actionJournal().take()));
    PANTILE_RETURN_IF_ERROR(run(connection, "UPDATE actions SET state = ?2 WHERE id = ?1",
                                {action.id, static_cast<std::int64_t>(becomes)}));
    UndoneAction result{action, std::move(undone.newPictures), undone.changedProfiles};
    result.action.state = becomes;
    return result;
}

using ActionChoice = Result<std::optional<Action>> (*)(Connection&);

Result<UndoneAction> turnBackChosen(Library& library, ActionChoice choose, ActionState becomes,
                                    std::string_view verb) {
    Connection& connection = library.connection();
    if (connection.depth > 0) {
        return Error{ErrorKind::Internal, "an action is undone by itself alone",
                     "report this as a fault of the program"};
    }
    const ForeignKeysOff withoutReferences(connection);
    PANTILE_RETURN_IF_ERROR(withoutReferences.isOff());
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    PANTILE_ASSIGN_OR_RETURN(const auto action, choose(connection));
    if (!action) {
        return Error{ErrorKind::NotFound, "there is nothing to " + std::string(verb),
                     "'pantile history' lists what was done"};
    }
    const std::string name = "'" + action->what + "' cannot be " + std::string(verb) + "ne";
    if (action->state == ActionState::DoneForGood) {
        return Error{ErrorKind::InvalidInput, name + ", nor what was done before it",
                     "docs/keeping.md says how far back is kept"};
    }
    auto undone = turnBack(library, *action, becomes);
    if (!undone) return undone.error().at(name);
    PANTILE_RETURN_IF_ERROR(transaction.commit());
    return undone;
}

}  // namespace

Result<std::vector<Action>> listActions(const Library& library, std::int64_t most) {
    return readActions(library.connection(), "ORDER BY id DESC LIMIT ?1", {most});
}

Result<std::optional<Action>> lastAction(const Library& library) {
    PANTILE_ASSIGN_OR_RETURN(auto action, newestDone(library.connection()));
    if (action && action->state == ActionState::DoneForGood) action.reset();
    return action;
}

Result<std::optional<Action>> lastUndone(const Library& library) {
    return oldestUndone(library.connection());
}

Result<UndoneAction> undoLast(Library& library) {
    return turnBackChosen(library, newestDone, ActionState::Undone, "undo");
}

Result<UndoneAction> redoLast(Library& library) {
    return turnBackChosen(library, oldestUndone, ActionState::Done, "redo");
}

void nameAction(Library& library, std::string what) {
    library.connection().actionJournal().name(std::move(what));
}

OneAction::OneAction(Library& library, std::string what) : m_connection(library.connection()) {
    m_connection.actionJournal().beginAction(std::move(what));
}

OneAction::~OneAction() {
    m_connection.actionJournal().endAction();
}

NoAction::NoAction(const Library& library) : m_connection(library.connection()) {
    m_connection.actionJournal().pause();
}

NoAction::~NoAction() {
    m_connection.actionJournal().goOn();
}

Result<void> forgetActions(Library& library) {
    PANTILE_ASSIGN_OR_RETURN(Transaction transaction, library.begin());
    PANTILE_RETURN_IF_ERROR(run(library.connection(), "DELETE FROM actions"));
    return transaction.commit();
}

Result<void> checkActions(Connection& connection) {
    PANTILE_ASSIGN_OR_RETURN(const auto actions, readActions(connection, "ORDER BY id", {}));
    for (const Action& action : actions) {
        PANTILE_ASSIGN_OR_RETURN(const std::string packed, changesOf(connection, action.id));
        PANTILE_ASSIGN_OR_RETURN(
            const auto bytes,
            findNumber(connection, "SELECT bytes FROM actions WHERE id = ?1", {action.id}));
        const bool isWhole = unpackChanges(packed) && bytes == std::ssize(packed);
        if (!isWhole) return corruptError("what is kept to undo '" + action.what + "'");
    }
    return {};
}

std::string texturesInWords(std::span<const core::TextureId> ids) {
    if (ids.size() == 1) return "texture " + std::to_string(ids.front().value);
    return std::to_string(ids.size()) + " textures";
}

std::string nameInWords(std::string_view name) {
    return "'" + core::excerpt(name) + "'";
}

}  // namespace pantile::catalogue
