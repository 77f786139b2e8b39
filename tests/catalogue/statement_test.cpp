#include "catalogue/statement.h"

#include <gtest/gtest.h>

#include "support/matchers.h"

namespace pantile::catalogue {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

class StatementTest : public ::testing::Test {
protected:
    void SetUp() override {
        m_connection = *Connection::inMemory();
        ASSERT_THAT(connection().execute("CREATE TABLE buoys (id INTEGER PRIMARY KEY, name TEXT, "
                                         "light BLOB, depth INTEGER) STRICT"),
                    isOk());
    }

    Connection& connection() { return *m_connection; }

private:
    std::unique_ptr<Connection> m_connection;
};

TEST_F(StatementTest, GivesBackWhatWasBound) {
    const std::vector<std::uint8_t> bytes = {0, 255, 7};
    ASSERT_THAT(run(connection(), "INSERT INTO buoys VALUES (?1, ?2, ?3, ?4)",
                    {3, "o'brass \"bell\"", bytes, std::int64_t{-1}}),
                isOk());
    auto statement = Statement::prepare(connection(), "SELECT id, name, light, depth FROM buoys");
    ASSERT_THAT(statement, isOk());
    ASSERT_TRUE(*statement->step());
    EXPECT_EQ(statement->integer(0), 3);
    EXPECT_EQ(statement->text(1), "o'brass \"bell\"");
    EXPECT_EQ(statement->blob(2), bytes);
    EXPECT_EQ(statement->integer(3), -1);
    EXPECT_FALSE(*statement->step());
}

TEST_F(StatementTest, KeepsEmptyTextAndEmptyBytesApartFromNull) {
    ASSERT_THAT(run(connection(), "INSERT INTO buoys VALUES (1, ?1, ?2, ?3)",
                    {std::string_view(), std::span<const std::uint8_t>(), BoundValue()}),
                isOk());
    auto statement = Statement::prepare(connection(), "SELECT name, light, depth FROM buoys");
    ASSERT_TRUE(*statement->step());
    EXPECT_FALSE(statement->isNull(0));
    EXPECT_FALSE(statement->isNull(1));
    EXPECT_TRUE(statement->isNull(2));
    EXPECT_EQ(statement->integerOrNull(2), std::nullopt);
    EXPECT_THAT(statement->columnCheck(), isOk());
}

TEST_F(StatementTest, ReportsAColumnOfAnotherType) {
    ASSERT_THAT(run(connection(), "INSERT INTO buoys VALUES (1, NULL, NULL, NULL)"), isOk());
    auto statement = Statement::prepare(connection(), "SELECT name FROM buoys");
    ASSERT_TRUE(*statement->step());
    EXPECT_EQ(statement->text(0), "");
    EXPECT_THAT(statement->columnCheck(), failsWith(ErrorKind::Corrupt, "name"));
    EXPECT_THAT(statement->step(), failsWith(ErrorKind::Corrupt, "name"));
}

TEST_F(StatementTest, ReportsANumberOutsideInt) {
    auto statement = Statement::prepare(connection(), "SELECT 4000000000");
    ASSERT_TRUE(*statement->step());
    EXPECT_EQ(statement->smallInteger(0), 0);
    EXPECT_THAT(statement->columnCheck(), failsWith(ErrorKind::Corrupt, "damaged"));
}

TEST_F(StatementTest, RefusesASecondStatement) {
    EXPECT_THAT(Statement::prepare(connection(), "SELECT 1; DROP TABLE buoys"),
                failsWith(ErrorKind::Internal, "one statement"));
    EXPECT_THAT(Statement::prepare(connection(), "SELECT 1; "), isOk());
}

TEST_F(StatementTest, RefusesAnotherNumberOfValues) {
    EXPECT_THAT(run(connection(), "INSERT INTO buoys VALUES (?1, ?2, NULL, NULL)", {1}),
                failsWith(ErrorKind::Internal, "takes 2 values, not 1"));
}

// SQLite documentation, 'STRICT Tables': a value of another type is refused.
TEST_F(StatementTest, StrictTablesRefuseTextInABlobColumn) {
    EXPECT_FALSE(run(connection(), "INSERT INTO buoys VALUES (1, 'x', ?1, 0)", {"text"}));
}

}  // namespace
}  // namespace pantile::catalogue
