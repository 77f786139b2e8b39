#pragma once

#include "desktop/user_prompts.h"

namespace pantile::desktop {

/// Asks by the platform's own dialogs.
class DialogPrompts : public UserPrompts {
public:
    QStringList pickFilesToAdd(QWidget* window) override;
    QString pickFolderToAdd(QWidget* window) override;
    QString pickFolderToWrite(QWidget* window) override;
    QString pickWrittenLoad(QWidget* window) override;
    QString pickPaletteFile(QWidget* window) override;
    QString pickPaletteFileToWrite(QWidget* window, const QString& name) override;
    std::optional<QColor> pickColour(QWidget* window, const QColor& now) override;
    QString askName(QWidget* window, const QString& title, const QString& question,
                    const QStringList& known) override;
    void tellError(const QString& text) override;
};

}  // namespace pantile::desktop
