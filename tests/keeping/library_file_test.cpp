// Whatever was done to a library: its file makes an equal one.

#include "tasks/library_file.h"

#include <string>

#include "catalogue/integrity.h"
#include "catalogue/library_file_reader.h"
#include "catalogue/library_file_writer.h"
#include "catalogue/library_fixture.h"
#include "keeping/deeds.h"
#include "keeping/rounds.h"
#include "keeping/whole_library.h"
#include "support/temporary_folder.h"

namespace pantile::tests {
namespace {

using catalogue::Library;

std::string fileOf(const Library& library) {
    std::string text;
    EXPECT_THAT(catalogue::writeLibraryFile(library,
                                            [&](std::string_view piece) {
                                                text += piece;
                                                return core::Result<void>();
                                            }),
                isOk());
    return text;
}

TEST(LibraryFile, OfAnyLibraryMakesAnEqualOne) {
    const int seeds = rounds(6, 100);
    const int most = rounds(120, 400);
    for (int seed = 1; seed <= seeds; ++seed) {
        const TemporaryFolder folder;
        std::int64_t number = 0;
        auto library = Library::open(folder.path() / "library.db", deedOptions(number));
        ASSERT_THAT(library, isOk());
        ASSERT_THAT(prepareForDeeds(*library), isOk());
        while (++number < most) {
            const auto done = doDeed(*library, static_cast<std::uint64_t>(seed), number);
            ASSERT_TRUE(done || isRefusal(done.error())) << ::testing::PrintToString(done.error());
        }
        const std::string text = fileOf(*library);
        auto other = Library::open(folder.path() / "other.db", plainOptions());
        ASSERT_THAT(other, isOk());
        ASSERT_THAT(catalogue::readLibraryFile(*other, tasks::textSource(text)), isOk());
        EXPECT_EQ(*keptRows(library->connection()), *keptRows(other->connection())) << seed;
        EXPECT_EQ(fileOf(*other), text) << seed;
    }
}

/// What was taken may be another library, but none that `check` complains of.
TEST(LibraryFile, WithOneByteChangedIsRefusedOrMakesASoundLibrary) {
    const TemporaryFolder folder;
    makeUsedLibrary(folder.path() / "library.db");
    const auto library = Library::open(folder.path() / "library.db", plainOptions());
    ASSERT_THAT(library, isOk());
    const std::string text = fileOf(*library);
    Random random(11);
    int taken = 0;
    for (int i = rounds(150, 5000); i > 0; --i) {
        std::string changed = text;
        constexpr std::string_view kBytes = "0123456789,:[]{}\"\\ nax-\n\x01\xFF";
        const std::size_t at = random.next() % changed.size();
        changed[at] = kBytes[random.next() % kBytes.size()];
        auto other = Library::open(folder.path() / "other.db", plainOptions());
        ASSERT_THAT(other, isOk());
        const auto read = catalogue::readLibraryFile(*other, tasks::textSource(changed));
        if (!read) {
            EXPECT_TRUE(*catalogue::holdsNoRecords(*other));
            continue;
        }
        ++taken;
        EXPECT_EQ(catalogue::checkLibrary(*other)->problems, std::vector<catalogue::Problem>{});
        *other = *Library::open(folder.path() / "empty.db", plainOptions());
        std::filesystem::remove(folder.path() / "other.db");
    }
    EXPECT_GT(taken, 0) << "a letter of a title may be another";
}

}  // namespace
}  // namespace pantile::tests
