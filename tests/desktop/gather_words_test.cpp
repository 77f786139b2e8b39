#include "desktop/gather_words.h"

#include <gtest/gtest.h>

namespace pantile::desktop {
namespace {

TEST(GatherWords, SaysWhatWasAddedKnownAndRefused) {
    tasks::GatherReport report;
    for (const char* title : {"kelp", "foam", "rope", "slate", "net"}) {
        tasks::GatheredTexture added;
        added.title = title;
        report.added.push_back(added);
    }
    report.known.push_back({core::TextureId{3}, "brass", "a.png", {}});
    report.refused.push_back({"/pictures/broken.png",
                              {core::ErrorKind::Corrupt, "the picture ends early", "get it anew"},
                              {}});
    const Notice notice = gatherNotice(report);
    EXPECT_EQ(notice.kind, MarkKind::Caution);
    EXPECT_EQ(notice.text,
              QStringLiteral("Added 5 textures: kelp, foam, rope and 2 more. 1 was here already: "
                             "brass. 1 was refused:"));
    EXPECT_EQ(notice.lines,
              QStringList({QStringLiteral("broken.png: The picture ends early. Get it anew."),
                           QStringLiteral("brass: you have this: #3")}));
}

TEST(GatherWords, IsDoneWhenNothingWasRefused) {
    tasks::GatherReport report;
    report.added.emplace_back();
    const Notice notice = gatherNotice(report);
    EXPECT_EQ(notice.kind, MarkKind::Done);
    EXPECT_EQ(notice.text, QStringLiteral("Added 1 texture: (no title)."));
    EXPECT_TRUE(notice.lines.isEmpty());
}

TEST(GatherWords, SaysHowManyCodesWerePutRight) {
    tasks::GatherReport report;
    report.added.resize(3);
    report.added[1].repairs = {"line 3, letter 12: q read as g"};
    report.known.resize(1);
    report.known[0].repairs = {"line 1: start mark put right"};
    EXPECT_TRUE(
        gatherNotice(report).text.endsWith(QStringLiteral(" Slips in 2 codes were put right.")));
}

TEST(GatherWords, SaysThatNothingWasInIt) {
    EXPECT_EQ(gatherNotice(tasks::GatherReport{}).text,
              QStringLiteral("There was nothing in it to add."));
}

TEST(GatherWords, SaysWhyTheWholeFailed) {
    const Notice notice = gatherNotice(core::stoppedError());
    EXPECT_EQ(notice.kind, MarkKind::Caution);
    EXPECT_TRUE(notice.text.startsWith(QStringLiteral("Stopped before the end.")));
}

}  // namespace
}  // namespace pantile::desktop
