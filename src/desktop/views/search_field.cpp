#include "desktop/views/search_field.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QKeyEvent>
#include <QMimeData>

namespace pantile::desktop {

namespace {

bool clipboardHoldsOneLine() {
    const QMimeData* const data = QGuiApplication::clipboard()->mimeData();
    if (data == nullptr || data->hasUrls() || data->hasImage() || !data->hasText()) return false;
    return !data->text().trimmed().contains(QLatin1Char('\n'));
}

}  // namespace

SearchField::SearchField(QWidget* parent) : QLineEdit(parent) {}

bool SearchField::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride) {
        const auto* const key = static_cast<QKeyEvent*>(event);
        if (key->matches(QKeySequence::Paste) && !clipboardHoldsOneLine()) {
            event->ignore();
            return true;
        }
    }
    return QLineEdit::event(event);
}

void SearchField::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Down || event->key() == Qt::Key_Return) {
        Q_EMIT left();
    } else if (event->key() == Qt::Key_Escape) {
        clear();
    } else {
        QLineEdit::keyPressEvent(event);
    }
}

}  // namespace pantile::desktop
