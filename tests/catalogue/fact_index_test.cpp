// What queries compare is read page by page. That the pages follow every change:
// word_index_test.cpp.

#include "catalogue/fact_index.h"

#include "catalogue/history.h"
#include "catalogue/library_fixture.h"
#include "catalogue/query_parser.h"
#include "catalogue/reader.h"
#include "catalogue/statement.h"

namespace pantile::catalogue {
namespace {

using tests::isOk;
using tests::LibraryTest;
using tests::textureOf;

class FactIndexTest : public LibraryTest {
protected:
    std::int64_t pages() {
        return library().connection().number("SELECT count(*) FROM fact_pages").value();
    }

    std::int64_t count(std::string_view query) {
        const auto found = findTextures(library(), parseQuery(query).value());
        EXPECT_THAT(found, isOk());
        return found ? found->total : -1;
    }
};

TEST_F(FactIndexTest, ReadsPagesOfSomeFactsSideBySide) {
    constexpr int kTextures = 1100;
    auto transaction = library().begin();
    for (std::uint64_t seed = 1; seed <= kTextures; ++seed) add(textureOf(seed));
    ASSERT_THAT(transaction->commit(), isOk());
    auto reader = FactReader::create(library().connection(), {Fact::Presence, Fact::Width});
    ASSERT_THAT(reader, isOk());
    std::vector<std::int64_t> firsts;
    std::int64_t textures = 0;
    while (reader->next().value()) {
        firsts.push_back(reader->firstId());
        for (std::size_t place = 0; place < kTexturesPerFactPage; ++place) {
            EXPECT_EQ(reader->values(0)[place] == kPresentTexture, reader->values(1)[place] > 0);
            textures += reader->values(0)[place];
        }
    }
    EXPECT_EQ(firsts, (std::vector<std::int64_t>{0, 512, 1024}));
    EXPECT_EQ(textures, kTextures);
}

TEST_F(FactIndexTest, DropsPagesWithoutTextures) {
    const core::TextureId id = add(textureOf(1));
    EXPECT_EQ(pages(), static_cast<std::int64_t>(kFacts));
    ASSERT_THAT(removeTextures(library(), {&id, 1}), isOk());
    EXPECT_EQ(count("is:removed"), 1);
    ASSERT_THAT(purgeRemoved(library(), {&id, 1}), isOk());
    EXPECT_EQ(pages(), 0);
}

TEST_F(FactIndexTest, StopsAtAPageThatIsNone) {
    add(textureOf(1));
    forge("UPDATE fact_pages SET numbers = x'0900000000000000000000' WHERE id = 0");
    EXPECT_THAT(findTextures(library(), parseQuery("stars>2").value()),
                tests::failsWith(core::ErrorKind::Corrupt, "index of facts"));
}

// Of ids that nobody gives one after another, too.
TEST_F(FactIndexTest, HoldsForgedIds) {
    add(textureOf(1));
    add(textureOf(2));
    forge("PRAGMA foreign_keys=OFF");
    for (const char* id :
         {"-9223372036854775808", "9223372036854775807", "-1", "4611686018427387904"}) {
        const auto transaction = library().begin();
        forge(std::string("UPDATE textures SET id = ") + id + " WHERE id = 2");
        EXPECT_EQ(count("width>0"), 2) << id;
        EXPECT_THAT(wrongFacts(library().connection()), isOk());
        EXPECT_TRUE(wrongFacts(library().connection())->empty()) << id;
    }
}

// A page may be missing where another fact has one; what it would say is not known then.
TEST_F(FactIndexTest, PassesOverMissingPages) {
    auto transaction = library().begin();
    for (std::uint64_t seed = 1; seed <= 1100; ++seed) add(textureOf(seed));
    ASSERT_THAT(transaction->commit(), isOk());
    forge("DELETE FROM fact_pages WHERE id = (1 << 56) + 1");
    EXPECT_EQ(count("width>0"), 1100 - 512);
    EXPECT_EQ(count("height>0"), 1100);
    EXPECT_EQ(count("canvas:\"\" | -canvas:\"\""), 1100);
}

}  // namespace
}  // namespace pantile::catalogue
