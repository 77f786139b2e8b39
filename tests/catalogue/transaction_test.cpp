#include "catalogue/transaction.h"

#include <gtest/gtest.h>

#include "catalogue/statement.h"
#include "support/matchers.h"
#include "support/temporary_folder.h"

namespace pantile::catalogue {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

class TransactionTest : public ::testing::Test {
protected:
    void SetUp() override {
        m_connection = open();
        ASSERT_THAT(connection().execute("CREATE TABLE nets (id INTEGER PRIMARY KEY)"), isOk());
    }

    std::unique_ptr<Connection> open() {
        return *Connection::open(m_folder.path() / "nets.db", FileMode::ReadWriteOrCreate,
                                 std::chrono::milliseconds(0));
    }

    Connection& connection() { return *m_connection; }

    void insert(int id) {
        EXPECT_THAT(run(connection(), "INSERT INTO nets VALUES (?1)", {id}), isOk());
    }

    std::vector<std::int64_t> ids() {
        return *allNumbers(connection(), "SELECT id FROM nets ORDER BY id");
    }

private:
    tests::TemporaryFolder m_folder;
    std::unique_ptr<Connection> m_connection;
};

TEST_F(TransactionTest, KeepsWhatWasCommitted) {
    auto transaction = Transaction::begin(connection());
    insert(1);
    ASSERT_THAT(transaction->commit(), isOk());
    EXPECT_EQ(ids(), (std::vector<std::int64_t>{1}));
}

TEST_F(TransactionTest, RollsBackUnlessCommitted) {
    {
        const auto transaction = Transaction::begin(connection());
        insert(1);
    }
    EXPECT_TRUE(ids().empty());
    EXPECT_FALSE(connection().inTransaction());
}

TEST_F(TransactionTest, AnInnerOneIsUndoneAlone) {
    auto outer = Transaction::begin(connection());
    insert(1);
    {
        const auto inner = Transaction::begin(connection());
        insert(2);
    }
    {
        auto inner = Transaction::begin(connection());
        insert(3);
        ASSERT_THAT(inner->commit(), isOk());
    }
    ASSERT_THAT(outer->commit(), isOk());
    EXPECT_EQ(ids(), (std::vector<std::int64_t>{1, 3}));
}

TEST_F(TransactionTest, AnOuterOneUndoesWhatTheInnerCommitted) {
    {
        const auto outer = Transaction::begin(connection());
        auto inner = Transaction::begin(connection());
        insert(1);
        ASSERT_THAT(inner->commit(), isOk());
    }
    EXPECT_TRUE(ids().empty());
}

TEST_F(TransactionTest, TakesTheWriteLockAtOnce) {
    const auto other = open();
    const auto mine = Transaction::begin(connection());
    EXPECT_THAT(Transaction::begin(*other), failsWith(ErrorKind::Busy, "another program"));
    EXPECT_THAT(Transaction::beginReading(*other), isOk());
}

// SQLite rolls back all of a transaction on some failures. What comes after must not be written
// outside of it.
TEST_F(TransactionTest, GoesNoFurtherAfterSqliteGaveUpTheWhole) {
    auto outer = Transaction::begin(connection());
    insert(1);
    ASSERT_THAT(connection().execute("ROLLBACK"), isOk());
    EXPECT_THAT(Transaction::begin(connection()), failsWith(ErrorKind::Io, "undone"));
    EXPECT_THAT(outer->commit(), failsWith(ErrorKind::Io, "undone"));
    auto fresh = Transaction::begin(connection());
    ASSERT_THAT(fresh, isOk());
    insert(2);
    ASSERT_THAT(fresh->commit(), isOk());
    EXPECT_EQ(ids(), (std::vector<std::int64_t>{2}));
}

}  // namespace
}  // namespace pantile::catalogue
