// The calibration helper by mouse and keys: what is written, and what a reading does to a canvas.

#include "desktop/views/calibration_form.h"

#include <filesystem>
#include <fstream>

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QSpinBox>
#include <QVBoxLayout>
#include <QWheelEvent>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "board/cautions.h"
#include "catalogue/canvases.h"
#include "desktop/dialogs/calibration_dialog.h"
#include "desktop/texts.h"
#include "open_window.h"
#include "tasks/keep_estimates.h"
#include "tasks/undo.h"

namespace pantile::desktop {
namespace {

using tests::comes;
using tests::FixedPrompts;
using tests::LibraryFolder;

constexpr int kRealPitch = 9;
constexpr core::Point kRealCentre{101, 63};

core::Canvas guess() {
    core::Canvas canvas;
    canvas.name = "lighthouse toolkit";
    canvas.size = {64, 64};
    canvas.geometry = core::CanvasGeometry::beside(canvas.size);
    canvas.geometry.cellPitch = 8;
    canvas.geometry.gridCentre = {98, 60};
    canvas.geometry.swatchCentre = {900, 30};
    return canvas;
}

class OpenForm {
public:
    explicit OpenForm(LibraryFolder& folder)
        : m_context(folder.open(), prompts, makeTheme(Shade::Light)) {
        m_window.resize(1200, 780);
        m_window.show();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&m_window));
        m_dialog = new CalibrationDialog(m_context, &m_window);
        m_dialog->open();
        m_dialog->form().choose(QStringLiteral("lighthouse toolkit"), {});
    }

    template <typename Widget>
    Widget& part(const char* name) {
        auto* const found = m_window.findChild<Widget*>(QLatin1String(name));
        if (found == nullptr) throw std::runtime_error(std::string("no part ") + name);
        return *found;
    }

    QString words(const char* name) { return part<QLabel>(name).text(); }

    void press(const char* name) { QTest::mouseClick(&part<QPushButton>(name), Qt::LeftButton); }

    void type(const char* field, const QString& text) {
        auto& widget = part<QWidget>(field);
        widget.setFocus();
        QTest::keyClick(&widget, Qt::Key_A, Qt::ControlModifier);
        QTest::keyClicks(&widget, text);
        QTest::keyClick(&widget, Qt::Key_Tab);
    }

    void type(const char* field, int number) { type(field, QString::number(number)); }

    /// As a person would who sees the calibration on the real toolkit.
    void typeReading(const board::CalibrationReading& reading) {
        type("nearColumn", reading.near.x);
        type("nearRow", reading.near.y);
        type("farColumn", reading.far.x);
        type("farRow", reading.far.y);
        if (reading.pairColumn) type("pairColumn", *reading.pairColumn);
        if (reading.pairRow) type("pairRow", *reading.pairRow);
    }

    CalibrationForm& form() { return m_dialog->form(); }

    CalibrationDialog& dialog() { return *m_dialog; }

    FixedPrompts prompts;

private:
    AppContext m_context;
    QWidget m_window;
    CalibrationDialog* m_dialog;
};

class LibraryWithCanvas : public LibraryFolder {
public:
    LibraryWithCanvas() { EXPECT_TRUE(catalogue::addCanvas(library(), guess()).has_value()); }

    core::Canvas canvas() { return *catalogue::readCanvas(library(), "lighthouse toolkit"); }
};

board::CalibrationReading seenOn(const core::Canvas& canvas) {
    return board::calibrationOn(canvas, kRealPitch, kRealCentre)->reading;
}

TEST(CalibrationForm, WritesALoadWhereItIsToldAndSaysWhat) {
    LibraryWithCanvas folder;
    OpenForm open(folder);
    const QString cautions = open.words("calibrationCautions");
    for (const std::string_view each : board::cautions())
        EXPECT_TRUE(cautions.contains(fromUtf8(each)));
    open.prompts.folder = QString::fromStdString(folder.path("card"));
    open.press("calibrationPick");
    EXPECT_EQ(open.part<QLineEdit>("calibrationFolder").text(), open.prompts.folder);
    open.press("calibrationWrite");
    ASSERT_TRUE(comes(
        [&] { return open.words("calibrationWritten").startsWith(QStringLiteral("Written")); }));
    int files = 0;
    for (const auto& each : std::filesystem::recursive_directory_iterator(folder.path("card"))) {
        if (!each.is_regular_file()) continue;
        ++files;
        EXPECT_TRUE(open.words("calibrationWritten")
                        .contains(QString::fromStdString(each.path().filename().string())));
    }
    EXPECT_GE(files, 1);
    EXPECT_EQ(folder.canvas(), guess()) << "nothing of it is kept";
}

TEST(CalibrationForm, ReplacesOnlyWhereThatIsTicked) {
    LibraryWithCanvas folder;
    OpenForm open(folder);
    const QString card = QString::fromStdString(folder.path("card"));
    for (const bool again : {false, true}) {
        open.type("calibrationFolder", card);
        QTest::keyClick(&open.part<QWidget>("calibrationFolder"), Qt::Key_Return);
        const QString begin = again ? QStringLiteral("replace it") : QStringLiteral("Written");
        ASSERT_TRUE(comes([&] { return open.words("calibrationWritten").contains(begin); }))
            << open.words("calibrationWritten").toStdString();
    }
    QTest::mouseClick(&open.part<QAbstractButton>("calibrationReplace"), Qt::LeftButton);
    open.press("calibrationWrite");
    EXPECT_TRUE(comes(
        [&] { return open.words("calibrationWritten").startsWith(QStringLiteral("Written")); }));
}

TEST(CalibrationForm, SaysWhyItCannotWrite) {
    LibraryWithCanvas folder;
    OpenForm open(folder);
    open.press("calibrationWrite");
    EXPECT_TRUE(open.words("calibrationWritten").startsWith(QStringLiteral("There is no folder")));
    std::ofstream(folder.path("file")) << "not a folder";
    open.type("calibrationFolder", QString::fromStdString(folder.path("file")));
    open.press("calibrationWrite");
    EXPECT_TRUE(comes([&] {
        return open.part<QPushButton>("calibrationWrite").isEnabled() &&
               open.words("calibrationWritten").contains(QStringLiteral("file"));
    }));
    core::Canvas small = guess();
    small.name = "small";
    small.size = {12, 12};
    ASSERT_TRUE(catalogue::addCanvas(folder.library(), small).has_value());
    open.form().renew();
    open.form().choose(QStringLiteral("small"), {});
    EXPECT_TRUE(open.words("calibrationPictureWords").contains(QStringLiteral("too small")));
    open.type("calibrationFolder", QString::fromStdString(folder.path("card")));
    open.press("calibrationWrite");
    EXPECT_TRUE(comes(
        [&] { return open.words("calibrationWritten").contains(QStringLiteral("too small")); }));
}

TEST(CalibrationForm, ShowsWhatItFoundBeforeItIsTakenAndCanBeUndone) {
    LibraryWithCanvas folder;
    OpenForm open(folder);
    QSignalSpy taken(&open.form(), &CalibrationForm::taken);
    EXPECT_FALSE(open.part<QPushButton>("calibrationTake").isEnabled());
    EXPECT_TRUE(open.words("calibrationFound").isEmpty());
    const board::CalibrationReading reading = seenOn(guess());
    open.typeReading(reading);
    const auto found = board::calibratedFrom(guess(), reading);
    ASSERT_TRUE(found.has_value());
    EXPECT_TRUE(open.words("calibrationFound")
                    .startsWith(QStringLiteral("Found: cells of %1 counts").arg(found->cellPitch)));
    EXPECT_EQ(folder.canvas(), guess()) << "only looked at so far";
    open.press("calibrationTake");
    ASSERT_TRUE(comes([&] { return !taken.isEmpty(); }));
    EXPECT_EQ(folder.canvas().geometry.cellPitch, found->cellPitch);
    EXPECT_EQ(folder.canvas().geometry.gridCentre, found->gridCentre);
    EXPECT_TRUE(open.words("calibrationFound").contains(QStringLiteral("Undo")));
    EXPECT_EQ(open.part<QSpinBox>("nearColumn").value(), -1) << "a reading counts once";
    EXPECT_FALSE(open.part<QPushButton>("calibrationTake").isEnabled());
    ASSERT_TRUE(tasks::undoLast(folder.library()).has_value());
    EXPECT_EQ(folder.canvas(), guess());
}

TEST(CalibrationForm, ComesToTheRealToolkitInTwoDrawings) {
    LibraryWithCanvas folder;
    OpenForm open(folder);
    for (int drawing = 0; drawing < 2; ++drawing) {
        QSignalSpy taken(&open.form(), &CalibrationForm::taken);
        open.typeReading(seenOn(folder.canvas()));
        open.press("calibrationTake");
        ASSERT_TRUE(comes([&] { return !taken.isEmpty(); }));
    }
    const core::CanvasGeometry geometry = folder.canvas().geometry;
    EXPECT_EQ(geometry.cellPitch, kRealPitch);
    EXPECT_NEAR(geometry.gridCentre.x, kRealCentre.x, 2);
    EXPECT_NEAR(geometry.gridCentre.y, kRealCentre.y, 2);
    EXPECT_EQ(geometry.swatchCentre, guess().geometry.swatchCentre);
}

TEST(CalibrationForm, TakesNothingThatCannotBe) {
    LibraryWithCanvas folder;
    OpenForm open(folder);
    open.typeReading({{2, 2}, {50, 30}, {}, {}});
    EXPECT_TRUE(
        open.words("calibrationFound").contains(QStringLiteral("o pitch and origin explain")));
    EXPECT_FALSE(open.part<QPushButton>("calibrationTake").isEnabled());
    open.typeReading({{40, 40}, {2, 2}, {}, {}});
    EXPECT_TRUE(open.words("calibrationFound").contains(QStringLiteral("far mark")));
    EXPECT_FALSE(open.part<QPushButton>("calibrationTake").isEnabled());
    open.type("farColumn", 640);
    EXPECT_LE(open.part<QSpinBox>("farColumn").value(), 63);
    open.type("farColumn", QStringLiteral("kelp"));
    EXPECT_LE(open.part<QSpinBox>("farColumn").value(), 63);
}

TEST(CalibrationForm, ChangesNothingWhereOneScrollsPast) {
    LibraryWithCanvas folder;
    OpenForm open(folder);
    open.typeReading(seenOn(guess()));
    open.part<QWidget>("calibrationFolder").setFocus();
    const auto turnOn = [&](const char* name) {
        auto& field = open.part<QWidget>(name);
        const QPointF middle(field.width() / 2.0, field.height() / 2.0);
        QWheelEvent wheel(middle, field.mapToGlobal(middle), {}, {0, 120}, Qt::NoButton,
                          Qt::NoModifier, Qt::NoScrollPhase, false);
        QCoreApplication::sendEvent(&field, &wheel);
    };
    const int column = open.part<QSpinBox>("farColumn").value();
    const int canvas = open.part<QComboBox>("calibrationCanvas").currentIndex();
    turnOn("farColumn");
    turnOn("calibrationCanvas");
    EXPECT_EQ(open.part<QSpinBox>("farColumn").value(), column);
    EXPECT_EQ(open.part<QComboBox>("calibrationCanvas").currentIndex(), canvas);
}

TEST(CalibrationForm, WillNotTakeAReadingOfAnotherCanvas) {
    LibraryWithCanvas folder;
    OpenForm open(folder);
    open.typeReading(seenOn(guess()));
    core::Canvas other = guess();
    other.geometry.cellPitch = 12;
    ASSERT_TRUE(tasks::setCanvas(folder.library(), other).has_value());
    open.press("calibrationTake");
    ASSERT_TRUE(comes([&] {
        return open.words("calibrationFound").contains(QStringLiteral("has been changed"));
    }));
    EXPECT_EQ(folder.canvas(), other);
    open.form().renew();
    EXPECT_EQ(open.part<QSpinBox>("nearColumn").value(), -1);
}

TEST(CalibrationForm, LosesNothingWhenItClosesInTheMiddle) {
    LibraryWithCanvas folder;
    board::CalibrationReading reading = seenOn(guess());
    {
        OpenForm open(folder);
        open.type("calibrationFolder", QString::fromStdString(folder.path("card")));
        open.press("calibrationWrite");
        open.typeReading(reading);
        open.press("calibrationTake");
        QTest::keyClick(&open.dialog(), Qt::Key_Escape);
    }
    EXPECT_EQ(folder.canvas().geometry.cellPitch,
              board::calibratedFrom(guess(), reading)->cellPitch)
        << "what was asked for is done";
    if (std::filesystem::exists(folder.path("card/calibration"))) {
        EXPECT_TRUE(tasks::verifyLoadFile(folder.path("card/calibration")).has_value())
            << "whole or not at all";
    }
}

TEST(CalibrationForm, GivesEverythingThatTakesTheFocusAName) {
    LibraryWithCanvas folder;
    OpenForm open(folder);
    int seen = 0;
    for (const QWidget* const each : open.dialog().findChildren<QWidget*>()) {
        const bool takesFocus = (each->focusPolicy() & Qt::TabFocus) != 0 && !each->focusProxy();
        if (!each->isVisible() || !takesFocus) continue;
        ++seen;
        const auto* const button = qobject_cast<const QAbstractButton*>(each);
        EXPECT_FALSE(each->accessibleName().isEmpty() &&
                     (button == nullptr || button->text().isEmpty()))
            << each->objectName().toStdString() << " " << each->metaObject()->className();
    }
    EXPECT_GE(seen, 12);
    EXPECT_FALSE(open.part<QWidget>("calibrationPicture").accessibleDescription().isEmpty());
}

}  // namespace
}  // namespace pantile::desktop
