#include "tasks/code_posts.h"

#include <gtest/gtest.h>

#include "codec/armour.h"
#include "codec/code_support.h"
#include "core/text.h"
#include "support/matchers.h"

namespace pantile::tasks {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

constexpr std::array<PostSyntax, 4> kSyntaxes = {PostSyntax::Plain, PostSyntax::Chat,
                                                 PostSyntax::Markdown, PostSyntax::Bbcode};

std::vector<std::string> postsOf(const core::Texture& texture, const PostOptions& options) {
    const core::TextureText& text = texture.text();
    const auto posts = codePosts(codec::packContents(texture).bytes,
                                 {text.title, text.author, text.licence}, options);
    EXPECT_THAT(posts, isOk());
    return posts ? *posts : std::vector<std::string>();
}

core::Texture titled(const std::string& title, const std::string& author = "Mara Quill") {
    return *tests::noisyTexture().withText({title, author, "CC0-1.0", "", "", {}});
}

/// The last post first.
std::string inOneText(const std::vector<std::string>& posts) {
    std::string text;
    for (auto post = posts.rbegin(); post != posts.rend(); ++post) {
        text += "Ida wrote:\n";
        text += *post;
        text += "\n\n";
    }
    return text;
}

void expectReadBack(const std::vector<std::string>& posts, const core::Texture& texture) {
    const codec::Harvest harvest = codec::harvestCodes(inOneText(posts));
    ASSERT_EQ(harvest.found.size(), 1U) << inOneText(posts);
    EXPECT_EQ(harvest.found[0].texture, texture);
    EXPECT_EQ(harvest.found[0].repaired, 0);
    EXPECT_TRUE(harvest.damaged.empty()) << harvest.damaged[0].reason;
}

TEST(CodePosts, NeverExceedTheirLimit) {
    const core::Texture texture = titled("Kelp on shingle");
    for (const std::size_t limit : {160U, 161U, 200U, 280U, 500U, 2000U}) {
        std::vector<PostOptions> all = {{std::nullopt, limit}};
        for (const PostSyntax syntax : kSyntaxes) all.push_back({syntax, limit});
        for (const PostOptions& options : all) {
            const auto posts = postsOf(texture, options);
            for (const std::string& post : posts) EXPECT_LE(postLength(post), limit) << post;
            expectReadBack(posts, texture);
        }
    }
}

TEST(CodePosts, AreAsFewAsTheLimitAllows) {
    const core::Texture texture = titled("Kelp");
    const std::size_t whole = tests::codeOf(texture).size();
    EXPECT_EQ(postsOf(texture, {std::nullopt, whole}).size(), 1U);
    EXPECT_EQ(postsOf(texture, {std::nullopt, whole - 1}).size(), 2U);
    EXPECT_EQ(postsOf(texture, {std::nullopt, whole}).front(), tests::codeOf(texture));
    EXPECT_EQ(postsOf(texture, {}).front(), tests::codeOf(texture));
}

TEST(CodePosts, HoldTheLongestCodeEvenAtTheLeastLimit) {
    const std::vector<std::uint8_t> container(codec::kMaxArmouredBytes, 0x5A);
    const Credit credit{std::string(120, '['), std::string(120, '@'), std::string(120, '*')};
    for (const PostSyntax syntax : kSyntaxes) {
        const auto posts = codePosts(container, credit, {syntax, kLeastPostLimit});
        ASSERT_THAT(posts, isOk());
        for (const std::string& post : *posts) ASSERT_LE(postLength(post), kLeastPostLimit);
    }
    EXPECT_THAT(codePosts(container, credit, {PostSyntax::Chat, kLeastPostLimit - 1}),
                failsWith(ErrorKind::Usage, "159"));
}

TEST(CodePosts, SayWhoMadeTheTextureAndWhichPartTheyAre) {
    const core::Texture texture = titled("Kelp");
    const auto whole = postsOf(texture, {PostSyntax::Plain, std::nullopt});
    ASSERT_EQ(whole.size(), 1U);
    EXPECT_EQ(whole[0], "Kelp, by Mara Quill, CC0-1.0:\n" + tests::codeOf(texture));
    const auto parts = postsOf(texture, {PostSyntax::Chat, 200});
    ASSERT_GE(parts.size(), 2U);
    for (std::size_t i = 0; i < parts.size(); ++i) {
        EXPECT_NE(parts[i].find(", part " + std::to_string(i + 1) + " of " +
                                std::to_string(parts.size()) + ":\n```\n0I3"),
                  std::string::npos)
            << parts[i];
        EXPECT_TRUE(parts[i].ends_with("I\n```"));
    }
    EXPECT_TRUE(postsOf(texture, {PostSyntax::Bbcode, std::nullopt})[0].ends_with("I\n[/code]"));
}

const std::vector<std::string>& hostileTitles() {
    static const std::vector<std::string> titles = {"```",
                                                    "`",
                                                    "``` kelp ```",
                                                    "*bold* _it_ ~~gone~~ ||spoiler||",
                                                    "@everyone @here @mara",
                                                    "<@1234> <#99> <:foam:12>",
                                                    "[/code][url=http://kelp.example]x[/url]",
                                                    "[kelp](http://kelp.example)",
                                                    "![x](http://kelp.example/x.png)",
                                                    "# heading",
                                                    "> quote",
                                                    "- item",
                                                    "1. item",
                                                    "www.kelp.example",
                                                    "http://kelp.example",
                                                    "<script>x</script>",
                                                    "<b",
                                                    "&lt;b&gt;",
                                                    "&#91;",
                                                    "\\",
                                                    "\\n\\u0041",
                                                    "%0A0I2",
                                                    "0I2",
                                                    "0I",
                                                    "I2",
                                                    "02",
                                                    "0I211E1Ahg1or52vKRTZABXv147C3P7I",
                                                    "I211E1Ahg1or52vKRTZABXv147C3P7I",
                                                    "0I211E1Ahg1or52vKRTZABX v147C3P7I",
                                                    "#12 fixes #13",
                                                    ":smile: :)",
                                                    "a|b|c",
                                                    "$x^2$",
                                                    "🪸🪸🪸 帆",
                                                    "",
                                                    " "};
    return titles;
}

TEST(CodePosts, AreReadBackWhateverTheWordsSay) {
    const core::Texture texture = titled("Kelp");
    const auto container = codec::packContents(texture).bytes;
    for (const std::string& title : hostileTitles()) {
        for (const PostSyntax syntax : kSyntaxes) {
            for (const auto limit :
                 {std::optional<std::size_t>(), std::optional<std::size_t>(200)}) {
                for (const Credit& credit :
                     {Credit{title, "Mara", "CC0-1.0"}, Credit{"Kelp", title, title}}) {
                    const auto posts = codePosts(container, credit, {syntax, limit});
                    ASSERT_THAT(posts, isOk());
                    expectReadBack(*posts, texture);
                }
            }
        }
    }
}

/// The words in front of the code, as they are pasted.
std::string wordsFor(const std::string& title, PostSyntax syntax) {
    const std::vector<std::uint8_t> container(20, 1);
    const auto posts = codePosts(container, {title, "", ""}, {syntax, std::nullopt});
    return posts->front().substr(0, posts->front().rfind("0I2"));
}

TEST(CodePosts, LetNoWordsBecomeMarkup) {
    for (const std::string& title : hostileTitles()) {
        for (const PostSyntax syntax : {PostSyntax::Chat, PostSyntax::Markdown}) {
            std::string words = wordsFor(title, syntax);
            words.resize(words.rfind(":\n"));
            words.resize(words.find_last_not_of(":\n") + 1);
            // Every character that means something stands behind a backslash.
            for (std::size_t at = 0; at < words.size(); ++at) {
                if (words[at] == '\\') {
                    ++at;
                    continue;
                }
                EXPECT_EQ(std::string_view("`*_~|[]<>#!&").find(words[at]), std::string_view::npos)
                    << words;
            }
            EXPECT_EQ(words.find('\n'), std::string::npos) << words;
        }
        const std::string words = wordsFor(title, PostSyntax::Bbcode);
        const std::string before = words.substr(0, words.rfind("[code]"));
        // No bracket is followed by what could name a tag.
        for (std::size_t at = before.find('['); at != std::string::npos;
             at = before.find('[', at + 1)) {
            EXPECT_TRUE(at + 1 == before.size() || before[at + 1] == ' ' ||
                        before.substr(at + 1, 3) == "\xE2\x80\x8B")
                << before;
        }
        for (const PostSyntax syntax :
             {PostSyntax::Chat, PostSyntax::Markdown, PostSyntax::Bbcode}) {
            const std::string all = wordsFor(title, syntax);
            EXPECT_EQ(all.find("@everyone"), std::string::npos);
            EXPECT_EQ(all.find("http://"), std::string::npos);
            EXPECT_EQ(all.find("www.kelp"), std::string::npos);
        }
    }
    EXPECT_EQ(wordsFor("a\nb\x1b[31m", PostSyntax::Plain), "a\\x0ab\\x1b[31m:\n");
}

TEST(CodePosts, ShortenWordsThatWouldTakeMoreThanHalfOfAPost) {
    const core::Texture texture = titled(std::string(120, 'k'), std::string(120, 'm'));
    const auto posts = postsOf(texture, {PostSyntax::Plain, 200});
    EXPECT_NE(posts[0].find("k…"), std::string::npos) << posts[0];
    EXPECT_LE(posts[0].find("0I3"), 200U);
    expectReadBack(posts, texture);
    EXPECT_NE(postsOf(texture, {PostSyntax::Plain, std::nullopt})[0].find(std::string(120, 'k')),
              std::string::npos);
}

TEST(CodePosts, CountCharactersAsTheStrictestPlaces) {
    EXPECT_EQ(postLength("kelp"), 4U);
    EXPECT_EQ(postLength("Näss"), 4U);
    EXPECT_EQ(postLength("帆"), 1U);
    EXPECT_EQ(postLength("🪸"), 2U);
}

TEST(CreditWords, SayNothingThatLooksLikeACode) {
    EXPECT_EQ(creditWords({"Kelp", "Mara", "CC0"}), "Kelp, by Mara, CC0");
    EXPECT_EQ(creditWords({"", "", ""}), "(no title)");
    EXPECT_EQ(creditWords({"0I211E1Ahg1or52vKRTZABXv147C3P7I", "Mara", ""}),
              "(words like a code), by Mara");
}

TEST(CodePosts, ASetIsCalledByItsNumber) {
    const std::vector<std::uint8_t> container(40, 7);
    for (const PostSyntax syntax : {PostSyntax::Chat, PostSyntax::Markdown, PostSyntax::Bbcode}) {
        PostOptions options;
        options.syntax = syntax;
        const auto set = codePosts(container, {"3 textures", "Ana", "", 3}, options);
        ASSERT_THAT(set, isOk());
        EXPECT_EQ(set->front().find("3 textures, by Ana:\n"), 0U) << set->front();
        const auto one = codePosts(container, {"3 textures", "Ana", "", 1}, options);
        EXPECT_EQ(one->front().find("Texture 3 textures, by Ana:\n"), 0U) << one->front();
    }
}

}  // namespace
}  // namespace pantile::tasks
