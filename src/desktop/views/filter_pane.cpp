#include "desktop/views/filter_pane.h"

#include <algorithm>

#include <QDragEnterEvent>
#include <QDropEvent>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLocale>
#include <QMimeData>
#include <QScrollBar>

#include "desktop/models/texture_mime.h"
#include "desktop/texts.h"
#include "desktop/theme/apply_theme.h"

namespace pantile::desktop {

namespace {

constexpr int kRowRole = Qt::UserRole;
constexpr std::size_t kMostTags = 1000;  // Beyond these one types.

// A name as the query language wants it.
std::string quoted(const std::string& name) {
    std::string text = "\"";
    for (const char letter : name) {
        if (letter == '"' || letter == '\\') text += '\\';
        text += letter;
    }
    return text + '"';
}

}  // namespace

FilterPane::FilterPane(QWidget* parent) : QTreeWidget(parent) {
    setObjectName(QStringLiteral("filterPane"));
    setAccessibleName(tr("Shelves, tags and saved searches"));
    setColumnCount(2);
    setHeaderHidden(true);
    setRootIsDecorated(false);
    setIndentation(0);
    setUniformRowHeights(true);
    setItemsExpandable(false);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setTextElideMode(Qt::ElideRight);
    setAcceptDrops(true);
    header()->setStretchLastSection(false);
    header()->setSectionResizeMode(0, QHeaderView::Stretch);
    header()->setSectionResizeMode(1, QHeaderView::Fixed);
    header()->resizeSection(1, 7 * kGap);
    connect(this, &QTreeWidget::itemClicked, this, &FilterPane::ask);
}

QTreeWidgetItem* FilterPane::addHeading(const QString& words) {
    auto* const heading = new QTreeWidgetItem(this, {words});
    heading->setFlags(Qt::ItemIsEnabled);
    QFont bold = font();
    bold.setBold(true);
    heading->setFont(0, bold);
    heading->setFirstColumnSpanned(true);
    return heading;
}

void FilterPane::addRow(QTreeWidgetItem* heading, const Chosen& chosen, const QString& words,
                        std::int64_t count) {
    const QString number = QLocale().toString(qlonglong{count});
    auto* const item = new QTreeWidgetItem(heading, {words, number});
    item->setData(0, kRowRole, static_cast<int>(m_rows.size()));
    item->setData(0, Qt::AccessibleTextRole,
                  counted("FilterPane", "%1 texture", "%1 textures", count)
                      .prepend(words + QStringLiteral(", ")));
    item->setToolTip(0, shownToolTip(words));
    item->setTextAlignment(1, Qt::AlignRight | Qt::AlignVCenter);
    item->setForeground(1, palette().brush(QPalette::PlaceholderText));
    m_rows.push_back(chosen);
}

void FilterPane::showFilters(const LibraryFilters& filters) {
    const int scrolled = verticalScrollBar()->value();
    clear();
    m_rows.clear();
    using Kind = Chosen::Kind;
    QTreeWidgetItem* const library = addHeading(tr("Library"));
    addRow(library, {Kind::All, {}, {}, {}}, tr("All"), filters.all);
    if (filters.removed > 0)
        addRow(library, {Kind::Removed, {}, "is:removed", {}}, tr("Removed"), filters.removed);
    if (!filters.shelves.empty()) {
        QTreeWidgetItem* const heading = addHeading(tr("Shelves"));
        for (const catalogue::Shelf& shelf : filters.shelves)
            addRow(heading, {Kind::Shelf, shelf.name, "shelf:" + quoted(shelf.name), {}},
                   shownText(shelf.name), shelf.count);
    }
    if (!filters.searches.empty()) {
        QTreeWidgetItem* const heading = addHeading(tr("Saved searches"));
        for (const CountedSearch& each : filters.searches)
            addRow(heading, {Kind::Search, each.search.name, each.search.query, each.search.sort},
                   shownText(each.search.name), each.count);
    }
    if (!filters.tags.empty()) {
        QTreeWidgetItem* const heading = addHeading(tr("Tags"));
        for (std::size_t i = 0; i < std::min(kMostTags, filters.tags.size()); ++i) {
            const catalogue::TagCount& tag = filters.tags[i];
            addRow(heading, {Kind::Tag, tag.name, "tag:" + quoted(tag.name), {}},
                   shownText(tag.name), tag.textures);
        }
    }
    expandAll();
    verticalScrollBar()->setValue(scrolled);
    markQuery(m_query);
}

const FilterPane::Chosen* FilterPane::chosenOf(const QTreeWidgetItem* item) const {
    if (item == nullptr || item->parent() == nullptr) return nullptr;
    return &m_rows[static_cast<std::size_t>(item->data(0, kRowRole).toInt())];
}

std::optional<FilterPane::Chosen> FilterPane::current() const {
    const Chosen* const chosen = chosenOf(currentItem());
    return chosen == nullptr ? std::nullopt : std::optional(*chosen);
}

void FilterPane::markQuery(const QString& query) {
    m_query = query;
    for (QTreeWidgetItemIterator each(this); *each != nullptr; ++each) {
        const Chosen* const chosen = chosenOf(*each);
        if (chosen == nullptr || QString::fromStdString(chosen->query) != query) continue;
        return setCurrentItem(*each);
    }
    setCurrentItem(nullptr);
}

void FilterPane::ask(QTreeWidgetItem* item) {
    const Chosen* const chosen = chosenOf(item);
    if (chosen == nullptr) return;
    Q_EMIT asked(QString::fromStdString(chosen->query), QString::fromStdString(chosen->sort));
}

bool FilterPane::isNamed() const {
    const auto chosen = current();
    using Kind = Chosen::Kind;
    return chosen && chosen->kind != Kind::All && chosen->kind != Kind::Removed;
}

// Elsewhere in the window these keys are for the textures.
bool FilterPane::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride && isNamed()) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        if (key == Qt::Key_F2 || key == Qt::Key_Delete) event->accept();
    }
    return QTreeWidget::event(event);
}

void FilterPane::keyPressEvent(QKeyEvent* event) {
    if (isNamed() && event->key() == Qt::Key_F2) return Q_EMIT renameAsked();
    if (isNamed() && event->key() == Qt::Key_Delete) return Q_EMIT dropAsked();
    const bool enters = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter ||
                        event->key() == Qt::Key_Space;
    if (enters) return ask(currentItem());
    const bool moves = event->modifiers().testFlag(Qt::AltModifier) &&
                       (event->key() == Qt::Key_Up || event->key() == Qt::Key_Down);
    const auto chosen = current();
    if (moves && chosen && chosen->kind == Chosen::Kind::Shelf) {
        const int place = currentItem()->parent()->indexOfChild(currentItem()) + 1;
        const int wanted = place + (event->key() == Qt::Key_Up ? -1 : 1);
        if (wanted >= 1) Q_EMIT shelfMoved(QString::fromStdString(chosen->name), wanted);
        return;
    }
    QTreeWidget::keyPressEvent(event);
}

bool FilterPane::takes(QDropEvent& event) const {
    if (!event.mimeData()->hasFormat(textureMimeType())) return false;
    const Chosen* const chosen = chosenOf(itemAt(event.position().toPoint()));
    return chosen != nullptr &&
           (chosen->kind == Chosen::Kind::Shelf || chosen->kind == Chosen::Kind::Tag);
}

void FilterPane::dragEnterEvent(QDragEnterEvent* event) {
    acceptTextures(*event);
}

void FilterPane::dragMoveEvent(QDragMoveEvent* event) {
    if (takes(*event)) {
        event->setDropAction(Qt::CopyAction);
        event->accept();
    } else {
        event->ignore();
    }
}

void FilterPane::dropEvent(QDropEvent* event) {
    if (!takes(*event)) return event->ignore();
    const std::vector<core::TextureId> ids = textureIdsIn(*event->mimeData());
    const Chosen* const chosen = chosenOf(itemAt(event->position().toPoint()));
    if (ids.empty()) return event->ignore();
    event->setDropAction(Qt::CopyAction);
    event->accept();
    const QString name = QString::fromStdString(chosen->name);
    if (chosen->kind == Chosen::Kind::Shelf) {
        Q_EMIT droppedOnShelf(name, ids);
    } else {
        Q_EMIT droppedOnTag(name, ids);
    }
}

}  // namespace pantile::desktop
