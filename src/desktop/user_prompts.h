#pragma once

// What the window must ask a person. Tests put answers of their own in its place.

#include <optional>

#include <QColor>
#include <QString>
#include <QStringList>

class QWidget;

namespace pantile::desktop {

class UserPrompts {
public:
    UserPrompts() = default;
    virtual ~UserPrompts() = default;
    UserPrompts(const UserPrompts&) = delete;
    UserPrompts& operator=(const UserPrompts&) = delete;
    UserPrompts(UserPrompts&&) = delete;
    UserPrompts& operator=(UserPrompts&&) = delete;

    /// Files to add; empty if the person thought better of it.
    virtual QStringList pickFilesToAdd(QWidget* window) = 0;

    /// A folder to add with all below it; empty as above.
    virtual QString pickFolderToAdd(QWidget* window) = 0;

    /// A folder to write into; empty as above.
    virtual QString pickFolderToWrite(QWidget* window) = 0;

    /// A written load: a card's load.bin or a header; empty as above.
    virtual QString pickWrittenLoad(QWidget* window) = 0;

    /// A text with colours or a picture to take a palette from; empty as above.
    virtual QString pickPaletteFile(QWidget* window) = 0;

    /// A file to write a palette into, which may be there already; empty as above.
    virtual QString pickPaletteFileToWrite(QWidget* window, const QString& name) = 0;

    /// A colour, beginning with `now`; nothing if the person thought better of it.
    virtual std::optional<QColor> pickColour(QWidget* window, const QColor& now) = 0;

    /// A name; empty as above. `known` are names to choose from.
    virtual QString askName(QWidget* window, const QString& title, const QString& question,
                            const QStringList& known) = 0;

    /// For what happens before there is a window that could say it.
    virtual void tellError(const QString& text) = 0;
};

}  // namespace pantile::desktop
