#pragma once

// The real window on a library of the test's own, and what a person sees and does in it.

#include <memory>
#include <stdexcept>
#include <string>

#include <QAction>
#include <QDragMoveEvent>
#include <QDropEvent>
#include <QGuiApplication>
#include <QLabel>
#include <QLineEdit>
#include <QMimeData>

#include <gtest/gtest.h>

#include "desktop/main_window.h"
#include "desktop/views/library_page.h"
#include "desktop/views/texture_grid_view.h"
#include "library_fixture.h"

namespace pantile::tests {

class FixedPrompts : public desktop::UserPrompts {
public:
    QStringList pickFilesToAdd(QWidget*) override { return files; }

    QString pickFolderToAdd(QWidget*) override { return folder; }

    QString pickFolderToWrite(QWidget*) override { return folder; }

    QString pickWrittenLoad(QWidget*) override { return files.value(0); }

    QString pickPaletteFile(QWidget*) override { return files.value(0); }

    QString pickPaletteFileToWrite(QWidget*, const QString&) override { return files.value(0); }

    std::optional<QColor> pickColour(QWidget*, const QColor&) override { return colour; }

    QString askName(QWidget*, const QString&, const QString&, const QStringList& known) override {
        offered = known;
        return name;
    }

    void tellError(const QString& text) override { ADD_FAILURE() << text.toStdString(); }

    QStringList files;
    QString folder;
    QString name;
    std::optional<QColor> colour;
    QStringList offered;
};

/// Which parts of a drag were accepted.
struct Dropped {
    bool move = false;
    bool drop = false;
};

/// As a drag ends on `target`: the platform's part of it cannot run in a test. Owns `data`.
inline Dropped dropOn(QWidget& target, const QPoint& place, QMimeData* data,
                      Qt::DropActions actions = Qt::CopyAction) {
    const std::unique_ptr<QMimeData> owned(data);
    QDragEnterEvent enter(place, actions, data, Qt::LeftButton, Qt::NoModifier);
    QCoreApplication::sendEvent(&target, &enter);
    QDragMoveEvent move(place, actions, data, Qt::LeftButton, Qt::NoModifier);
    QCoreApplication::sendEvent(&target, &move);
    QDropEvent drop(place, actions, data, Qt::LeftButton, Qt::NoModifier);
    QCoreApplication::sendEvent(&target, &drop);
    return {move.isAccepted(), drop.isAccepted()};
}

class OpenWindow {
public:
    explicit OpenWindow(LibraryFolder& folder, desktop::Shade shade = desktop::Shade::Light)
        : m_context(folder.open(), prompts, desktop::makeTheme(shade)), window(m_context) {
        window.show();
        // A screen without a window manager; elsewhere it would come after the dialogs.
        if (QGuiApplication::platformName() == QLatin1String("xcb")) window.activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&window));
    }

    template <typename Widget>
    Widget& part(const char* name) {
        auto* const found = window.findChild<Widget*>(QLatin1String(name));
        if (found == nullptr) throw std::runtime_error(std::string("no part ") + name);
        return *found;
    }

    desktop::TextureGridView& grid() { return part<desktop::TextureGridView>("textures"); }

    desktop::LibraryPage& page() { return *window.findChild<desktop::LibraryPage*>(); }

    int shown() { return grid().model()->rowCount(); }

    QString words(const char* name) { return part<QLabel>(name).text(); }

    void type(const char* text) {
        auto& field = part<QLineEdit>("searchField");
        field.setFocus();
        field.clear();
        QTest::keyClicks(&field, QLatin1String(text));
    }

    void drop(QMimeData& data) {
        QDragEnterEvent enter({50, 50}, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        QCoreApplication::sendEvent(&window, &enter);
        EXPECT_TRUE(enter.isAccepted());
        QDropEvent event(QPointF(50, 50), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        QCoreApplication::sendEvent(&window, &event);
        EXPECT_TRUE(event.isAccepted());
    }

    /// As if its key was pressed anywhere.
    /// As one waits for a menu's line that is grey while work goes on.
    void act(const char* name) {
        auto& action = part<QAction>(name);
        EXPECT_TRUE(comes([&] { return action.isEnabled(); })) << name;
        action.trigger();
    }

    FixedPrompts prompts;

private:
    desktop::AppContext m_context;

public:
    desktop::MainWindow window;
};

}  // namespace pantile::tests
