#include "desktop/views/texture_grid_view.h"

#include <algorithm>
#include <array>

#include <QScopedValueRollback>
#include <QScrollBar>

#include "desktop/theme/apply_theme.h"

namespace pantile::desktop {

using core::TextureId;

namespace {

// All multiples of 64, the usual side of a grid.
constexpr std::array<int, 4> kPictureSides = {64, 128, 192, 256};

}  // namespace

TextureGridView::TextureGridView(TextureModel& model, const Theme& theme, TilePictures pictures,
                                 QWidget* parent)
    : QListView(parent),
      m_model(model),
      m_delegate(new TextureDelegate(model, theme, std::move(pictures), this)) {
    setObjectName(QStringLiteral("textures"));
    setAccessibleName(tr("Textures"));
    setViewMode(QListView::IconMode);
    setMovement(QListView::Static);
    setResizeMode(QListView::Adjust);
    setDragEnabled(true);  // Static items cannot be, unless one says so.
    setUniformItemSizes(true);
    setSelectionMode(QAbstractItemView::ExtendedSelection);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setMouseTracking(true);
    setContextMenuPolicy(Qt::ActionsContextMenu);
    setItemDelegate(m_delegate);
    setModel(&model);
    spreadColumns();
}

std::vector<TextureId> TextureGridView::selectedIds() const {
    std::vector<int> rows;
    for (const QModelIndex& index : selectionModel()->selectedIndexes())
        rows.push_back(index.row());
    std::sort(rows.begin(), rows.end());
    std::vector<TextureId> ids;
    ids.reserve(rows.size());
    for (const int row : rows) ids.push_back(m_model.ids()[static_cast<std::size_t>(row)]);
    return ids;
}

std::optional<TextureId> TextureGridView::currentId() const {
    const QModelIndex current = currentIndex();
    if (!current.isValid()) return std::nullopt;
    return m_model.ids()[static_cast<std::size_t>(current.row())];
}

void TextureGridView::showIds(std::vector<TextureId> ids) {
    {
        const QScopedValueRollback quiet(m_quiet, true);
        const bool first = m_model.ids().empty();
        const Place before = place();
        m_model.setIds(std::move(ids));
        restore(before);
        // On opening there is something to see beside the wall.
        if (first && !m_model.ids().empty()) select({m_model.ids().front()}, m_model.ids().front());
    }
    Q_EMIT chosenChanged();
}

void TextureGridView::selectIds(const std::vector<TextureId>& ids) {
    const auto shown = std::find_if(ids.begin(), ids.end(),
                                    [this](TextureId id) { return m_model.rowOf(id).has_value(); });
    if (shown == ids.end()) return;
    {
        const QScopedValueRollback quiet(m_quiet, true);
        select(ids, *shown);
        scrollTo(currentIndex());
    }
    Q_EMIT chosenChanged();
}

void TextureGridView::showLarger() {
    setPictureStep(std::min(m_step + 1, kPictureSides.size() - 1));
}

void TextureGridView::showSmaller() {
    setPictureStep(m_step == 0 ? 0 : m_step - 1);
}

void TextureGridView::resizeEvent(QResizeEvent* event) {
    spreadColumns();
    QListView::resizeEvent(event);
}

void TextureGridView::selectionChanged(const QItemSelection& selected,
                                       const QItemSelection& deselected) {
    QListView::selectionChanged(selected, deselected);
    if (!m_quiet) Q_EMIT chosenChanged();
}

void TextureGridView::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
    QListView::currentChanged(current, previous);
    if (!m_quiet) Q_EMIT chosenChanged();
}

TextureGridView::Place TextureGridView::place() const {
    Place place{selectedIds(), currentId(), std::nullopt, 0};
    const QModelIndex top = indexAt({kGap, kGap});
    if (top.isValid()) {
        place.top = m_model.ids()[static_cast<std::size_t>(top.row())];
        place.offset = -visualRect(top).top();
    }
    return place;
}

void TextureGridView::restore(const Place& place) {
    select(place.selected, place.current);
    const std::optional<int> top = place.top ? m_model.rowOf(*place.top) : std::nullopt;
    if (!top) return;
    scrollTo(m_model.index(*top), QAbstractItemView::PositionAtTop);
    verticalScrollBar()->setValue(verticalScrollBar()->value() + place.offset);
}

void TextureGridView::select(const std::vector<TextureId>& ids, std::optional<TextureId> current) {
    std::vector<TextureId> wanted = ids;
    std::ranges::sort(wanted, {}, &TextureId::value);
    QItemSelection selection;
    const auto& shown = m_model.ids();
    for (std::size_t row = 0; row < shown.size() && !wanted.empty(); ++row) {
        if (!std::ranges::binary_search(wanted, shown[row].value, {}, &TextureId::value)) continue;
        const QModelIndex index = m_model.index(static_cast<int>(row));
        selection.append(QItemSelectionRange(index));
    }
    selectionModel()->select(selection, QItemSelectionModel::ClearAndSelect);
    const std::optional<int> row = current ? m_model.rowOf(*current) : std::nullopt;
    if (row) selectionModel()->setCurrentIndex(m_model.index(*row), QItemSelectionModel::NoUpdate);
}

void TextureGridView::setPictureStep(std::size_t step) {
    if (step == m_step) return;
    const Place before = place();
    m_step = step;
    spreadColumns();
    doItemsLayout();
    restore(before);
}

void TextureGridView::spreadColumns() {
    m_delegate->setPictureSide(kPictureSides.at(m_step));
    const QSize tile = m_delegate->tileSize();
    // One pixel less, as the view breaks a line that is just full.
    const int room = std::max(viewport()->width() - 1, tile.width());
    const int columns = std::max(1, room / tile.width());
    const QSize cell(room / columns, tile.height());
    if (cell != gridSize()) setGridSize(cell);
}

}  // namespace pantile::desktop
