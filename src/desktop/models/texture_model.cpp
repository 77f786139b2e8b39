#include "desktop/models/texture_model.h"

#include <algorithm>
#include <span>

#include "catalogue/reader.h"
#include "desktop/models/texture_mime.h"
#include "desktop/texts.h"

namespace pantile::desktop {

using catalogue::TextureRow;
using core::TextureId;

TextureModel::TextureModel(const catalogue::Library& library, QObject* parent)
    : QAbstractListModel(parent), m_library(library) {}

int TextureModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_ids.size());
}

QVariant TextureModel::data(const QModelIndex& index, int role) const {
    const bool isWords =
        role == Qt::DisplayRole || role == Qt::AccessibleTextRole || role == Qt::ToolTipRole;
    if (!index.isValid() || !isWords) return {};
    const TextureRow* const row = textureRow(index.row());
    if (row == nullptr) return tr("(no longer in the library)");
    const QString title = shownTitle(row->title);
    if (role == Qt::DisplayRole) return title;
    QString words = title + QStringLiteral(", ") + shownSize(row->size) + QStringLiteral(", ") +
                    shownCost(row->estimate);
    if (row->stars > 0)
        words += QStringLiteral(", ") + counted("TextureModel", "%1 star", "%1 stars", row->stars);
    return role == Qt::ToolTipRole ? shownToolTip(words) : words;
}

Qt::ItemFlags TextureModel::flags(const QModelIndex& index) const {
    const Qt::ItemFlags flags = QAbstractListModel::flags(index);
    return index.isValid() ? flags | Qt::ItemIsDragEnabled : flags;
}

QStringList TextureModel::mimeTypes() const {
    return {textureMimeType()};
}

QMimeData* TextureModel::mimeData(const QModelIndexList& indexes) const {
    std::vector<int> rows;
    for (const QModelIndex& index : indexes) rows.push_back(index.row());
    std::sort(rows.begin(), rows.end());
    std::vector<core::TextureId> ids;
    for (const int row : rows) ids.push_back(m_ids[static_cast<std::size_t>(row)]);
    return textureMimeData(ids);
}

const TextureRow* TextureModel::textureRow(int row) const {
    const auto index = static_cast<std::size_t>(row);
    if (row < 0 || index >= m_ids.size()) return nullptr;
    const MaybeRow& found = m_pages.at(
        index, [this](std::size_t first, std::size_t length) { return readPage(first, length); });
    return found ? &*found : nullptr;
}

std::optional<int> TextureModel::rowOf(TextureId id) const {
    const auto found = std::find(m_ids.begin(), m_ids.end(), id);
    if (found == m_ids.end()) return std::nullopt;
    return static_cast<int>(found - m_ids.begin());
}

void TextureModel::setIds(std::vector<TextureId> ids) {
    if (ids == m_ids) {
        m_pages.reset(m_ids.size());
        if (!m_ids.empty()) Q_EMIT dataChanged(index(0), index(rowCount() - 1));
        return;
    }
    beginResetModel();
    m_ids = std::move(ids);
    m_pages.reset(m_ids.size());
    endResetModel();
}

std::vector<TextureModel::MaybeRow> TextureModel::readPage(std::size_t first,
                                                           std::size_t length) const {
    const std::span ids = std::span(m_ids).subspan(first, length);
    m_rowsRead += length;
    std::vector<MaybeRow> rows;
    rows.reserve(length);
    if (auto all = catalogue::readRows(m_library, ids)) {
        for (TextureRow& row : *all) rows.emplace_back(std::move(row));
        return rows;
    }
    // One that is gone or damaged must not hide the others of its page.
    for (const TextureId& id : ids) {
        auto one = catalogue::readRows(m_library, std::span(&id, 1));
        rows.push_back(one ? MaybeRow(std::move(one->front())) : std::nullopt);
    }
    return rows;
}

}  // namespace pantile::desktop
