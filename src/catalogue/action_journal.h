#pragma once

// What the open transaction does to the recorded tables, taken down by triggers and written as part
// of it when it commits. Kept by Transaction, one for each connection.

#include <cstdint>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue/connection.h"
#include "catalogue/row_changes.h"
#include "core/result.h"

namespace pantile::catalogue {

/// So many actions are kept, the newest;
inline constexpr std::int64_t kMostActionsKept = 500;
/// of their changes so many bytes, but those of the newest action always,
inline constexpr std::int64_t kMostActionBytes = std::int64_t{4} << 20U;
/// unless it alone has more than this: then it cannot be undone.
inline constexpr std::int64_t kMostBytesOfAnAction = std::int64_t{32} << 20U;

/// Stored in libraries: never renumber.
enum class ActionState : unsigned char { Done = 1, Undone = 2, DoneForGood = 3 };

class ActionJournal {
public:
    /// From now on changes are taken down. `now` gives unix seconds.
    void start(std::function<std::int64_t()> now) { m_now = std::move(now); }

    bool isTaking() const { return m_now && m_pauses == 0; }

    void pause() { ++m_pauses; }

    void goOn() { --m_pauses; }

    void note(const RowChange& change);

    /// What the open transaction does. The first name given stands.
    void name(std::string what);

    /// The transactions until `endAction` are one action.
    void beginAction(std::string what);
    void endAction();

    /// The open transaction destroys: nothing before can be undone, and no change is kept.
    void destroys() { m_destroys = true; }

    /// The changes of the open transaction, which then counts as having none.
    std::string take();

    /// A transaction, or a savepoint in it, begins; ends with its changes kept; ends undone.
    void open() { m_marks.push_back(m_changes.size()); }

    void keep() { m_marks.pop_back(); }

    void takeBack();

    /// As the last part of the outermost transaction.
    core::Result<void> write(Connection& connection);

    /// The outermost transaction ended.
    void clear();

private:
    core::Result<std::int64_t> actionToWrite(Connection& connection);
    bool isTooLong() const;

    std::function<std::int64_t()> m_now;
    int m_pauses = 0;
    std::string m_changes;
    std::vector<std::size_t> m_marks;
    std::string m_name;
    bool m_destroys = false;
    bool m_spansTransactions = false;
    std::string m_spanName;
    std::int64_t m_spanId = 0;
};

/// Registers note_new(), note_changed() and note_dropped(), which the triggers call.
core::Result<void> addNoteFunctions(Connection& connection);

/// Replaces what is kept of an action. Inside a transaction.
core::Result<void> storeChanges(Connection& connection, std::int64_t action,
                                std::string_view changes);

}  // namespace pantile::catalogue
