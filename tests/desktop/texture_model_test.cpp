#include "desktop/models/texture_model.h"

#include <QAbstractItemModelTester>
#include <QSignalSpy>

#include <gtest/gtest.h>

#include "catalogue/edit.h"
#include "library_fixture.h"

namespace pantile::desktop {
namespace {

using tests::LibraryFolder;
using tests::smallTexture;

class TextureModelTest : public ::testing::Test {
protected:
    LibraryFolder m_folder;
    catalogue::Library m_reader = m_folder.open();
    TextureModel m_model{m_reader, nullptr};
    QAbstractItemModelTester m_tester{&m_model,
                                      QAbstractItemModelTester::FailureReportingMode::Fatal};
};

TEST_F(TextureModelTest, ShowsTheTexturesInTheOrderOfTheIds) {
    const auto kelp = m_folder.add(smallTexture("kelp", 1));
    const auto foam = m_folder.add(smallTexture("foam", 2));
    m_model.setIds({foam, kelp});
    ASSERT_EQ(m_model.rowCount(), 2);
    EXPECT_EQ(m_model.index(0).data().toString(), QStringLiteral("foam"));
    EXPECT_EQ(m_model.index(1).data().toString(), QStringLiteral("kelp"));
    EXPECT_EQ(m_model.rowOf(kelp), 1);
    EXPECT_EQ(m_model.rowOf({999}), std::nullopt);
}

TEST_F(TextureModelTest, SaysTitleSizeAndCostToThoseWhoListen) {
    m_model.setIds({m_folder.add(smallTexture("kelp", 1))});
    EXPECT_EQ(m_model.index(0).data(Qt::AccessibleTextRole).toString(),
              QStringLiteral("kelp, 8 × 8, cost not known"));
}

TEST_F(TextureModelTest, ShowsATitleThatLooksLikeMarkupAsItIs) {
    m_model.setIds({m_folder.add(smallTexture("<h1>kelp</h1>", 1))});
    EXPECT_EQ(m_model.index(0).data().toString(), QStringLiteral("<h1>kelp</h1>"));
    EXPECT_TRUE(m_model.index(0)
                    .data(Qt::ToolTipRole)
                    .toString()
                    .startsWith(QStringLiteral("<span>&lt;h1&gt;")));
}

TEST_F(TextureModelTest, ReadsAnewWithoutMovingAnythingWhenTheIdsAreTheSame) {
    const auto id = m_folder.add(smallTexture("kelp", 1));
    m_model.setIds({id});
    EXPECT_EQ(m_model.index(0).data().toString(), QStringLiteral("kelp"));
    catalogue::TextPatch patch;
    patch.title = "bladder wrack";
    ASSERT_TRUE(catalogue::setText(m_folder.library(), std::span(&id, 1), patch).has_value());
    const QSignalSpy resets(&m_model, &QAbstractItemModel::modelReset);
    const QSignalSpy changes(&m_model, &QAbstractItemModel::dataChanged);
    m_model.setIds({id});
    EXPECT_EQ(resets.count(), 0);
    EXPECT_EQ(changes.count(), 1);
    EXPECT_EQ(m_model.index(0).data().toString(), QStringLiteral("bladder wrack"));
}

TEST_F(TextureModelTest, ShowsTheOthersOfAPageWhenOneIsGone) {
    const auto kelp = m_folder.add(smallTexture("kelp", 1));
    m_model.setIds({{999}, kelp});
    EXPECT_EQ(m_model.index(0).data().toString(), QStringLiteral("(no longer in the library)"));
    EXPECT_EQ(m_model.textureRow(0), nullptr);
    EXPECT_EQ(m_model.index(1).data().toString(), QStringLiteral("kelp"));
}

}  // namespace
}  // namespace pantile::desktop
