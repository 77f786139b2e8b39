// A maker's first evening from beginning to end in the one real window, on the real samples: first
// start, adding, converting, touching up, tagging, finding, sharing, reading what came back
// damaged, choosing, writing, watching. Under a screen it leaves pictures for the user guide: see
// tests/desktop/take_screenshots.

#include <cstdlib>
#include <utility>

#include <QAbstractButton>
#include <QApplication>
#include <QClipboard>
#include <QComboBox>
#include <QDialog>
#include <QDir>
#include <QGuiApplication>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QScreen>
#include <QSlider>
#include <QSpinBox>
#include <QTreeWidget>

#include <gtest/gtest.h>

#include "board/calibration.h"
#include "catalogue/canvases.h"
#include "catalogue/loads.h"
#include "catalogue/palettes.h"
#include "catalogue/query_parser.h"
#include "catalogue/reader.h"
#include "codec/text_code.h"
#include "core/text.h"
#include "desktop/dialogs/convert_dialog.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/views/drawing_screen.h"
#include "desktop/views/edit_canvas.h"
#include "desktop/views/palette_picker.h"
#include "library_fixture.h"
#include "open_window.h"
#include "tasks/write_load.h"

namespace pantile::desktop {
namespace {

using tests::comes;
using tests::LibraryFolder;
using tests::OpenWindow;

constexpr int kSampleTextures = 48;

Shade tourShade() {
    return qEnvironmentVariable("PANTILE_SHADE") == u"dark" ? Shade::Dark : Shade::Light;
}

/// The program's look for as long as the tour takes.
class Dressed {
public:
    Dressed() { applyTheme(*qApp, makeTheme(tourShade())); }

    ~Dressed() {
        qApp->setStyleSheet({});
        QApplication::setPalette({});
    }

    Dressed(const Dressed&) = delete;
    Dressed& operator=(const Dressed&) = delete;
};

class WindowTour : public ::testing::Test {
protected:
    WindowTour() {
        qputenv("PANTILE_SAMPLES", PANTILE_SOURCE_DIR "/sample_library/textures");
        open = std::make_unique<OpenWindow>(folder, tourShade());
        open->window.move(0, 0);
        open->window.resize(open->window.screen()->size());
    }

    ~WindowTour() override { qunsetenv("PANTILE_SAMPLES"); }

    /// What stands on the screen, where there is one and pictures are asked for; all of it, or a
    /// part.
    void shoot(const char* name, const QWidget* part = nullptr) {
        const QString shots = qEnvironmentVariable("PANTILE_SHOTS");
        if (shots.isEmpty()) return;
        QTest::qWait(300);  // Until everything is painted.
        const QString shade =
            tourShade() == Shade::Dark ? QStringLiteral("dark") : QStringLiteral("light");
        EXPECT_TRUE(QDir().mkpath(shots));
        const QRect place = part != nullptr ? QRect(part->mapToGlobal(QPoint(0, 0)), part->size())
                                            : open->window.screen()->geometry();
        EXPECT_TRUE(
            open->window.screen()
                ->grabWindow(0, place.x(), place.y(), place.width(), place.height())
                .save(QStringLiteral("%1/%2-%3.png").arg(shots, QLatin1String(name), shade)));
    }

    void click(const char* button) {
        QTest::mouseClick(&open->part<QAbstractButton>(button), Qt::LeftButton);
    }

    std::vector<catalogue::TextureRow> find(const std::string& query) {
        return catalogue::findTextures(folder.library(), *catalogue::parseQuery(query))->rows;
    }

    std::vector<core::TextureId> idsOf(const std::string& query) {
        std::vector<core::TextureId> ids;
        for (const catalogue::TextureRow& row : find(query)) ids.push_back(row.id);
        return ids;
    }

    void startEmpty() {
        ASSERT_TRUE(comes([&] { return open->part<QWidget>("addSamplesButton").isVisible(); }));
        EXPECT_FALSE(open->part<QWidget>("loadTray").isVisible());
        shoot("first-start");
    }

    void addSamples() {
        click("addSamplesButton");
        ASSERT_TRUE(comes([&] { return open->shown() >= kSampleTextures; }));
        ASSERT_TRUE(comes([&] { return open->words("notice").startsWith(u"Added"); }));
        ASSERT_TRUE(comes([&] { return open->shown() == std::ssize(find("")); }));
        click("dismiss");
        shoot("library");
    }

    void convertAPicture() {
        open->prompts.files = {
            QStringLiteral(PANTILE_SOURCE_DIR "/sample_library/pictures/lighthouse-at-dusk.png")};
        open->act("addPictures");
        const auto dialog = [&] {
            return open->window.findChild<ConvertDialog*>(QStringLiteral("convertDialog"));
        };
        ASSERT_TRUE(comes([&] { return dialog() != nullptr && dialog()->isExact(); }));
        ASSERT_TRUE(comes([&] { return !open->words("convertedDrawing").isEmpty(); }));
        ASSERT_TRUE(
            comes([&] { return !open->part<QAbstractButton>("dither11").icon().isNull(); }));
        const auto& dither = open->part<QWidget>("dither0");
        EXPECT_TRUE(comes([&] { return dither.visibleRegion().boundingRect() == dither.rect(); }))
            << "cut off";
        shoot("convert");
        click("convertAdd");
        ASSERT_TRUE(comes([&] { return open->words("detailTitle") == u"lighthouse at dusk"; }));
    }

    void touchUp() {
        open->act("touchUp");
        auto& canvas = open->part<EditCanvas>("editCanvas");
        ASSERT_TRUE(comes([&] { return canvas.texture().has_value(); }));
        open->act("rectangleTool");
        open->part<PalettePicker>("palettePicker").pick(13);
        const auto at = [&](int x, int y) { return canvas.middleOf({x, y}).toPoint(); };
        QTest::mousePress(&canvas, Qt::LeftButton, {}, at(4, 4));
        QTest::mouseMove(&canvas, at(12, 9));
        QTest::mouseRelease(&canvas, Qt::LeftButton, {}, at(12, 9));
        EXPECT_TRUE(comes([&] { return open->part<QWidget>("workDrawing").isVisible(); }));
        ASSERT_TRUE(comes([&] { return !open->words("workDrawing").isEmpty(); }));
        shoot("edit");
        open->act("keep");
        ASSERT_TRUE(comes([&] { return open->words("notice").startsWith(u"Kept"); }));
        click("dismiss");
        open->act("libraryPlace");
    }

    void tagSome() {
        open->grid().selectIds(idsOf("title:rope | title:net"));
        open->act("editWords");
        QTest::keyClicks(&open->part<QLineEdit>("wordsAdd"), QStringLiteral("quay"));
        open->part<QComboBox>("wordsStars").setCurrentIndex(6);
        shoot("words");
        click("wordsChange");
        ASSERT_TRUE(comes([&] { return !find("tag:quay").empty(); }));
    }

    void findThem() {
        const int expected = static_cast<int>(find("tag:quay draw<60s").size());
        ASSERT_GT(expected, 0);
        open->type("tag:quay draw<60s");
        ASSERT_TRUE(comes([&] { return open->shown() == expected; }));
        open->grid().selectAll();
        shoot("find");
    }

    QString shareOne() {
        open->grid().selectIds({open->grid().selectedIds().front()});
        open->act("codesPlace");
        EXPECT_TRUE(
            comes([&] { return !open->part<QPlainTextEdit>("post").toPlainText().isEmpty(); }));
        click("copyPostButton");
        EXPECT_EQ(QGuiApplication::clipboard()->text(),
                  open->part<QPlainTextEdit>("post").toPlainText());
        return QGuiApplication::clipboard()->text();
    }

    // A friend's answer: one code with a slip in it, and one that lost its end.
    void readADamagedOne(const QString& code) {
        QString slip = code;
        slip[60] = slip[60] == u'k' ? u'm' : u'k';
        const QString other = codeOf(find("title:shingle").front().id);
        open->part<QPlainTextEdit>("pastedText")
            .setPlainText(QStringLiteral("Look what came in with the tide:\n\n%1\n\nand the beach, "
                                         "but my phone ate the rest:\n\n%2\n")
                              .arg(slip, other.left(other.size() * 2 / 3)));
        auto& read = open->part<QListWidget>("readList");
        ASSERT_TRUE(comes([&] { return read.count() == 2; }));
        shoot("codes");
        open->act("showAll");
        ASSERT_TRUE(comes([&] { return open->shown() > kSampleTextures; }));
    }

    QString codeOf(core::TextureId id) {
        const auto record = catalogue::readTexture(folder.library(), id);
        return QString::fromStdString(codec::encodeTextCode(record->texture)->text);
    }

    void choose() {
        open->grid().selectIds(idsOf("size:64x64"));
        open->act("boardsPlace");
        open->act("chooseForMe");
        ASSERT_TRUE(comes([&] {
            const auto loads = catalogue::listLoads(folder.library());
            return !loads->empty() && loads->front().slots.size() == 5;
        }));
        ASSERT_TRUE(comes([&] { return open->part<QWidget>("leftOut").isVisible(); }));
        ASSERT_TRUE(comes([&] { return !open->words("trayByteWords").startsWith(u"0 "); }));
    }

    void write() {
        open->prompts.folder = QString::fromStdString(folder.path("board"));
        click("writeLoadButton");
        ASSERT_TRUE(comes([&] { return open->words("notice").startsWith(u"Wrote the load"); }));
        const auto load = catalogue::listLoads(folder.library())->front();
        const auto verified =
            tasks::verifyLoadFile(folder.path("board/" + core::safeFileName(load.name) + ".h"));
        ASSERT_TRUE(verified.has_value());
        EXPECT_TRUE(verified->verified());
        shoot("written");
        click("dismiss");
    }

    void watch() {
        const auto* const state = open->part<DrawingScreen>("plannedScreen").state();
        ASSERT_NE(state, nullptr);
        auto& time = open->part<QSlider>("drawingTime");
        time.setValue(static_cast<int>(state->milliseconds() * 2 / 3));
        EXPECT_GT(state->landed(), 0U);
        shoot("drawing");
        time.setValue(time.maximum());
        EXPECT_EQ(state->cells(), state->film().end.cells);
    }

    // Where the cells of the maker's own screen really are.
    void calibrate() {
        open->act("calibrate");
        auto& canvas = open->part<QComboBox>("calibrationCanvas");
        canvas.setCurrentIndex(canvas.findData(QStringLiteral("cells-64")));
        const core::Canvas guess = *catalogue::readCanvas(folder.library(), "cells-64");
        const auto seen = board::calibrationOn(guess, 9, {7, 6})->reading;
        const auto read = [&](const char* number, int value) {
            open->part<QSpinBox>(number).setValue(value);
        };
        read("nearColumn", seen.near.x);
        read("nearRow", seen.near.y);
        read("farColumn", seen.far.x);
        read("farRow", seen.far.y);
        if (seen.pairColumn) read("pairColumn", *seen.pairColumn);
        if (seen.pairRow) read("pairRow", *seen.pairRow);
        ASSERT_TRUE(open->words("calibrationFound").contains(u"cells of 9 counts"));
        shoot("calibrate", &open->part<QDialog>("calibrationDialog"));
        closeDialog("calibrationDialog");
    }

    void adjust() {
        const core::Palette own =
            catalogue::readTexture(folder.library(), find("title:shingle").front().id)
                ->texture.palette();
        ASSERT_TRUE(catalogue::addPalette(folder.library(), "tidewrack", own).has_value());
        open->act("profiles");
        auto& tree = open->part<QTreeWidget>("profileTree");
        for (const auto& shot : {std::pair("cells-64", "canvas"), std::pair("flash-32k", "board"),
                                 std::pair("tidewrack", "palette")}) {
            const char* const profile = shot.first;
            const auto item = [&] {
                const auto found =
                    tree.findItems(QLatin1String(profile), Qt::MatchExactly | Qt::MatchRecursive);
                return found.empty() ? nullptr : found.front();
            };
            ASSERT_TRUE(comes([&] { return item() != nullptr; })) << profile;
            tree.setCurrentItem(item());
            EXPECT_GT(tree.visualItemRect(item()).height(), tree.fontMetrics().height() + 5);
            shoot(shot.second, &open->part<QDialog>("profilesDialog"));
        }
        closeDialog("profilesDialog");
    }

    void closeDialog(const char* name) {
        auto& dialog = open->part<QDialog>(name);
        QTest::keyClick(&dialog, Qt::Key_Escape);
        EXPECT_TRUE(comes(
            [&] { return open->window.findChild<QDialog*>(QLatin1String(name)) == nullptr; }));
    }

    LibraryFolder folder;
    Dressed look;
    std::unique_ptr<OpenWindow> open;
};

TEST_F(WindowTour, AnEveningFromTheFirstStartToTheDrawing) {
    ASSERT_NO_FATAL_FAILURE(startEmpty());
    ASSERT_NO_FATAL_FAILURE(addSamples());
    ASSERT_NO_FATAL_FAILURE(convertAPicture());
    ASSERT_NO_FATAL_FAILURE(touchUp());
    ASSERT_NO_FATAL_FAILURE(tagSome());
    ASSERT_NO_FATAL_FAILURE(findThem());
    const QString code = shareOne();
    ASSERT_NO_FATAL_FAILURE(readADamagedOne(code));
    ASSERT_NO_FATAL_FAILURE(choose());
    ASSERT_NO_FATAL_FAILURE(write());
    ASSERT_NO_FATAL_FAILURE(watch());
    ASSERT_NO_FATAL_FAILURE(calibrate());
    ASSERT_NO_FATAL_FAILURE(adjust());
    EXPECT_TRUE(open->window.close());
}

}  // namespace
}  // namespace pantile::desktop
