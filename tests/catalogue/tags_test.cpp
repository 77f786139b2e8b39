#include "catalogue/tags.h"

#include "catalogue/history.h"
#include "catalogue/integrity.h"
#include "catalogue/library_fixture.h"
#include "catalogue/query_parser.h"
#include "catalogue/reader.h"

namespace pantile::catalogue {
namespace {

using core::ErrorKind;
using core::TextureId;
using tests::failsWith;
using tests::isOk;
using tests::LibraryTest;
using tests::textureOf;
using tests::titled;
using Counts = std::vector<TagCount>;
using Words = std::vector<std::string>;

class TagsTest : public LibraryTest {
protected:
    void SetUp() override {
        add(textureOf(1, titled("a", {"stone", "grey"})));
        add(textureOf(2, titled("b", {"stone/slate", "grey"})));
        add(textureOf(3, titled("c", {"kelp"})));
        add(textureOf(4, titled("d", {"stonework"})));
    }

    void TearDown() override {
        EXPECT_EQ(checkLibrary(library())->problems, std::vector<Problem>{});
    }

    Words tagsOf(std::int64_t id) { return readTexture(library(), {id})->row.tags; }

    std::vector<TextureId> found(std::string_view query) {
        FindOptions byId;
        byId.sort.field = SortField::Id;
        return findIds(library(), parseQuery(query).value(), byId).value();
    }
};

TEST_F(TagsTest, AreListedWithTheTexturesNotRemoved) {
    ASSERT_THAT(removeTextures(library(), {{TextureId{3}}}), isOk());
    EXPECT_EQ(
        *listTags(library()),
        (Counts{{"grey", 2}, {"kelp", 0}, {"stone", 1}, {"stone/slate", 1}, {"stonework", 1}}));
}

TEST_F(TagsTest, AreSuggestedByTheBeginningOfAnyPart) {
    EXPECT_EQ(*suggestTags(library(), "STO", 10),
              (Counts{{"stone", 1}, {"stone/slate", 1}, {"stonework", 1}}));
    EXPECT_EQ(*suggestTags(library(), "sl", 10), (Counts{{"stone/slate", 1}}));
    EXPECT_EQ(*suggestTags(library(), "", 1), (Counts{{"grey", 2}})) << "the most used first";
    EXPECT_EQ(*suggestTags(library(), "%", 10), Counts{});
    ASSERT_THAT(addTagAlias(library(), "Seaweed", "kelp"), isOk());
    EXPECT_EQ(*suggestTags(library(), "sea", 10), (Counts{{"kelp", 1}}));
}

TEST_F(TagsTest, AreRenamedWithThoseBelow) {
    ASSERT_THAT(removeTextures(library(), {{TextureId{1}}}), isOk());
    EXPECT_EQ(renameTag(library(), "STONE", "rock").value(), 2);
    EXPECT_EQ(tagsOf(1), (Words{"grey", "rock"})) << "removed ones too";
    EXPECT_EQ(tagsOf(2), (Words{"grey", "rock/slate"}));
    EXPECT_EQ(tagsOf(4), (Words{"stonework"}));
    EXPECT_EQ(renameTag(library(), "kelp", "Kelp").value(), 1) << "its own name in other letters";
    EXPECT_EQ(found("tag:kelp"), (std::vector<TextureId>{{3}}));
    ASSERT_THAT(revertTexture(library(), {2}, 1), isOk());
    EXPECT_EQ(tagsOf(2), (Words{"grey", "stone/slate"}));
}

TEST_F(TagsTest, AreTheSameInOtherLetters) {
    EXPECT_EQ(changeTags(library(), {{TextureId{3}}}, {{"STONE", "Grey", "New", "new"}}, {{"KELP"}})
                  .value(),
              1);
    EXPECT_EQ(tagsOf(3), (Words{"New", "grey", "stone"}));
    const auto added = add(textureOf(5, titled("e", {"Kelp", "NEW", "Grey"})));
    EXPECT_EQ(tagsOf(added.value), (Words{"Kelp", "New", "grey"})) << "no texture has kelp now";
    EXPECT_EQ(changeTags(library(), {{TextureId{3}}}, {{"NEW/A/b", "STONE/Slate", "stone/X"}}, {})
                  .value(),
              1);
    EXPECT_EQ(tagsOf(3), (Words{"New", "New/A/b", "grey", "stone", "stone/X", "stone/slate"}));
}

TEST_F(TagsTest, HaveNoEmptyLevels) {
    for (const std::string tag : {"/x", "y/", "a//b", "/"}) {
        EXPECT_THAT(changeTags(library(), {{TextureId{1}}}, {{tag}}, {}),
                    failsWith(ErrorKind::InvalidInput, "one of its levels is empty"));
        EXPECT_THAT(renameTag(library(), "kelp", tag), failsWith(ErrorKind::InvalidInput, tag));
        EXPECT_THAT(addTagAlias(library(), tag, "kelp"), failsWith(ErrorKind::InvalidInput, tag));
    }
    EXPECT_THAT(checkNewTag("a/b/c"), isOk());
    // Older libraries may have them, and are rid of them.
    add(textureOf(6, titled("f", {"a//b"})));
    EXPECT_EQ(changeTags(library(), {{TextureId{5}}}, {}, {{"a//b"}}).value(), 1);
}

TEST_F(TagsTest, UnknownOnesAreNamedWithTheNearest) {
    ASSERT_THAT(addTagAlias(library(), "Seaweed", "kelp"), isOk());
    const auto unknown = [&](const Words& words) { return unknownTags(library(), words).value(); };
    EXPECT_EQ(unknown({"stone", "STONE/slate", "sEAWEED", "kelp"}), std::vector<UnknownTag>{});
    EXPECT_EQ(
        unknown({"klep", "seawed", "quite-other"}),
        (std::vector<UnknownTag>{{"klep", "kelp"}, {"seawed", "seaweed"}, {"quite-other", ""}}));
    add(textureOf(5, titled("e", {"Net/Old"})));
    EXPECT_EQ(unknown({"net"}), std::vector<UnknownTag>{}) << "it lies above one";
}

TEST_F(TagsTest, OtherWordsForThemAreGivenOnce) {
    ASSERT_THAT(addTagAlias(library(), "boulder", "stone"), isOk());
    const auto again = addTagAlias(library(), "Boulder", "kelp");
    ASSERT_THAT(
        again, failsWith(ErrorKind::AlreadyExists, "'Boulder' stands for the tag 'stone' already"));
    EXPECT_NE(again.error().hint.find("tags unalias Boulder"), std::string::npos);
    EXPECT_THAT(renameTag(library(), "kelp", "boulder"),
                failsWith(ErrorKind::AlreadyExists, "'boulder' stands for the tag 'stone'"));
    EXPECT_THAT(mergeTag(library(), "stone", "Stone"),
                failsWith(ErrorKind::InvalidInput, "'stone' cannot be merged into itself"));
}

TEST_F(TagsTest, AreNotRenamedToOneThatIsThere) {
    EXPECT_THAT(renameTag(library(), "kelp", "GREY"), failsWith(ErrorKind::AlreadyExists, "grey"));
    EXPECT_THAT(renameTag(library(), "kelp", "two words"), failsWith(ErrorKind::InvalidInput, ""));
    EXPECT_THAT(renameTag(library(), "kelo", "x"), failsWith(ErrorKind::NotFound, "kelo"));
    EXPECT_THAT(renameTag(library(), "stone", std::string(38, 'x')),
                failsWith(ErrorKind::TooLarge, ""))
        << "stone/slate would be too long";
    EXPECT_EQ(tagsOf(1), (Words{"grey", "stone"})) << "nothing is half renamed";
}

TEST_F(TagsTest, AreMerged) {
    EXPECT_EQ(mergeTag(library(), "stone", "grey").value(), 2);
    EXPECT_EQ(tagsOf(1), (Words{"grey"}));
    EXPECT_EQ(tagsOf(2), (Words{"grey", "grey/slate"}));
    EXPECT_THAT(mergeTag(library(), "grey/slate", "grey"),
                failsWith(ErrorKind::InvalidInput, "below"));
    EXPECT_THAT(mergeTag(library(), "kelp", "nowhere"), failsWith(ErrorKind::NotFound, ""));
}

TEST_F(TagsTest, AreDeletedAlone) {
    EXPECT_EQ(deleteTag(library(), "stone").value(), 1);
    EXPECT_EQ(tagsOf(1), (Words{"grey"}));
    EXPECT_EQ(tagsOf(2), (Words{"grey", "stone/slate"}));
    EXPECT_THAT(deleteTag(library(), "stone"), failsWith(ErrorKind::NotFound, "stone"));
}

TEST_F(TagsTest, HaveOtherWordsForThem) {
    ASSERT_THAT(addTagAlias(library(), "Seaweed", "KELP"), isOk());
    EXPECT_EQ(*listTagAliases(library()), (std::vector<TagAlias>{{"seaweed", "kelp"}}));
    EXPECT_EQ(found("tag:SEAWEED"), (std::vector<TextureId>{{3}}));
    EXPECT_EQ(found("seaw"), (std::vector<TextureId>{{3}}));
    ASSERT_THAT(changeTags(library(), {{TextureId{1}}}, {{"seaweed"}}, {}), isOk());
    EXPECT_EQ(tagsOf(1), (Words{"grey", "kelp", "stone"}));
    ASSERT_THAT(changeTags(library(), {{TextureId{1}}}, {}, {{"SeaWeed"}}), isOk());
    EXPECT_EQ(tagsOf(1), (Words{"grey", "stone"}));
    const TextureId added = add(textureOf(5, titled("e", {"seaweed", "kelp"})));
    EXPECT_EQ(tagsOf(added.value), (Words{"kelp"}));

    EXPECT_THAT(addTagAlias(library(), "seaweed", "grey"),
                failsWith(ErrorKind::AlreadyExists, "'seaweed' stands for the tag 'kelp'"));
    EXPECT_THAT(addTagAlias(library(), "Grey", "kelp"), failsWith(ErrorKind::AlreadyExists, ""));
    EXPECT_THAT(renameTag(library(), "grey", "seaweed"), failsWith(ErrorKind::AlreadyExists, ""));
    ASSERT_THAT(renameTag(library(), "kelp", "weed"), isOk());
    EXPECT_EQ(*listTagAliases(library()), (std::vector<TagAlias>{{"seaweed", "weed"}}));
    ASSERT_THAT(removeTagAlias(library(), "SEAWEED"), isOk());
    EXPECT_EQ(found("seaweed"), std::vector<TextureId>{});
    EXPECT_THAT(removeTagAlias(library(), "seaweed"), failsWith(ErrorKind::NotFound, "seaweed"));
}

TEST_F(TagsTest, LoseTheirOtherWordsWhenDeleted) {
    ASSERT_THAT(addTagAlias(library(), "seaweed", "kelp"), isOk());
    ASSERT_THAT(deleteTag(library(), "kelp"), isOk());
    EXPECT_EQ(*listTagAliases(library()), std::vector<TagAlias>{});
}

}  // namespace
}  // namespace pantile::catalogue
