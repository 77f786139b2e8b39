#include "desktop/texts.h"

#include <gtest/gtest.h>

namespace pantile::desktop {
namespace {

TEST(Texts, SaysDrawingTimesAsTheCommandLineDoes) {
    EXPECT_EQ(shownDuration(0), QStringLiteral("0.0 s"));
    EXPECT_EQ(shownDuration(2640), QStringLiteral("2.6 s"));
    EXPECT_EQ(shownDuration(72000), QStringLiteral("1 min 12 s"));
}

TEST(Texts, SaysBytesInFullWhileTheyAreFew) {
    EXPECT_EQ(shownBytes(412), QStringLiteral("412 bytes"));
    EXPECT_EQ(shownBytes(22528), QStringLiteral("22.0 KiB"));
}

TEST(Texts, MakesHostileCharactersVisible) {
    EXPECT_EQ(shownText("kelp\x1b[2J"), QStringLiteral("kelp\\x1b[2J"));
    EXPECT_EQ(shownText("kelp\xE2\x80\xAE"
                        "gnp"),
              QStringLiteral("kelp\\u202egnp"));
    EXPECT_EQ(shownText("<b>kelp</b>"), QStringLiteral("<b>kelp</b>"));
}

TEST(Texts, SaysWhatHappenedAndWhatToDo) {
    const core::Error error{core::ErrorKind::NotFound, "there is no texture 7",
                            "see what is there"};
    EXPECT_EQ(shownError(error), QStringLiteral("There is no texture 7. See what is there."));
}

TEST(Texts, CountsInOneAndMany) {
    EXPECT_EQ(counted("t", "%1 texture", "%1 textures", 1), QStringLiteral("1 texture"));
    EXPECT_EQ(counted("t", "%1 texture", "%1 textures", 0), QStringLiteral("0 textures"));
}

TEST(Texts, SaysWhenCostsAreNotKnown) {
    EXPECT_EQ(shownCost(std::nullopt), QStringLiteral("cost not known"));
    EXPECT_EQ(shownCost(catalogue::Estimate{48000, 412, "x"}),
              QStringLiteral("48.0 s · 412 bytes"));
}

}  // namespace
}  // namespace pantile::desktop
