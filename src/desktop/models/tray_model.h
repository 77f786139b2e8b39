#pragma once

// TrayModel: the slots of the load in the tray, the empty ones too.

#include <optional>
#include <string>
#include <vector>

#include <QAbstractListModel>

#include "catalogue/texture_row.h"
#include "core/board.h"
#include "core/ids.h"
#include "tasks/load_costs.h"

namespace pantile::desktop {

class TrayModel : public QAbstractListModel {
    Q_OBJECT

public:
    using QAbstractListModel::QAbstractListModel;

    int rowCount(const QModelIndex& parent = {}) const override;

    /// Title (display); number, title and costs (accessible text, tool tip).
    QVariant data(const QModelIndex& index, int role) const override;

    /// Those that hold a texture can be dragged.
    Qt::ItemFlags flags(const QModelIndex& index) const override;
    QStringList mimeTypes() const override;
    QMimeData* mimeData(const QModelIndexList& indexes) const override;

    Qt::DropActions supportedDragActions() const override { return Qt::MoveAction; }

    /// Without costs until these are told.
    void setLoad(const std::string& name, const core::Board& board,
                 std::vector<catalogue::TextureRow> slots);

    /// Of the load that is shown.
    void setCosts(tasks::LoadCosts costs);

    const std::string& load() const { return m_load; }

    const core::Board& board() const { return m_board; }

    const std::vector<catalogue::TextureRow>& slots() const { return m_slots; }

    /// Nothing while they are worked out.
    const std::optional<tasks::LoadCosts>& costs() const { return m_costs; }

    /// What lies in a slot, from 0; null if it is empty.
    const catalogue::TextureRow* textureRow(int slot) const;

    /// Null if it is empty or not known yet.
    const tasks::SlotCost* slotCost(int slot) const;

    /// "1 min 12 s · 412 bytes", or why there is none.
    QString costWords(int slot) const;

private:
    QString slotWords(int slot) const;

    std::string m_load;
    core::Board m_board;
    std::vector<catalogue::TextureRow> m_slots;
    std::optional<tasks::LoadCosts> m_costs;
};

}  // namespace pantile::desktop
