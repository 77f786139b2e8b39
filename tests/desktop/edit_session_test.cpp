#include "desktop/edit/edit_session.h"

#include <gtest/gtest.h>

#include "library_fixture.h"

namespace pantile::desktop {
namespace {

using tests::smallTexture;

const QString kPen = QStringLiteral("Pen");
const QString kFill = QStringLiteral("Fill");

TEST(EditSession, TakesBackAndDoesAgainByName) {
    EditSession session;
    const core::Texture first = smallTexture("kelp", 1);
    const core::Texture second = smallTexture("kelp", 2);
    const core::Texture third = smallTexture("kelp", 5);
    session.open({7}, first);
    EXPECT_TRUE(session.undoName().isEmpty());
    session.change(kPen, second);
    session.change(kFill, third);
    EXPECT_EQ(session.undoName(), kFill);
    session.undo();
    EXPECT_EQ(session.texture(), second);
    EXPECT_EQ(session.undoName(), kPen);
    EXPECT_EQ(session.redoName(), kFill);
    session.undo();
    session.undo();
    EXPECT_EQ(session.texture(), first);
    session.redo();
    session.redo();
    session.redo();
    EXPECT_EQ(session.texture(), third);
}

TEST(EditSession, ForgetsWhatWasTakenBackOnceOneGoesOn) {
    EditSession session;
    session.open({7}, smallTexture("kelp", 1));
    session.change(kPen, smallTexture("kelp", 2));
    session.undo();
    session.change(kFill, smallTexture("kelp", 5));
    EXPECT_TRUE(session.redoName().isEmpty());
    EXPECT_EQ(session.undoName(), kFill);
}

TEST(EditSession, DoesNotCountWhatChangesNothing) {
    EditSession session;
    session.open({7}, smallTexture("kelp", 1));
    session.change(kPen, smallTexture("another title", 1));
    EXPECT_TRUE(session.undoName().isEmpty());
    EXPECT_FALSE(session.isChanged());
}

TEST(EditSession, KnowsWhatTheLibraryHas) {
    EditSession session;
    EXPECT_FALSE(session.isChanged());
    session.open({7}, smallTexture("kelp", 1));
    session.change(kPen, smallTexture("kelp", 2));
    EXPECT_TRUE(session.isChanged());
    session.markKept({9}, smallTexture("kelp", 2));
    EXPECT_FALSE(session.isChanged());
    EXPECT_EQ(session.id(), core::TextureId{9});
    session.undo();
    EXPECT_TRUE(session.isChanged()) << "what was kept can be taken back as well";
}

TEST(EditSession, RemembersSoManyChangesAndNoMore) {
    EditSession session;
    session.open({7}, smallTexture("kelp", 0, 1));
    const auto changes = static_cast<int>(EditSession::kMostStates) + 10;
    for (int i = 1; i <= changes; ++i) session.change(kPen, smallTexture("kelp", i % 3, 1));
    int undone = 0;
    while (!session.undoName().isEmpty()) {
        session.undo();
        ++undone;
    }
    EXPECT_EQ(undone, static_cast<int>(EditSession::kMostStates) - 1);
}

}  // namespace
}  // namespace pantile::desktop
