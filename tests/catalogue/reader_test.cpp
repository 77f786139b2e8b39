#include "catalogue/reader.h"

#include "catalogue/edit.h"
#include "catalogue/library_fixture.h"
#include "catalogue/query_parser.h"
#include "catalogue/shelves.h"
#include "catalogue/writer.h"

namespace pantile::catalogue {
namespace {

using core::ErrorKind;
using core::TextureId;
using tests::failsWith;
using tests::isOk;
using tests::LibraryTest;
using tests::textureOf;
using tests::titled;

class ReaderTest : public LibraryTest {
protected:
    std::vector<std::int64_t> found(const std::string& query, const FindOptions& options = {}) {
        const auto parsed = parseQuery(query);
        EXPECT_THAT(parsed, isOk());
        const auto textures = findTextures(library(), *parsed, options);
        EXPECT_THAT(textures, isOk());
        std::vector<std::int64_t> ids;
        for (const TextureRow& row : textures->rows) ids.push_back(row.id.value);
        return ids;
    }

    std::vector<std::int64_t> sorted(const std::string& key) {
        FindOptions options;
        options.sort = *parseSortKey(key);
        return found("all", options);
    }
};

using Ids = std::vector<std::int64_t>;

TEST_F(ReaderTest, NamesTheIdThatIsNotThere) {
    EXPECT_THAT(readTexture(library(), {41}), failsWith(ErrorKind::NotFound, "41"));
    EXPECT_THAT(readTexture(library(), {-1}), failsWith(ErrorKind::NotFound, "-1"));
    add(textureOf(1));
    const std::vector<TextureId> ids = {{1}, {42}};
    EXPECT_THAT(readRows(library(), ids), failsWith(ErrorKind::NotFound, "42"));
}

TEST_F(ReaderTest, FindsByContent) {
    const core::Texture texture = textureOf(1);
    EXPECT_EQ(findByContent(library(), texture.grid(), texture.palette()).value(), std::nullopt);
    const TextureId id = add(texture);
    EXPECT_EQ(findByContent(library(), texture.grid(), texture.palette()).value(), id);
    EXPECT_EQ(findByContent(library(), texture.grid(), tests::paletteOf(9)).value(), std::nullopt);
    EXPECT_EQ(findByContent(library(), textureOf(2).grid(), texture.palette()).value(),
              std::nullopt);
}

TEST_F(ReaderTest, PagesWithTheTotalOfAll) {
    for (std::uint64_t seed = 1; seed <= 10; ++seed) add(textureOf(seed));
    FindOptions options;
    options.sort.field = SortField::Id;
    options.limit = 3;
    options.offset = 4;
    const auto page = findTextures(library(), *parseQuery("all"), options);
    ASSERT_THAT(page, isOk());
    EXPECT_EQ(page->total, 10);
    EXPECT_EQ(found("all", options), (Ids{5, 6, 7}));
    const auto ids = findIds(library(), *parseQuery("all"), options);
    EXPECT_EQ(ids->front(), TextureId{5});
    options.limit = 0;
    EXPECT_EQ(found("all", options), Ids{});
    options.offset = -1;
    EXPECT_THAT(findIds(library(), *parseQuery("all"), options),
                failsWith(ErrorKind::InvalidInput, "offset"));
}

TEST_F(ReaderTest, SortsByEveryKeyInBothDirections) {
    add(textureOf(1, titled("sailcloth"), {32, 32}, 4));
    now += 10;
    add(textureOf(2, titled("Barnacles"), {16, 16}, 16));
    now += 10;
    add(textureOf(3, titled("foam"), {64, 64}, 2));
    ASSERT_THAT(setEstimate(library(), {1}, {500, 900, "k"}), isOk());
    ASSERT_THAT(setEstimate(library(), {3}, {700, 100, "k"}), isOk());
    now += 10;
    ASSERT_THAT(setText(library(), {{TextureId{1}}}, {{}, "Ebb", {}, {}, {}}), isOk());

    EXPECT_EQ(sorted("id"), (Ids{1, 2, 3}));
    EXPECT_EQ(sorted("-id"), (Ids{3, 2, 1}));
    EXPECT_EQ(sorted("title"), (Ids{2, 3, 1}));
    EXPECT_EQ(sorted("-title"), (Ids{1, 3, 2}));
    EXPECT_EQ(sorted("added"), (Ids{3, 2, 1}));
    EXPECT_EQ(sorted("-added"), (Ids{1, 2, 3}));
    EXPECT_EQ(sorted("changed"), (Ids{1, 3, 2}));
    EXPECT_EQ(sorted("size"), (Ids{2, 1, 3}));
    EXPECT_EQ(sorted("-size"), (Ids{3, 1, 2}));
    EXPECT_EQ(sorted("draw"), (Ids{1, 3, 2}));
    EXPECT_EQ(sorted("-draw"), (Ids{3, 1, 2}));
    EXPECT_EQ(sorted("bytes"), (Ids{3, 1, 2}));
    EXPECT_EQ(sorted("-bytes"), (Ids{1, 3, 2}));
    EXPECT_EQ(sorted("colours"), (Ids{3, 1, 2}));
    EXPECT_EQ(sorted("relevance"), (Ids{3, 2, 1}));
}

TEST_F(ReaderTest, RanksTitlesThatHoldTheWordsFirst) {
    add(textureOf(1, titled("Kelp on slate")));
    add(textureOf(2, titled("Slate", {"kelp"})));
    add(textureOf(3, titled("Rope", {"kelp", "slate"})));
    EXPECT_EQ(found("kelp slate"), (Ids{1, 2, 3}));
    EXPECT_EQ(found("kelp"), (Ids{1, 3, 2}));
}

TEST_F(ReaderTest, ListsTheShelvesOfATextureInTheirOrder) {
    const TextureId id = add(textureOf(1));
    ASSERT_THAT(createShelf(library(), "Quay"), isOk());
    ASSERT_THAT(putOnShelf(library(), {{id}}, "Attic"), isOk());
    ASSERT_THAT(putOnShelf(library(), {{id}}, "Quay"), isOk());
    EXPECT_EQ(readTexture(library(), id)->row.shelves, (std::vector<std::string>{"Quay", "Attic"}));
}

TEST_F(ReaderTest, ReportsForgedPicturesAsDamage) {
    const TextureId id = add(textureOf(1));
    for (const char* forgery :
         {"UPDATE contents SET width = 17", "UPDATE contents SET method = 99",
          "UPDATE contents SET method = 4000000000", "UPDATE contents SET body = x''",
          "UPDATE contents SET fingerprint = fingerprint + 1",
          "UPDATE palettes SET colours = zeroblob(9)", "UPDATE palettes SET transparent = 200",
          "UPDATE textures SET title = char(27) || 'x'"}) {
        const auto transaction = library().begin();
        forge(forgery);
        EXPECT_THAT(readTexture(library(), id), failsWith(ErrorKind::Corrupt, "texture 1"))
            << forgery;
    }
    EXPECT_THAT(readTexture(library(), id), isOk());
}

TEST(SortKeys, AreReadWithTheirDirection) {
    EXPECT_EQ(*parseSortKey("draw"), (SortKey{SortField::Draw, SortDirection::Usual}));
    EXPECT_EQ(*parseSortKey("-title"), (SortKey{SortField::Title, SortDirection::Reversed}));
}

TEST(SortKeys, ThatAreUnknownGetTheNearest) {
    const auto refused = parseSortKey("titel");
    EXPECT_THAT(refused, failsWith(ErrorKind::InvalidInput, "titel"));
    EXPECT_NE(refused.error().hint.find("title"), std::string::npos);
    EXPECT_FALSE(parseSortKey(""));
    EXPECT_FALSE(parseSortKey("--id"));
}

}  // namespace
}  // namespace pantile::catalogue
