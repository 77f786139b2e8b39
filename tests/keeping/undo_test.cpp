// Whatever was done is undone and done again, to the row.

#include <string>

#include "catalogue/actions.h"
#include "catalogue/integrity.h"
#include "catalogue/library_fixture.h"
#include "catalogue/statement.h"
#include "keeping/deeds.h"
#include "keeping/rounds.h"
#include "keeping/whole_library.h"
#include "support/temporary_folder.h"

namespace pantile::tests {
namespace {

using catalogue::Library;

class UndoTest : public ::testing::Test {
protected:
    void SetUp() override {
        auto opened = Library::open(m_folder.path() / "library.db", deedOptions(m_number));
        ASSERT_THAT(opened, isOk());
        m_library = std::make_unique<Library>(*std::move(opened));
        ASSERT_THAT(prepareForDeeds(*m_library), isOk());
        ASSERT_THAT(catalogue::forgetActions(*m_library), isOk());
    }

    std::string rows() { return keptRows(m_library->connection()).value(); }

    std::int64_t count(const std::string& sql) {
        return m_library->connection().number("SELECT " + sql).value();
    }

    std::int64_t textures() { return count("count(*) FROM textures"); }

    std::int64_t newest() { return count("ifnull(max(id), 0) FROM actions"); }

    bool canUndo() { return catalogue::lastAction(*m_library)->has_value(); }

    void doOne(std::uint64_t seed) {
        ++m_number;
        const auto done = doDeed(*m_library, seed, m_number);
        ASSERT_TRUE(done || isRefusal(done.error())) << ::testing::PrintToString(done.error());
    }

    void expectSound() {
        EXPECT_EQ(catalogue::checkLibrary(*m_library)->problems, std::vector<catalogue::Problem>{});
    }

    TemporaryFolder m_folder;
    std::int64_t m_number = 0;
    std::unique_ptr<Library> m_library;
};

TEST_F(UndoTest, TakesEveryDeedBackToTheRow) {
    int compared = 0;
    for (std::uint64_t seed = 1; seed <= static_cast<std::uint64_t>(rounds(1, 40)); ++seed) {
        for (int i = 0; i < 150; ++i) {
            const std::string before = rows();
            const std::int64_t texturesBefore = textures();
            const std::int64_t newestBefore = newest();
            doOne(seed);
            if (newest() == newestBefore || !canUndo()) continue;
            const std::string after = rows();
            const std::string what = (*catalogue::lastAction(*m_library))->what;
            ++m_number;
            ASSERT_THAT(catalogue::undoLast(*m_library), isOk()) << what;
            if (textures() == texturesBefore) {
                EXPECT_EQ(rows(), before) << what;
                ++compared;
            }
            ASSERT_THAT(catalogue::redoLast(*m_library), isOk()) << what;
            EXPECT_EQ(rows(), after) << what;
        }
        expectSound();
    }
    EXPECT_GT(compared, 50);
}

/// All the way back, as far as that goes, and forth again.
TEST_F(UndoTest, TakesLongRowsOfDeedsBackAndForth) {
    for (std::uint64_t seed = 1; seed <= static_cast<std::uint64_t>(rounds(4, 60)); ++seed) {
        for (int i = 0; i < 60; ++i) doOne(100 + seed);
        const std::string after = rows();
        int undone = 0;
        for (; canUndo(); ++undone) {
            const auto back = catalogue::undoLast(*m_library);
            if (back) continue;
            // A load that was written since stays.
            EXPECT_THAT(back,
                        failsWith(core::ErrorKind::InvalidInput, "written for a board since"));
            break;
        }
        expectSound();
        for (int i = 0; i < undone; ++i) ASSERT_THAT(catalogue::redoLast(*m_library), isOk());
        EXPECT_EQ(rows(), after) << undone;
        expectSound();
    }
}

}  // namespace
}  // namespace pantile::tests
