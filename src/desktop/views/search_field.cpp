#include "desktop/views/search_field.h"

#include <algorithm>
#include <array>

#include <QAbstractItemView>
#include <QClipboard>
#include <QCompleter>
#include <QGuiApplication>
#include <QKeyEvent>
#include <QMimeData>
#include <QStringListModel>

namespace pantile::desktop {

namespace {

constexpr qsizetype kMostOffered = 12;

// Of the query language, with their usual signs.
constexpr std::array kQueryKeys = {
    "tag:",    "shelf:",   "palette:",  "canvas:", "on:",        "title:",
    "author:", "licence:", "source:",   "note:",   "colour:#",   "size:",
    "width>",  "height>",  "colours<",  "stars>=", "bytes<",     "draw<",
    "id:",     "added>=",  "changed>=", "like:",   "is:removed", "is:seamless"};

bool clipboardHoldsOneLine() {
    const QMimeData* const data = QGuiApplication::clipboard()->mimeData();
    if (data == nullptr || data->hasUrls() || data->hasImage() || !data->hasText()) return false;
    return !data->text().trimmed().contains(QLatin1Char('\n'));
}

}  // namespace

SearchField::SearchField(QWidget* parent)
    : QLineEdit(parent),
      m_offered(new QStringListModel(this)),
      m_completer(new QCompleter(m_offered, this)) {
    // Not the line's own completer, which knows of one word only.
    m_completer->setWidget(this);
    m_completer->setCompletionMode(QCompleter::UnfilteredPopupCompletion);
    m_completer->popup()->setObjectName(QStringLiteral("searchCompletions"));
    m_completer->popup()->setAccessibleName(tr("What the word may become"));
    connect(m_completer, qOverload<const QString&>(&QCompleter::activated), this,
            &SearchField::take);
    connect(this, &QLineEdit::textEdited, this, &SearchField::offer);
}

void SearchField::setNames(const QStringList& tags, const QStringList& shelves) {
    m_tags = tags;
    m_shelves = shelves;
}

QStringList SearchField::completionsOf(const QString& word) const {
    const bool isMinus = word.startsWith(QLatin1Char('-'));
    const QString bare = isMinus ? word.mid(1) : word;
    QStringList found;
    if (bare.isEmpty()) return found;
    const auto addBeginning = [&](const QString& each) {
        const bool begins = each.startsWith(bare, Qt::CaseInsensitive) && each != bare;
        if (begins && found.size() < kMostOffered)
            found.append(isMinus ? QLatin1Char('-') + each : each);
    };
    for (const char* const key : kQueryKeys) addBeginning(QLatin1String(key));
    for (const QString& tag : m_tags) addBeginning(QStringLiteral("tag:") + tag);
    for (const QString& shelf : m_shelves) {
        const bool hasBlank = shelf.contains(QLatin1Char(' '));
        addBeginning(hasBlank ? QStringLiteral("shelf:\"%1\"").arg(shelf)
                              : QStringLiteral("shelf:") + shelf);
    }
    // A tag's own name is thought of before the key that finds it.
    for (const QString& tag : m_tags) {
        if (!tag.startsWith(bare, Qt::CaseInsensitive) || found.size() >= kMostOffered) continue;
        found.append((isMinus ? QStringLiteral("-tag:") : QStringLiteral("tag:")) + tag);
    }
    return found;
}

int SearchField::wordBegin() const {
    return static_cast<int>(
               text().lastIndexOf(QLatin1Char(' '), std::max(cursorPosition() - 1, 0))) +
           1;
}

void SearchField::offer() {
    const int begin = wordBegin();
    const QStringList found = completionsOf(text().mid(begin, cursorPosition() - begin));
    m_offered->setStringList(found);
    if (found.isEmpty()) return m_completer->popup()->hide();
    m_completer->complete();
}

void SearchField::take(const QString& word) {
    const int begin = wordBegin();
    QString whole = text();
    whole.replace(begin, cursorPosition() - begin, word);
    setText(whole);
    setCursorPosition(begin + static_cast<int>(word.size()));
}

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
    // While words are offered, these keys are the list's.
    const bool takes = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter ||
                       event->key() == Qt::Key_Escape || event->key() == Qt::Key_Tab;
    if (takes && m_completer->popup()->isVisible()) return event->ignore();
    if (event->key() == Qt::Key_Down || event->key() == Qt::Key_Return) {
        Q_EMIT left();
    } else if (event->key() == Qt::Key_Escape) {
        clear();
    } else {
        QLineEdit::keyPressEvent(event);
    }
}

}  // namespace pantile::desktop
