#include "desktop/views/texture_grid_view.h"

#include <QScrollBar>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "library_fixture.h"

namespace pantile::desktop {
namespace {

using ::testing::ElementsAre;
using tests::comes;
using tests::LibraryFolder;

class TextureGridViewTest : public ::testing::Test {
protected:
    void show(int count) {
        m_ids = m_folder.addMany(count);
        m_grid.resize(800, 600);
        m_grid.show();
        m_grid.showIds(m_ids);
        ASSERT_TRUE(QTest::qWaitForWindowExposed(&m_grid));
        m_grid.grab();
    }

    core::TextureId topId() {
        const QModelIndex top = m_grid.indexAt({kInside, kInside});
        return top.isValid() ? m_ids[static_cast<std::size_t>(top.row())] : core::TextureId{};
    }

    static constexpr int kInside = 8;
    LibraryFolder m_folder;
    catalogue::Library m_reader = m_folder.open();
    Theme m_theme = makeTheme(Shade::Light);
    TextureModel m_model{m_reader, nullptr};
    TextureGridView m_grid{m_model, m_theme, TilePictures(m_reader, hatchOf(m_theme)), nullptr};
    std::vector<core::TextureId> m_ids;
};

TEST_F(TextureGridViewTest, ReadsOnlyThePagesThatAreSeen) {
    show(3000);
    // Two pages: what is seen may lie on the edge of one.
    EXPECT_LE(m_model.rowsRead(), 256U);
    m_grid.verticalScrollBar()->setValue(m_grid.verticalScrollBar()->maximum());
    m_grid.grab();
    EXPECT_GT(m_model.rowsRead(), 0U);
    EXPECT_LE(m_model.rowsRead(), 512U);
}

TEST_F(TextureGridViewTest, FillsTheWidthWithColumnsOfEqualWidth) {
    show(40);
    const int first = m_grid.visualRect(m_model.index(0)).top();
    int columns = 0;
    while (m_grid.visualRect(m_model.index(columns)).top() == first) ++columns;
    const auto& delegate = dynamic_cast<const TextureDelegate&>(*m_grid.itemDelegate());
    EXPECT_EQ(columns, m_grid.viewport()->width() / delegate.tileSize().width());
    EXPECT_GE(columns, 3);
    const QRect last = m_grid.visualRect(m_model.index(columns - 1));
    EXPECT_LT(m_grid.viewport()->width() - last.right(), 2 * columns);
}

TEST_F(TextureGridViewTest, KeepsSelectionAndScrollWhenTexturesComeBefore) {
    show(400);
    m_grid.selectIds({m_ids[210], m_ids[212]});
    m_grid.scrollTo(m_model.index(200), QAbstractItemView::PositionAtTop);
    const core::TextureId top = topId();
    ASSERT_GT(top.value, m_ids[100].value);
    const int offset = m_grid.visualRect(m_model.index(*m_model.rowOf(top))).top();

    std::vector<core::TextureId> more{m_folder.add(tests::smallTexture("new", 4001)),
                                      m_folder.add(tests::smallTexture("newer", 4002))};
    more.insert(more.end(), m_ids.begin(), m_ids.end());
    m_grid.showIds(more);
    EXPECT_THAT(m_grid.selectedIds(), ElementsAre(m_ids[210], m_ids[212]));
    EXPECT_EQ(m_grid.currentId(), m_ids[210]);
    EXPECT_EQ(m_grid.visualRect(m_model.index(*m_model.rowOf(top))).top(), offset);
}

TEST_F(TextureGridViewTest, DropsFromTheSelectionWhatIsNotShownAnyMore) {
    show(20);
    m_grid.selectIds({m_ids[3], m_ids[5]});
    std::vector<core::TextureId> fewer = m_ids;
    fewer.erase(fewer.begin() + 3);
    m_grid.showIds(fewer);
    EXPECT_THAT(m_grid.selectedIds(), ElementsAre(m_ids[5]));
}

TEST_F(TextureGridViewTest, MovesByTheArrowKeys) {
    show(40);
    m_grid.setFocus();
    ASSERT_EQ(m_grid.currentId(), m_ids[0]);
    QTest::keyClick(&m_grid, Qt::Key_Right);
    EXPECT_EQ(m_grid.currentId(), m_ids[1]);
    QTest::keyClick(&m_grid, Qt::Key_Right, Qt::ShiftModifier);
    EXPECT_THAT(m_grid.selectedIds(), ElementsAre(m_ids[1], m_ids[2]));
    QTest::keyClick(&m_grid, Qt::Key_Home);
    EXPECT_EQ(m_grid.currentId(), m_ids[0]);
}

TEST_F(TextureGridViewTest, ShowsPicturesLargerAndSmallerWithinLimits) {
    show(40);
    const int usual = m_grid.gridSize().height();
    m_grid.showLarger();
    EXPECT_EQ(m_grid.gridSize().height(), usual + 64);
    for (int i = 0; i < 9; ++i) m_grid.showLarger();
    EXPECT_EQ(m_grid.gridSize().height(), usual + 128);
    for (int i = 0; i < 9; ++i) m_grid.showSmaller();
    EXPECT_EQ(m_grid.gridSize().height(), usual - 64);
}

TEST_F(TextureGridViewTest, ShowsCellsAsTheyAre) {
    show(1);
    const QImage shown = m_grid.viewport()->grab().toImage();
    const core::Texture texture = tests::smallTexture("shingle 0", 0);
    // 8 cells on 128 pixels: 16 a cell, from the tile's corner.
    const QPoint corner = m_grid.visualRect(m_model.index(0)).topLeft() + QPoint(8, 8);
    for (int y = 0; y < 128; ++y) {
        for (int x = 0; x < 128; ++x) {
            const core::Rgb8 colour = texture.palette()[texture.grid().at(x / 16, y / 16)];
            ASSERT_EQ(shown.pixelColor(corner + QPoint(x, y)), QColor(colour.r, colour.g, colour.b))
                << "at " << x << ", " << y;
        }
    }
}

}  // namespace
}  // namespace pantile::desktop
