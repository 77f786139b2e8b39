#include "desktop/models/tray_model.h"

#include <algorithm>

#include <QStringList>

#include "desktop/models/texture_mime.h"
#include "desktop/texts.h"

namespace pantile::desktop {

int TrayModel::rowCount(const QModelIndex& parent) const {
    if (parent.isValid()) return 0;
    // A load of a board that was made smaller since may have more.
    return std::max(m_board.slots, static_cast<int>(m_slots.size()));
}

QVariant TrayModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || index.row() >= rowCount()) return {};
    const catalogue::TextureRow* const row = textureRow(index.row());
    switch (role) {
        case Qt::DisplayRole:
            return row == nullptr ? tr("empty") : shownTitle(row->title);
        case Qt::ToolTipRole:
            return shownToolTip(slotWords(index.row()));
        case Qt::AccessibleTextRole:
            return slotWords(index.row());
        default:
            return {};
    }
}

Qt::ItemFlags TrayModel::flags(const QModelIndex& index) const {
    if (!index.isValid()) return Qt::ItemIsDropEnabled;
    const Qt::ItemFlags usual = Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsDropEnabled;
    return textureRow(index.row()) == nullptr ? usual : usual | Qt::ItemIsDragEnabled;
}

QStringList TrayModel::mimeTypes() const {
    return {textureMimeType(), loadMimeType()};
}

QMimeData* TrayModel::mimeData(const QModelIndexList& indexes) const {
    std::vector<core::TextureId> ids;
    for (const QModelIndex& index : indexes) {
        if (const auto* row = textureRow(index.row())) ids.push_back(row->id);
    }
    return loadMimeData(ids, m_load);
}

void TrayModel::setLoad(const std::string& name, const core::Board& board,
                        std::vector<catalogue::TextureRow> slots) {
    const bool isSame = name == m_load && board == m_board && slots == m_slots;
    if (isSame) return;
    beginResetModel();
    m_load = name;
    m_board = board;
    m_slots = std::move(slots);
    m_costs.reset();
    endResetModel();
}

void TrayModel::setCosts(tasks::LoadCosts costs) {
    m_costs = std::move(costs);
    if (rowCount() > 0) Q_EMIT dataChanged(index(0), index(rowCount() - 1));
}

const catalogue::TextureRow* TrayModel::textureRow(int slot) const {
    const bool isFilled = slot >= 0 && slot < static_cast<int>(m_slots.size());
    return isFilled ? &m_slots[static_cast<std::size_t>(slot)] : nullptr;
}

const tasks::SlotCost* TrayModel::slotCost(int slot) const {
    if (!m_costs || slot < 0 || slot >= static_cast<int>(m_costs->slots.size())) return nullptr;
    return &m_costs->slots[static_cast<std::size_t>(slot)];
}

QString TrayModel::costWords(int slot) const {
    const tasks::SlotCost* const cost = slotCost(slot);
    if (cost == nullptr) return tr("being planned");
    if (!cost->problem.empty()) return tr("cannot be drawn");
    return shownDuration(cost->milliseconds()) + QStringLiteral(" · ") + shownBytes(cost->bytes());
}

QString TrayModel::slotWords(int slot) const {
    const catalogue::TextureRow* const row = textureRow(slot);
    if (row == nullptr) return tr("Slot %1: empty").arg(slot + 1);
    QStringList lines(
        tr("Slot %1: %2, %3").arg(slot + 1).arg(shownTitle(row->title), costWords(slot)));
    const tasks::SlotCost* const cost = slotCost(slot);
    if (cost != nullptr && !cost->problem.empty()) lines.append(shownText(cost->problem));
    if (cost != nullptr && cost->variants.size() > 1) {
        for (std::size_t i = 0; i < cost->variants.size(); ++i) {
            const QString words = shownDuration(cost->variants[i].milliseconds) +
                                  QStringLiteral(" · ") + shownBytes(cost->variants[i].bytes);
            lines.append((i == cost->variant ? tr("Variant %1, taken: %2") : tr("Variant %1: %2"))
                             .arg(i + 1)
                             .arg(words));
        }
    }
    return lines.join(QLatin1Char('\n'));
}

}  // namespace pantile::desktop
