#include "catalogue/searches.h"

#include "catalogue/library_fixture.h"

namespace pantile::catalogue {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;
using SearchesTest = tests::LibraryTest;
using Searches = std::vector<SavedSearch>;

TEST_F(SearchesTest, AreKeptInTheOrderOfSaving) {
    const SavedSearch wet{"Wet things", "kelp | \"wet sand\"", "-draw"};
    const SavedSearch best{"Best", "stars>=4", "relevance"};
    ASSERT_THAT(saveSearch(library(), wet), isOk());
    ASSERT_THAT(saveSearch(library(), best), isOk());
    open();
    EXPECT_EQ(*listSearches(library()), (Searches{wet, best}));
    EXPECT_EQ(*readSearch(library(), "WET things"), wet);
    EXPECT_THAT(readSearch(library(), "West"), failsWith(ErrorKind::NotFound, "West"));
}

TEST_F(SearchesTest, AreRenamedAndRemoved) {
    ASSERT_THAT(saveSearch(library(), {"Wet", "kelp"}), isOk());
    ASSERT_THAT(saveSearch(library(), {"Best", "stars:5"}), isOk());
    ASSERT_THAT(renameSearch(library(), "wet", "WET"), isOk());
    EXPECT_THAT(renameSearch(library(), "WET", "best"), failsWith(ErrorKind::AlreadyExists, ""));
    ASSERT_THAT(removeSearch(library(), "best"), isOk());
    EXPECT_EQ(*listSearches(library()), (Searches{{"WET", "kelp"}}));
    EXPECT_THAT(removeSearch(library(), "best"), failsWith(ErrorKind::NotFound, "best"));
}

TEST_F(SearchesTest, AreReadableQueries) {
    EXPECT_THAT(saveSearch(library(), {"Wet", "(kelp"}),
                failsWith(ErrorKind::InvalidInput, "column 1"));
    EXPECT_THAT(saveSearch(library(), {"Wet", "kelp", "depth"}),
                failsWith(ErrorKind::InvalidInput, "depth"));
    EXPECT_THAT(saveSearch(library(), {" ", "kelp"}), failsWith(ErrorKind::InvalidInput, ""));
    ASSERT_THAT(saveSearch(library(), {"Wet", "kelp"}), isOk());
    EXPECT_THAT(saveSearch(library(), {"wet", "sand"}), failsWith(ErrorKind::AlreadyExists, ""));
    EXPECT_EQ(listSearches(library())->size(), 1U);
}

}  // namespace
}  // namespace pantile::catalogue
