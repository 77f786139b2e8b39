#include "cli/arguments.h"

#include "support/matchers.h"

namespace pantile::cli {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

constexpr std::array<OptionSpec, 4> kOptions = {{
    {"--canvas", OptionKind::Value, "NAME", ""},
    {"--tag", OptionKind::Repeated, "WORD", ""},
    {"--strokes", OptionKind::Flag, "", ""},
    {"--title", OptionKind::Text, "TEXT", ""},
}};

core::Result<Arguments> parse(const std::vector<std::string>& words) {
    return Arguments::parse(words, kOptions);
}

TEST(Arguments, SplitsOptionsFromWords) {
    const auto arguments =
        parse({"17", "--canvas", "pier", "--tag=kelp", "--tag", "-wet", "--strokes", "-dry"});
    ASSERT_THAT(arguments, isOk());
    EXPECT_EQ(arguments->positional(), (std::vector<std::string>{"17", "-dry"}));
    EXPECT_EQ(arguments->value("--canvas"), "pier");
    EXPECT_EQ(arguments->values("--tag"), (std::vector<std::string>{"kelp", "-wet"}));
    EXPECT_TRUE(arguments->has("--strokes"));
    EXPECT_FALSE(arguments->has("--nothing"));
}

TEST(Arguments, KeepsTheOrderOfTheOptions) {
    const auto arguments =
        parse({"--tag", "kelp", "--strokes", "17", "--canvas=pier", "--tag=rope", "--strokes"});
    ASSERT_THAT(arguments, isOk());
    std::string order;
    for (const GivenOption& option : arguments->inOrder())
        order += std::string(option.name) + "=" + option.value + " ";
    EXPECT_EQ(order, "--tag=kelp --strokes= --canvas=pier --tag=rope --strokes= ");
}

TEST(Arguments, TwoDashesEndTheOptions) {
    const auto arguments = parse({"--", "--canvas", "x"});
    ASSERT_THAT(arguments, isOk());
    EXPECT_EQ(arguments->positional(), (std::vector<std::string>{"--canvas", "x"}));
}

TEST(Arguments, MistakesAreNamedWithTheNearestOption) {
    EXPECT_THAT(parse({"--cavnas", "x"}), failsWith(ErrorKind::Usage, "no option --cavnas"));
    EXPECT_EQ(parse({"--cavnas", "x"}).error().hint, "did you mean --canvas?");
    EXPECT_THAT(parse({"--canvas"}), failsWith(ErrorKind::Usage, "--canvas needs a value"));
    EXPECT_THAT(parse({"--canvas", "a", "--canvas", "b"}),
                failsWith(ErrorKind::Usage, "stands twice"));
    EXPECT_THAT(parse({"--strokes=yes"}), failsWith(ErrorKind::Usage, "takes no value"));
}

TEST(Arguments, AnEmptyValueIsNoneUnlessItIsAText) {
    EXPECT_THAT(parse({"--canvas", ""}), failsWith(ErrorKind::Usage, "--canvas needs a value"));
    EXPECT_THAT(parse({"--canvas="}), failsWith(ErrorKind::Usage, "--canvas needs a value"));
    EXPECT_THAT(parse({"--tag", ""}), failsWith(ErrorKind::Usage, "--tag needs a value"));
    EXPECT_EQ(parse({"--title", ""})->value("--title"), "");
    EXPECT_THAT(parse({"--title", "", "--title", ""}), failsWith(ErrorKind::Usage, "twice"));
}

TEST(Arguments, NumbersKeepTheirRange) {
    EXPECT_EQ(**parse({"--canvas", "12"})->number("--canvas", 1, 20), 12);
    EXPECT_EQ(*parse({})->number("--canvas", 1, 20), std::nullopt);
    for (const char* bad : {"0", "21", "12a", "1.5", "99999999999999999999", "-3", " 5"}) {
        EXPECT_THAT(parse({"--canvas", bad})->number("--canvas", 1, 20),
                    failsWith(ErrorKind::Usage, "--canvas cannot be"));
    }
    EXPECT_EQ(**parse({"--canvas", "0.5"})->fraction("--canvas", 0, 1), 0.5);
    for (const char* bad : {"-0.1", "1.1", "x", "nan", "inf"}) {
        EXPECT_THAT(parse({"--canvas", bad})->fraction("--canvas", 0, 1),
                    failsWith(ErrorKind::Usage, "cannot be"))
            << bad;
    }
}

TEST(Arguments, ChoicesAreListedWhenNoneFits) {
    constexpr std::array<Choice<int>, 2> kChoices = {{{"area", 1}, {"nearest", 2}}};
    EXPECT_EQ(*parseChoice("--scale", "nearest", kChoices), 2);
    const auto refused = parseChoice("--scale", "smooth", kChoices);
    EXPECT_THAT(refused, failsWith(ErrorKind::Usage, "--scale cannot be 'smooth'"));
    EXPECT_EQ(refused.error().hint, "choose one of: area, nearest");
}

}  // namespace
}  // namespace pantile::cli
