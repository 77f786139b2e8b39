#include "desktop/dialogs/dialog_prompts.h"

#include <QColorDialog>
#include <QCoreApplication>
#include <QFileDialog>
#include <QInputDialog>
#include <QMessageBox>

namespace pantile::desktop {

namespace {

QString translatedPrompt(const char* text) {
    return QCoreApplication::translate("DialogPrompts", text);
}

}  // namespace

QStringList DialogPrompts::pickFilesToAdd(QWidget* window) {
    return QFileDialog::getOpenFileNames(
        window, translatedPrompt("Add Pictures"), {},
        translatedPrompt(
            "Pictures, grids and texts (*.png *.jpg *.jpeg *.gif *.bmp *.webp *.csv *.txt "
            "*.html *.htm *.md);;All files (*)"));
}

QString DialogPrompts::pickFolderToAdd(QWidget* window) {
    return QFileDialog::getExistingDirectory(window, translatedPrompt("Add a Folder"));
}

QString DialogPrompts::pickFolderToWrite(QWidget* window) {
    return QFileDialog::getExistingDirectory(window, translatedPrompt("Write Into"));
}

QString DialogPrompts::pickWrittenLoad(QWidget* window) {
    return QFileDialog::getOpenFileName(
        window, translatedPrompt("Verify a Written Load"), {},
        translatedPrompt("Written loads (load.bin *.h);;All files (*)"));
}

QString DialogPrompts::pickPaletteFile(QWidget* window) {
    return QFileDialog::getOpenFileName(
        window, translatedPrompt("Take a Palette from a File"), {},
        translatedPrompt("Texts with colours and pictures (*.txt *.png *.gif *.bmp *.jpg *.jpeg "
                         "*.webp);;All files (*)"));
}

QString DialogPrompts::pickPaletteFileToWrite(QWidget* window, const QString& name) {
    return QFileDialog::getSaveFileName(window, translatedPrompt("Write the Palette Into"),
                                        name + QStringLiteral(".txt"),
                                        translatedPrompt("Texts with colours (*.txt)"));
}

std::optional<QColor> DialogPrompts::pickColour(QWidget* window, const QColor& now) {
    const QColor picked = QColorDialog::getColor(now, window, translatedPrompt("Colour"));
    return picked.isValid() ? std::optional(picked) : std::nullopt;
}

QString DialogPrompts::askName(QWidget* window, const QString& title, const QString& question,
                               const QStringList& known) {
    bool isAccepted = false;
    const QString name =
        known.isEmpty()
            ? QInputDialog::getText(window, title, question, QLineEdit::Normal, {}, &isAccepted)
            : QInputDialog::getItem(window, title, question, known, 0, true, &isAccepted);
    return isAccepted ? name.trimmed() : QString();
}

void DialogPrompts::tellError(const QString& text) {
    QMessageBox box(QMessageBox::Warning, QStringLiteral("Pantile"), text, QMessageBox::Close);
    box.setTextFormat(Qt::PlainText);
    box.exec();
}

}  // namespace pantile::desktop
