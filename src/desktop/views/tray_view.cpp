#include "desktop/views/tray_view.h"

#include <algorithm>
#include <utility>

#include <QDragEnterEvent>
#include <QDropEvent>
#include <QMimeData>
#include <QPainter>
#include <QScrollBar>

#include "desktop/models/texture_mime.h"
#include "desktop/theme/apply_theme.h"
#include "desktop/views/tray_delegate.h"

namespace pantile::desktop {

using core::TextureId;

TrayView::TrayView(TrayModel& model, const Theme& theme, TilePictures pictures, QWidget* parent)
    : QListView(parent), m_model(model), m_theme(theme) {
    auto* const delegate = new TrayDelegate(model, theme, std::move(pictures), this);
    setObjectName(QStringLiteral("traySlots"));
    setAccessibleName(tr("Slots of the load"));
    setFlow(QListView::LeftToRight);
    setWrapping(false);
    setUniformItemSizes(true);
    setSelectionMode(QAbstractItemView::ExtendedSelection);
    setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setDragEnabled(true);
    setAcceptDrops(true);
    setContextMenuPolicy(Qt::ActionsContextMenu);
    setItemDelegate(delegate);
    setModel(&model);
    // What was chosen stays so while things are put in and taken out.
    connect(&model, &QAbstractItemModel::modelAboutToBeReset, this,
            [this] { m_chosenBefore = selectedIds(); });
    connect(&model, &QAbstractItemModel::modelReset, this,
            [this] { selectIds(std::exchange(m_chosenBefore, {})); });
    // Room for the scroll bar, so that nothing moves when it comes.
    setFixedHeight(delegate->compartmentSize().height() +
                   horizontalScrollBar()->sizeHint().height());
}

std::vector<TextureId> TrayView::selectedIds() const {
    std::vector<int> rows;
    for (const QModelIndex& index : selectionModel()->selectedIndexes())
        rows.push_back(index.row());
    // By keys one gets to a slot before anything is selected.
    if (rows.empty() && currentIndex().isValid()) rows.push_back(currentIndex().row());
    std::sort(rows.begin(), rows.end());
    std::vector<TextureId> ids;
    for (const int row : rows) {
        if (const auto* texture = m_model.textureRow(row)) ids.push_back(texture->id);
    }
    return ids;
}

std::optional<int> TrayView::currentSlot() const {
    const int row = currentIndex().row();
    return m_model.textureRow(row) == nullptr ? std::nullopt : std::optional(row);
}

void TrayView::selectIds(const std::vector<TextureId>& ids) {
    QItemSelection selection;
    QModelIndex first;
    for (int row = 0; row < m_model.rowCount(); ++row) {
        const auto* const texture = m_model.textureRow(row);
        const bool isWanted =
            texture != nullptr && std::find(ids.begin(), ids.end(), texture->id) != ids.end();
        if (!isWanted) continue;
        selection.append(QItemSelectionRange(m_model.index(row)));
        if (!first.isValid()) first = m_model.index(row);
    }
    if (!first.isValid()) return;
    selectionModel()->select(selection, QItemSelectionModel::ClearAndSelect);
    selectionModel()->setCurrentIndex(first, QItemSelectionModel::NoUpdate);
    scrollTo(first);
}

void TrayView::selectionChanged(const QItemSelection& selected, const QItemSelection& deselected) {
    QListView::selectionChanged(selected, deselected);
    Q_EMIT chosenChanged();
}

void TrayView::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
    QListView::currentChanged(current, previous);
    Q_EMIT chosenChanged();
}

// Before the compartment that the point is in the left half of, after it in the right half.
int TrayView::placeAt(const QPoint& point) const {
    const int filled = static_cast<int>(m_model.slots().size());
    const QModelIndex index = indexAt(point);
    if (!index.isValid()) return filled;
    const bool isBehind = point.x() > visualRect(index).center().x();
    return std::min(index.row() + (isBehind ? 1 : 0), filled);
}

void TrayView::markPlace(std::optional<int> place) {
    m_markedPlace = place;
    viewport()->update();
}

void TrayView::dragEnterEvent(QDragEnterEvent* event) {
    acceptTextures(*event);
}

void TrayView::dragMoveEvent(QDragMoveEvent* event) {
    acceptTextures(*event);
    if (event->isAccepted()) markPlace(placeAt(event->position().toPoint()));
}

void TrayView::dragLeaveEvent(QDragLeaveEvent* /*event*/) {
    markPlace({});
}

void TrayView::dropEvent(QDropEvent* event) {
    markPlace({});
    take(*event, placeAt(event->position().toPoint()));
}

void TrayView::take(QDropEvent& event, int place) {
    const std::vector<TextureId> ids = textureIdsIn(*event.mimeData());
    if (ids.empty()) return event.ignore();
    // Copying, as the model must not remove what was dragged: the library tells it what is there.
    event.setDropAction(Qt::CopyAction);
    event.accept();
    Q_EMIT dropped(ids, loadIn(*event.mimeData()), place);
}

void TrayView::paintEvent(QPaintEvent* event) {
    QListView::paintEvent(event);
    if (!m_markedPlace || m_model.rowCount() == 0) return;
    const int place = *m_markedPlace;
    const bool isLast = place >= m_model.rowCount();
    const QRect beside = visualRect(m_model.index(isLast ? m_model.rowCount() - 1 : place));
    const int x = isLast ? beside.right() - 3 : beside.left();
    QPainter painter(viewport());
    painter.fillRect(x, beside.top(), 4, beside.height(), toQColor(m_theme.next));
}

}  // namespace pantile::desktop
