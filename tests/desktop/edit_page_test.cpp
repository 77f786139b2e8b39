// The place called Edit through the real window: tools, keys, operations, keeping.

#include <filesystem>

#include <QCheckBox>
#include <QComboBox>
#include <QMouseEvent>
#include <QPushButton>
#include <QSpinBox>
#include <QWheelEvent>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "catalogue/edit.h"
#include "catalogue/history.h"
#include "catalogue/palettes.h"
#include "catalogue/query_parser.h"
#include "catalogue/reader.h"
#include "desktop/views/edit_canvas.h"
#include "desktop/views/palette_picker.h"
#include "desktop/views/picture_view.h"
#include "open_window.h"
#include "support/matchers.h"
#include "tasks/touch_up.h"

namespace pantile::desktop {
namespace {

using core::Point;
using tests::comes;
using tests::LibraryFolder;
using tests::OpenWindow;
using tests::smallTexture;

core::Texture plain(const std::string& title, int width, int height, int colours = 4) {
    std::vector<core::Rgb8> palette;
    for (int i = 0; i < colours; ++i)
        palette.push_back({static_cast<std::uint8_t>(20 * i), 90, 60});
    core::TextureText text;
    text.title = title;
    return *core::Texture::create(*core::Grid::filled(width, height, 0),
                                  *core::Palette::create(std::move(palette)), std::move(text));
}

// `texture` after one operation, which is what a tool should have made of it.
core::Texture after(const core::Texture& texture, const tasks::TouchOperation& operation) {
    return *tasks::touched(texture, operation, {});
}

tasks::Pen penOf(core::PaletteIndex colour) {
    tasks::Pen pen;
    pen.colour = colour;
    return pen;
}

class OpenEdit : public OpenWindow {
public:
    OpenEdit(LibraryFolder& folder, core::TextureId id) : OpenWindow(folder) {
        EXPECT_TRUE(comes([&] { return shown() > 0; }));
        grid().selectIds({id});
        act("touchUp");
        EXPECT_TRUE(canvas().isVisible());
    }

    EditCanvas& canvas() { return part<EditCanvas>("editCanvas"); }

    PalettePicker& colours() { return part<PalettePicker>("palettePicker"); }

    const core::Texture& work() { return *canvas().texture(); }

    int at(int x, int y) { return work().grid().at(x, y); }

    void mouse(QEvent::Type type, Point cell, Qt::MouseButton button, Qt::MouseButtons held) {
        const QPointF place = canvas().middleOf(cell);
        QMouseEvent event(type, place, canvas().mapToGlobal(place), button, held, Qt::NoModifier);
        QCoreApplication::sendEvent(&canvas(), &event);
    }

    void press(Point cell) {
        mouse(QEvent::MouseButtonPress, cell, Qt::LeftButton, Qt::LeftButton);
    }

    void drag(Point cell) { mouse(QEvent::MouseMove, cell, Qt::NoButton, Qt::LeftButton); }

    void hover(Point cell) { mouse(QEvent::MouseMove, cell, Qt::NoButton, Qt::NoButton); }

    void release(Point cell) {
        mouse(QEvent::MouseButtonRelease, cell, Qt::LeftButton, Qt::NoButton);
    }

    void stroke(Point from, Point to) {
        press(from);
        drag(to);
        release(to);
    }

    void key(int key, Qt::KeyboardModifiers modifiers = Qt::NoModifier, int times = 1) {
        QWidget* const focus = window.focusWidget();
        for (int i = 0; i < times; ++i)
            QTest::keyClick(focus == nullptr ? &window : focus, static_cast<Qt::Key>(key),
                            modifiers);
    }

    void click(const char* button) {
        QTest::mouseClick(&part<QPushButton>(button), Qt::LeftButton);
    }

    void chooseOperation(const char* words) {
        auto& operations = part<QComboBox>("operations");
        const int row = operations.findText(QLatin1String(words));
        ASSERT_GT(row, 0) << words;
        operations.setCurrentIndex(row);
    }

    bool isOffered(const char* button) {
        auto& found = part<QPushButton>(button);
        return found.isVisible() && found.isEnabled();
    }
};

class TouchingUp : public ::testing::Test {
protected:
    core::TextureId add(const core::Texture& texture) { return m_folder.add(texture); }

    core::Texture stored(core::TextureId id) {
        return catalogue::readTexture(m_folder.library(), id)->texture;
    }

    int revision(core::TextureId id) {
        const auto record = catalogue::readTexture(m_folder.library(), id);
        EXPECT_THAT(record, tests::isOk());
        return record ? record->row.revision : 0;
    }

    std::vector<core::TextureId> ids() {
        return *catalogue::findIds(m_folder.library(), *catalogue::parseQuery(""));
    }

    // As another program would.
    void changeElsewhere(core::TextureId id, Point cell) {
        tasks::DrawLine dot{{cell}, penOf(3)};
        ASSERT_THAT(
            tasks::touchUp(m_folder.library(), id, std::vector<tasks::TouchStep>{{dot, ""}}),
            tests::isOk());
    }

    LibraryFolder m_folder;
};

TEST_F(TouchingUp, TakesUpWhatIsChosen) {
    const auto id = add(smallTexture("kelp", 11));
    OpenWindow open(m_folder);
    ASSERT_TRUE(comes([&] { return open.shown() == 1; }));
    open.grid().selectIds({id});
    QTest::mouseClick(&open.part<QPushButton>("editPlaceButton"), Qt::LeftButton);
    EXPECT_EQ(open.part<EditCanvas>("editCanvas").texture(), stored(id));
    EXPECT_EQ(open.words("editWords"), QStringLiteral("kelp · 8 × 8"));
    EXPECT_TRUE(open.part<EditCanvas>("editCanvas").hasFocus()) << "for its keys";
    EXPECT_TRUE(open.part<QPushButton>("editPlaceButton").isChecked());
}

TEST_F(TouchingUp, OpensWithEnterOnATexture) {
    const auto id = add(smallTexture("kelp", 11));
    OpenWindow open(m_folder);
    ASSERT_TRUE(comes([&] { return open.shown() == 1; }));
    open.grid().selectIds({id});
    open.grid().setFocus();
    QTest::keyClick(&open.grid(), Qt::Key_Return);
    EXPECT_TRUE(open.part<QWidget>("editCanvas").isVisible());
}

TEST_F(TouchingUp, SaysWhatToDoWhileNothingIsChosen) {
    OpenWindow open(m_folder);
    open.act("editPlace");
    EXPECT_TRUE(open.part<QWidget>("nothingToEdit").isVisible());
    EXPECT_FALSE(open.part<QWidget>("editCanvas").isVisible());
    for (const char* const name : {"undo", "keep", "penTool", "takeBackAll"})
        EXPECT_FALSE(open.part<QAction>(name).isEnabled()) << name;
    auto* const button = open.part<QWidget>("nothingToEdit").findChild<QPushButton*>();
    QTest::mouseClick(button, Qt::LeftButton);
    EXPECT_FALSE(open.part<QWidget>("editPage").isVisible());
}

TEST_F(TouchingUp, PaintsWithTheMouseAndTakesItBackByName) {
    const auto id = add(plain("kelp", 8, 8));
    OpenEdit open(m_folder, id);
    open.colours().pick(2);
    open.press({1, 1});
    open.drag({4, 1});
    EXPECT_EQ(open.at(3, 1), 2) << "shown while it is painted";
    open.drag({4, 5});
    open.release({4, 5});
    core::Texture expected = after(stored(id), tasks::DrawLine{{{1, 1}, {4, 1}, {4, 5}}, penOf(2)});
    EXPECT_EQ(open.work(), expected);
    EXPECT_EQ(open.words("editWords"), QStringLiteral("kelp · 8 × 8 · not kept yet"));
    EXPECT_TRUE(open.part<QAction>("undo").text().endsWith(QStringLiteral(": Pen")));
    open.click("undoButton");
    EXPECT_EQ(open.work(), stored(id)) << "a stroke is taken back as a whole";
    EXPECT_TRUE(open.canvas().hasFocus()) << "the button has nothing more to do";
    EXPECT_FALSE(open.part<QPushButton>("undoButton").isEnabled());
    open.key(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(open.work(), expected);
    open.key(Qt::Key_Backspace, Qt::ControlModifier);
    EXPECT_EQ(open.work(), stored(id));
    open.key(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(open.work(), expected) << "taking all back can be taken back";
}

TEST_F(TouchingUp, PaintsByKeysAlone) {
    const auto id = add(plain("kelp", 8, 8, 12));
    OpenEdit open(m_folder, id);
    open.key(Qt::Key_L);
    EXPECT_TRUE(open.part<QPushButton>("lineToolButton").isChecked());
    open.key(Qt::Key_1);
    open.key(Qt::Key_1);
    EXPECT_EQ(open.colours().colour(), 11) << "two digits are one number";
    open.key(Qt::Key_Comma);
    EXPECT_EQ(open.colours().colour(), 10);
    open.key(Qt::Key_Right, Qt::NoModifier, 2);
    open.key(Qt::Key_Return);
    open.key(Qt::Key_Down, Qt::NoModifier, 3);
    EXPECT_EQ(open.at(2, 3), 10) << "shown on the way";
    EXPECT_FALSE(open.part<QAction>("redo").isEnabled());
    open.key(Qt::Key_Return);
    const auto line = after(stored(id), tasks::DrawLine{{{2, 0}, {2, 3}}, penOf(10)});
    EXPECT_EQ(open.work(), line);
    open.key(Qt::Key_F);
    open.key(Qt::Key_Left);
    open.key(Qt::Key_3);
    open.key(Qt::Key_Return);
    EXPECT_EQ(open.at(0, 0), 3) << "a fill is done at once";
    open.key(Qt::Key_Right);
    open.key(Qt::Key_Space);
    EXPECT_EQ(open.colours().colour(), 10) << "picked up";
    open.key(Qt::Key_R);
    open.key(Qt::Key_Return);
    open.key(Qt::Key_Right, Qt::NoModifier, 3);
    open.key(Qt::Key_Escape);
    EXPECT_EQ(open.at(4, 3), 3) << "left without a trace";
    open.key(Qt::Key_S, Qt::ControlModifier);
    EXPECT_TRUE(comes([&] { return revision(id) == 2; }));
}

/// The first cell in reading order that shows something else.
Point cellOtherThan(const core::Texture& texture, core::PaletteIndex index) {
    const core::Grid& grid = texture.grid();
    for (int i = 0; i < grid.width() * grid.height(); ++i) {
        const Point cell{i % grid.width(), i / grid.width()};
        if (grid.at(cell.x, cell.y) != index) return cell;
    }
    return {};
}

struct ToolCase {
    const char* action;
    Point from;
    Point to;
    tasks::TouchOperation operation;
};

TEST_F(TouchingUp, HasToolsThatDoWhatTheOperationsDo) {
    const auto id = add(smallTexture("kelp", 0x5a3c));
    OpenEdit open(m_folder, id);
    const core::Texture before = stored(id);
    const Point other = cellOtherThan(before, 2);
    const std::vector<ToolCase> cases = {
        {"lineTool", {0, 0}, {7, 3}, tasks::DrawLine{{{0, 0}, {7, 3}}, penOf(2)}},
        {"rectangleTool",
         {1, 1},
         {5, 6},
         tasks::DrawRectangle{{1, 1}, {5, 6}, tasks::Interior::Empty, penOf(2)}},
        {"ellipseTool",
         {0, 1},
         {7, 6},
         tasks::DrawEllipse{{0, 1}, {7, 6}, tasks::Interior::Empty, penOf(2)}},
        {"fillTool", other, other, tasks::Fill{other, picture::Neighbours::Four, penOf(2)}},
        {"fillAlikeTool", other, other, tasks::FillAlike{other, penOf(2)}},
        {"gradientTool", {0, 0}, {7, 7}, tasks::DrawGradient{{{0, 0}, {7, 7}, {2, 1}}, {}}},
        {"cropTool", {6, 5}, {2, 1}, tasks::Crop{{6, 5}, {2, 1}}},
    };
    open.colours().pick(2);
    open.colours().pickOther(1);
    for (const ToolCase& each : cases) {
        open.act(each.action);
        open.stroke(each.from, each.to);
        EXPECT_EQ(open.work(), after(before, each.operation)) << each.action;
        open.act("undo");
        EXPECT_EQ(open.work(), before) << each.action;
    }
}

TEST_F(TouchingUp, BendsACurveThroughTheThirdPlace) {
    const auto id = add(plain("rope", 12, 12));
    OpenEdit open(m_folder, id);
    open.colours().pick(1);
    open.act("curveTool");
    open.stroke({0, 11}, {11, 11});
    open.hover({6, 2});
    EXPECT_EQ(open.at(6, 2), 1);
    open.press({6, 5});
    open.release({6, 5});
    EXPECT_EQ(open.work(),
              after(stored(id), tasks::DrawCurve{{0, 11}, {6, 5}, {11, 11}, penOf(1)}));
}

TEST_F(TouchingUp, GoesByTheOptionsOfATool) {
    const auto id = add(plain("buoy", 12, 12));
    OpenEdit open(m_folder, id);
    open.colours().pick(1);
    tasks::Pen pen = penOf(1);
    open.key(Qt::Key_Plus);
    open.key(Qt::Key_Plus);
    EXPECT_EQ(open.part<QSpinBox>("brushSize").value(), 3);
    open.part<QCheckBox>("roundBrush").click();
    pen.brush = {3, picture::BrushShape::Round};
    open.stroke({2, 2}, {9, 2});
    EXPECT_EQ(open.work(), after(stored(id), tasks::DrawLine{{{2, 2}, {9, 2}}, pen}));
    open.act("undo");
    EXPECT_FALSE(open.part<QCheckBox>("filled").isEnabled()) << "a pen has no inside";
    open.key(Qt::Key_E);
    open.part<QCheckBox>("filled").click();
    open.stroke({2, 2}, {9, 9});
    EXPECT_EQ(open.work(),
              after(stored(id), tasks::DrawEllipse{{2, 2}, {9, 9}, tasks::Interior::Filled, pen}));
}

TEST_F(TouchingUp, PaintsAroundTheEdgesWithTheNeighboursShown) {
    const auto id = add(plain("foam", 8, 8));
    OpenEdit open(m_folder, id);
    open.colours().pick(1);
    const int side = open.canvas().cellSide();
    open.key(Qt::Key_W);
    EXPECT_TRUE(open.part<QCheckBox>("around").isChecked());
    EXPECT_LT(open.canvas().cellSide(), side) << "room for the neighbours";
    open.stroke({6, 0}, {9, 0});
    for (const int x : {6, 7, 0, 1}) EXPECT_EQ(open.at(x, 0), 1) << x;
    EXPECT_EQ(open.at(2, 0), 0);
    const QImage seen = open.canvas().grab().toImage();
    const auto colourAt = [&](Point cell) {
        return seen.pixelColor((open.canvas().middleOf(cell) * seen.devicePixelRatio()).toPoint());
    };
    EXPECT_NE(colourAt({8, 0}), colourAt({8, 1})) << "the neighbour repeats what was painted";
}

TEST_F(TouchingUp, MirrorsWhatIsPainted) {
    const auto id = add(plain("net", 8, 8));
    OpenEdit open(m_folder, id);
    open.colours().pick(1);
    auto& symmetry = open.part<QComboBox>("symmetry");
    open.key(Qt::Key_S);
    EXPECT_EQ(symmetry.currentIndex(), static_cast<int>(picture::Symmetry::LeftRight));
    open.stroke({1, 2}, {1, 2});
    EXPECT_EQ(open.at(6, 2), 1);
    symmetry.setCurrentIndex(static_cast<int>(picture::Symmetry::Eight));
    open.stroke({0, 3}, {0, 3});
    for (const Point cell : {Point{3, 0}, {4, 0}, {7, 3}, {7, 4}, {3, 7}, {4, 7}, {0, 4}})
        EXPECT_EQ(open.at(cell.x, cell.y), 1);
    open.act("cropTool");
    open.stroke({0, 0}, {7, 3});
    EXPECT_EQ(symmetry.currentIndex(), static_cast<int>(picture::Symmetry::Four))
        << "eightfold is for squares alone";
    open.key(Qt::Key_S);
    EXPECT_EQ(symmetry.currentIndex(), 0);
}

TEST_F(TouchingUp, PicksColoursUpFromCellsAndByThePointer) {
    const auto id = add(smallTexture("kelp", 0x5a3c));
    OpenEdit open(m_folder, id);
    for (const Point cell : {Point{0, 0}, {1, 0}, {2, 0}, {5, 3}}) {
        open.mouse(QEvent::MouseButtonPress, cell, Qt::RightButton, Qt::RightButton);
        EXPECT_EQ(open.colours().colour(), stored(id).grid().at(cell));
    }
    QTest::mouseClick(&open.colours(), Qt::LeftButton, {}, open.colours().swatch(2).center());
    EXPECT_EQ(open.colours().colour(), 2);
    QTest::mouseClick(&open.colours(), Qt::RightButton, {}, open.colours().swatch(0).center());
    EXPECT_EQ(open.colours().other(), 0);
    open.colours().setFocus();
    open.key(Qt::Key_Left);
    EXPECT_EQ(open.colours().colour(), 1);
    open.key(Qt::Key_Return);
    EXPECT_EQ(open.colours().other(), 1);
}

TEST_F(TouchingUp, LeavesKeysToTheFieldsThatOneTypesIn) {
    const auto id = add(plain("kelp", 8, 8));
    OpenEdit open(m_folder, id);
    auto& brush = open.part<QSpinBox>("brushSize");
    brush.setFocus();
    brush.selectAll();
    open.key(Qt::Key_3);
    EXPECT_EQ(brush.value(), 3);
    EXPECT_EQ(open.colours().colour(), 0);
    open.act("libraryPlace");
    open.type("flp");
    EXPECT_TRUE(open.part<QAction>("penTool").isChecked()) << "letters belong to the search there";
    EXPECT_EQ(open.part<QLineEdit>("searchField").text(), QStringLiteral("flp"));
}

TEST_F(TouchingUp, ShowsAnOperationBeforeItIsDone) {
    const auto id = add(smallTexture("kelp", 0x5a3c));
    OpenEdit open(m_folder, id);
    const auto turned = [&](picture::Turn turn) {
        return after(stored(id), tasks::TurnCells{turn});
    };
    open.chooseOperation("Turn");
    EXPECT_TRUE(comes([&] { return open.work() == turned(picture::Turn::Quarter); }));
    open.part<QComboBox>("answer0").setCurrentIndex(2);
    EXPECT_TRUE(comes([&] { return open.work() == turned(picture::Turn::ThreeQuarters); }));
    open.click("leaveOperation");
    EXPECT_EQ(open.work(), stored(id));
    EXPECT_FALSE(open.part<QPushButton>("undoButton").isEnabled()) << "nothing was done yet";
    open.chooseOperation("Turn");
    ASSERT_TRUE(comes([&] { return open.isOffered("acceptOperation"); }));
    open.click("acceptOperation");
    EXPECT_EQ(open.work(), turned(picture::Turn::Quarter));
    EXPECT_EQ(open.part<QComboBox>("operations").currentIndex(), 0) << "it is not done twice";
    EXPECT_TRUE(open.part<QAction>("undo").text().endsWith(QStringLiteral(": Turn")));
    open.act("undo");
    EXPECT_EQ(open.work(), stored(id));
}

TEST_F(TouchingUp, AsksOperationsForNumbersColoursAndPalettes) {
    const auto id = add(smallTexture("kelp", 0x5a3c));
    ASSERT_THAT(catalogue::addPalette(m_folder.library(), "dusk",
                                      *core::Palette::create({{10, 10, 30}, {200, 120, 80}})),
                tests::isOk());
    OpenEdit open(m_folder, id);
    const core::Texture before = stored(id);
    open.chooseOperation("Shift around");
    open.part<QSpinBox>("answer0").setValue(3);
    open.part<QSpinBox>("answer1").setValue(-1);
    EXPECT_TRUE(comes([&] { return open.work() == after(before, tasks::ShiftCells{{3, -1}}); }));
    open.colours().pick(2);
    open.colours().pickOther(0);
    open.chooseOperation("Replace a colour");
    EXPECT_TRUE(comes([&] { return open.work() == after(before, tasks::ReplaceColour{2, 0}); }));
    open.chooseOperation("Recolour");
    EXPECT_EQ(open.part<QComboBox>("answer0").currentText(), QStringLiteral("dusk"));
    EXPECT_TRUE(comes([&] { return open.work().palette().size() == 2; }));
    open.click("acceptOperation");
    EXPECT_EQ(open.work().palette().size(), 2);
    EXPECT_LT(open.colours().colour(), 2) << "what is picked is in the new palette";
}

TEST_F(TouchingUp, SaysWhyAnOperationCannotBeDone) {
    const auto id = add(smallTexture("kelp", 11));
    OpenEdit open(m_folder, id);
    open.chooseOperation("Enlarge");
    open.part<QSpinBox>("answer0").setValue(200);
    ASSERT_TRUE(comes([&] { return open.part<QWidget>("operationError").isVisible(); }));
    EXPECT_FALSE(open.words("operationError").isEmpty());
    EXPECT_FALSE(open.isOffered("acceptOperation"));
    EXPECT_EQ(open.work(), stored(id));
    open.part<QSpinBox>("answer0").setValue(2);
    EXPECT_TRUE(comes([&] { return open.isOffered("acceptOperation"); }));
    EXPECT_FALSE(open.part<QWidget>("operationError").isVisible());
    open.stroke({0, 0}, {0, 0});
    EXPECT_EQ(open.work().grid().size(), (core::Size{8, 8})) << "one paints on what there is";
}

TEST_F(TouchingUp, SaysWhatTheWorkCostsWhileOneWorks) {
    const auto id = add(plain("kelp", 16, 16));
    OpenEdit open(m_folder, id);
    const auto drawing = [&] { return open.words("workDrawing"); };
    ASSERT_TRUE(comes([&] { return drawing().endsWith(QStringLiteral(" s")); }));
    EXPECT_TRUE(open.words("workCode").endsWith(QStringLiteral(" characters")));
    EXPECT_TRUE(open.words("sideSeam").startsWith(QStringLiteral("1.0 ×")));
    const QImage tiles = open.part<PictureView>("workTiles").image();
    open.colours().pick(3);
    open.stroke({0, 0}, {0, 15});
    EXPECT_NE(open.part<PictureView>("workTiles").image(), tiles);
    EXPECT_TRUE(comes([&] { return drawing().contains(QStringLiteral("(was ")); }))
        << drawing().toStdString();
    EXPECT_FALSE(open.words("sideSeam").startsWith(QStringLiteral("1.0 ×")));
}

TEST_F(TouchingUp, KeepsAsOneRevision) {
    const auto id = add(plain("kelp", 8, 8));
    OpenEdit open(m_folder, id);
    EXPECT_FALSE(open.part<QPushButton>("keepButton").isEnabled());
    open.colours().pick(1);
    open.stroke({0, 0}, {7, 7});
    open.stroke({0, 7}, {7, 0});
    const core::Texture work = open.work();
    open.click("keepButton");
    ASSERT_TRUE(comes([&] { return revision(id) == 2; }));
    EXPECT_EQ(stored(id), work);
    EXPECT_TRUE(
        comes([&] { return open.words("notice").startsWith(QStringLiteral("Kept kelp")); }));
    EXPECT_FALSE(open.part<QPushButton>("keepButton").isEnabled());
    open.act("undo");
    EXPECT_TRUE(open.part<QPushButton>("keepButton").isEnabled()) << "what was kept can go back";
}

TEST_F(TouchingUp, KeepsWhenOneLeavesAndGoesOnWhereOneWas) {
    const auto kelp = add(plain("kelp", 8, 8));
    const auto foam = add(plain("foam", 6, 6));
    OpenEdit open(m_folder, kelp);
    open.colours().pick(1);
    open.stroke({0, 0}, {7, 7});
    const core::Texture work = open.work();
    open.act("libraryPlace");
    open.act("editPlace");
    EXPECT_EQ(open.work(), work);
    EXPECT_TRUE(open.part<QAction>("undo").isEnabled()) << "its steps are there still";
    EXPECT_TRUE(comes([&] { return stored(kelp) == work; }));
    EXPECT_EQ(revision(kelp), 2);
    open.stroke({1, 0}, {1, 0});
    open.act("libraryPlace");
    open.grid().selectIds({foam});
    open.act("editPlace");
    EXPECT_TRUE(comes([&] { return open.work() == stored(foam); }));
    EXPECT_EQ(revision(kelp), 3) << "it was kept before another was taken up";
    EXPECT_FALSE(open.part<QAction>("undo").isEnabled());
}

TEST_F(TouchingUp, KeepsWhatIsDoneWhileItIsKeeping) {
    const auto kelp = add(plain("kelp", 8, 8));
    const auto foam = add(plain("foam", 6, 6));
    OpenEdit open(m_folder, kelp);
    open.colours().pick(1);
    open.stroke({0, 0}, {7, 7});
    open.act("libraryPlace");
    open.act("editPlace");
    open.stroke({1, 0}, {1, 0});
    const core::Texture work = open.work();
    open.act("libraryPlace");
    open.grid().selectIds({foam});
    open.act("editPlace");
    EXPECT_TRUE(comes([&] { return stored(kelp) == work; }));
    EXPECT_TRUE(comes([&] { return open.work() == stored(foam); }));
}

TEST_F(TouchingUp, LosesNothingWhenClosedInTheMiddleOfAStroke) {
    const auto id = add(plain("kelp", 8, 8));
    OpenEdit open(m_folder, id);
    open.colours().pick(2);
    open.stroke({0, 0}, {7, 0});
    open.press({0, 1});
    open.drag({5, 1});
    const core::Texture work = open.work();
    EXPECT_TRUE(open.window.close());
    EXPECT_EQ(stored(id), work);
    EXPECT_EQ(revision(id), 2) << "all of it is one revision";
}

TEST_F(TouchingUp, ClosesWhileItKeepsAndLosesNothing) {
    const auto id = add(plain("kelp", 8, 8));
    OpenEdit open(m_folder, id);
    open.colours().pick(2);
    open.stroke({0, 0}, {7, 0});
    open.act("keep");
    open.stroke({0, 3}, {7, 3});
    const core::Texture work = open.work();
    EXPECT_TRUE(open.window.close());
    EXPECT_EQ(stored(id), work);
    EXPECT_EQ(ids().size(), 1U);
}

TEST_F(TouchingUp, KeepsBesideWhatAnotherProgramMade) {
    const auto id = add(plain("kelp", 8, 8));
    OpenEdit open(m_folder, id);
    open.colours().pick(2);
    open.stroke({0, 0}, {7, 0});
    const core::Texture work = open.work();
    changeElsewhere(id, {4, 4});
    const core::Texture theirs = stored(id);
    EXPECT_TRUE(comes([&] {
        return open.words("notice").contains(QStringLiteral("Another program has changed kelp"));
    })) << "one is told as soon as it is noticed";
    EXPECT_EQ(open.work(), work);
    open.click("keepButton");
    ASSERT_TRUE(comes([&] { return ids().size() == 2; }));
    EXPECT_EQ(stored(id), theirs);
    const auto all = ids();
    const auto beside = all[0] == id ? all[1] : all[0];
    EXPECT_EQ(stored(beside).grid(), work.grid());
    EXPECT_EQ(stored(beside).text().title, "kelp (touched up)");
    EXPECT_TRUE(comes(
        [&] { return open.words("notice").contains(QStringLiteral("a texture of its own")); }));
    EXPECT_TRUE(comes([&] { return !open.part<QPushButton>("keepButton").isEnabled(); }));
}

TEST_F(TouchingUp, ShowsAnewWhatAnotherProgramChangedIfNothingWasDoneHere) {
    const auto id = add(plain("kelp", 8, 8));
    OpenEdit open(m_folder, id);
    changeElsewhere(id, {4, 4});
    EXPECT_TRUE(comes([&] { return open.at(4, 4) == 3; }));
    EXPECT_FALSE(open.part<QPushButton>("undoButton").isEnabled());
}

TEST_F(TouchingUp, SaysThatATextureWasRemoved) {
    const auto id = add(plain("kelp", 8, 8));
    OpenEdit open(m_folder, id);
    ASSERT_THAT(catalogue::removeTextures(m_folder.library(), {&id, 1}), tests::isOk());
    EXPECT_TRUE(comes([&] { return open.part<QWidget>("nothingToEdit").isVisible(); }));
    EXPECT_EQ(open.part<QWidget>("nothingToEdit").findChild<QLabel*>()->text(),
              QStringLiteral("kelp was removed from the library. Choose another texture."));
}

TEST_F(TouchingUp, KeepsWorkOnATextureThatWasRemovedMeanwhile) {
    const auto id = add(plain("kelp", 8, 8));
    OpenEdit open(m_folder, id);
    open.colours().pick(2);
    open.stroke({0, 0}, {7, 0});
    const core::Texture work = open.work();
    ASSERT_THAT(catalogue::removeTextures(m_folder.library(), {&id, 1}), tests::isOk());
    EXPECT_TRUE(open.window.close());
    ASSERT_EQ(ids().size(), 1U);
    EXPECT_EQ(stored(ids().front()).grid(), work.grid());
}

TEST_F(TouchingUp, StoresNothingTwiceAndClosesAllTheSame) {
    const auto id = add(plain("kelp", 8, 8));
    tasks::DrawLine line{{{0, 0}, {7, 0}}, penOf(2)};
    const auto twin = add(after(stored(id), line));
    OpenEdit open(m_folder, id);
    open.colours().pick(2);
    open.stroke({0, 0}, {7, 0});
    open.click("keepButton");
    ASSERT_TRUE(comes([&] { return open.part<QWidget>("noticeBar").isVisible(); }));
    EXPECT_THAT(open.words("notice").toStdString(),
                ::testing::HasSubstr(std::to_string(twin.value)));
    EXPECT_TRUE(open.part<QPushButton>("keepButton").isEnabled());
    EXPECT_TRUE(open.window.close());
    EXPECT_EQ(ids().size(), 2U);
    EXPECT_EQ(revision(id), 1);
}

TEST_F(TouchingUp, StaysOpenWhileWorkCannotBeKept) {
    const auto id = add(plain("kelp", 8, 8));
    OpenEdit open(m_folder, id);
    open.colours().pick(2);
    open.stroke({0, 0}, {7, 0});
    ASSERT_TRUE(comes([&] { return open.words("workDrawing").contains(QStringLiteral("was")); }));
    // As on a disk that is gone for a while.
    const std::filesystem::path disk = std::filesystem::path(m_folder.path()).parent_path();
    const std::filesystem::path gone = disk.string() + "-gone";
    std::filesystem::rename(disk, gone);
    EXPECT_FALSE(open.window.close());
    EXPECT_TRUE(open.window.isVisible());
    EXPECT_FALSE(open.words("notice").isEmpty());
    EXPECT_EQ(open.at(3, 0), 2) << "it lies there still";
    std::filesystem::rename(gone, disk);
    EXPECT_TRUE(open.window.close());
    EXPECT_EQ(revision(id), 2);
}

TEST_F(TouchingUp, ComesNearerAndGoesAlong) {
    const auto id = add(plain("kelp", 64, 64));
    OpenEdit open(m_folder, id);
    const int side = open.canvas().cellSide();
    open.act("larger");
    EXPECT_GT(open.canvas().cellSide(), side);
    open.act("smaller");
    EXPECT_EQ(open.canvas().cellSide(), side);
    const QPointF place = open.canvas().middleOf({10, 10});
    QWheelEvent nearer(place, open.canvas().mapToGlobal(place), {}, {0, 120}, Qt::NoButton,
                       Qt::ControlModifier, Qt::NoScrollPhase, false);
    for (int i = 0; i < 8; ++i) QCoreApplication::sendEvent(&open.canvas(), &nearer);
    EXPECT_GT(open.canvas().cellSide(), 2 * side);
    const double half = open.canvas().cellSide() / 2.0;
    EXPECT_LE(std::abs(open.canvas().middleOf({10, 10}).x() - place.x()), half)
        << "what is under the pointer stays there";
    open.key(Qt::Key_Right, Qt::NoModifier, 63);
    EXPECT_TRUE(open.canvas().rect().contains(open.canvas().middleOf({63, 0}).toPoint()))
        << "the cell where the keys are is in sight";
    open.mouse(QEvent::MouseButtonPress, {63, 0}, Qt::MiddleButton, Qt::MiddleButton);
    const QPointF before = open.canvas().middleOf({63, 0});
    open.mouse(QEvent::MouseMove, {60, 1}, Qt::NoButton, Qt::MiddleButton);
    EXPECT_NE(open.canvas().middleOf({63, 0}), before);
    open.mouse(QEvent::MouseButtonRelease, {60, 1}, Qt::MiddleButton, Qt::NoButton);
    open.key(Qt::Key_Z);
    EXPECT_EQ(open.canvas().cellSide(), side);
}

TEST_F(TouchingUp, SaysWhereOneIsToThoseWhoCannotSee) {
    const auto id = add(plain("kelp", 8, 8));
    OpenEdit open(m_folder, id);
    open.key(Qt::Key_Right, Qt::NoModifier, 2);
    open.key(Qt::Key_Down);
    EXPECT_TRUE(open.canvas().accessibleDescription().startsWith(
        QStringLiteral("Column 2, row 1: colour 0")));
    EXPECT_EQ(open.words("cellWords"), open.canvas().accessibleDescription());
    for (QWidget* const each : open.part<QWidget>("editPage").findChildren<QWidget*>()) {
        const bool takesKeys = each->isVisible() && (each->focusPolicy() & Qt::TabFocus) != 0;
        auto* const button = qobject_cast<QAbstractButton*>(each);
        const bool isNamed = !each->accessibleName().isEmpty() ||
                             (button != nullptr && !button->text().isEmpty()) ||
                             qobject_cast<QSpinBox*>(each->parentWidget()) != nullptr;
        EXPECT_TRUE(!takesKeys || isNamed) << each->objectName().toStdString();
    }
}

TEST(EditPageTest, WhatIsNotKeptIsSavedSoonAndComesBackAfterACrash) {
    LibraryFolder folder;
    const core::TextureId id = folder.add(plain("kelp", 8, 8));
    const std::string file = folder.path() + ".work-1";
    core::Texture painted = plain("kelp", 8, 8);
    {
        OpenEdit open(folder, id);
        open.colours().pick(2);
        open.stroke({1, 1}, {4, 1});
        painted = open.work();
        ASSERT_TRUE(comes([&] { return std::filesystem::exists(file); }));
        const std::filesystem::path copy = folder.path("left");
        std::filesystem::copy_file(file, copy);
        open.act("undo");
        EXPECT_TRUE(comes([&] { return !std::filesystem::exists(file); })) << "nothing to keep";
        open.act("redo");
        ASSERT_TRUE(comes([&] { return std::filesystem::exists(file); }));
        open.act("keep");
        EXPECT_TRUE(comes([&] { return !std::filesystem::exists(file); })) << "it is kept";
        open.window.close();
        // As if the program had died in the middle of it.
        ASSERT_TRUE(catalogue::revertTexture(folder.library(), id, 1).has_value());
        std::filesystem::rename(copy, file);
    }
    OpenWindow open(folder);
    EXPECT_TRUE(comes([&] {
        return open.words("notice").startsWith(u"What was painted before the program ended");
    }));
    EXPECT_EQ(catalogue::readTexture(folder.library(), id)->texture.grid(), painted.grid());
    EXPECT_FALSE(std::filesystem::exists(file));
}

}  // namespace
}  // namespace pantile::desktop
