#include "cli/number_list.h"

#include "support/matchers.h"

namespace pantile::cli {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

core::Result<std::vector<int>> parse(std::string_view text) {
    return parseNumberList("--shift", text, {2, 3, -9, 9, "X,Y"});
}

TEST(NumberList, TakesWholeNumbersBetweenCommas) {
    const auto numbers = parse("3,-4");
    ASSERT_THAT(numbers, isOk());
    EXPECT_EQ(*numbers, (std::vector{3, -4}));
    EXPECT_EQ(*parse("-9,0,9"), (std::vector{-9, 0, 9}));
}

TEST(NumberList, NamesTheNumberAtFault) {
    for (const char* bad : {"3,kelp", "3,", ",3", "3,4.5", "3,0x4", "3, 4", "3,+-4", "3,10",
                            "-10,3", "3,99999999999999999999", "3,4 ", "3;4,5"}) {
        EXPECT_THAT(parse(bad), failsWith(ErrorKind::Usage, "--shift's number")) << bad;
    }
    EXPECT_THAT(parse("3,kelp"), failsWith(ErrorKind::Usage, "kelp"));
}

TEST(NumberList, SaysHowManyThereAre) {
    EXPECT_THAT(parse("3"), failsWith(ErrorKind::Usage, "--shift cannot take 1 number"));
    EXPECT_THAT(parse(""), failsWith(ErrorKind::Usage, "--shift cannot take 1 number"));
    EXPECT_THAT(parse("1,2,3,4"), failsWith(ErrorKind::Usage, "--shift cannot take 4 numbers"));
    EXPECT_THAT(parse(std::string(1'000'000, ',')), failsWith(ErrorKind::Usage, "1000001 numbers"));
    EXPECT_EQ(parse("3").error().hint, "write --shift X,Y");
}

}  // namespace
}  // namespace pantile::cli
