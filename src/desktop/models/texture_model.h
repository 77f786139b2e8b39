#pragma once

// TextureModel: the textures that a search found, as ids in order, with a few pages of rows held.

#include <functional>
#include <optional>
#include <vector>

#include <QAbstractListModel>

#include "catalogue/library.h"
#include "catalogue/texture_row.h"
#include "core/ids.h"
#include "desktop/models/page_cache.h"

namespace pantile::desktop {

class TextureModel : public QAbstractListModel {
    Q_OBJECT

public:
    /// Reads rows from `library`, which must outlive the model.
    TextureModel(const catalogue::Library& library, QObject* parent);

    int rowCount(const QModelIndex& parent = {}) const override;

    /// Title (display), title and costs (accessible text, tool tip).
    QVariant data(const QModelIndex& index, int role) const override;

    /// All can be dragged.
    Qt::ItemFlags flags(const QModelIndex& index) const override;
    QStringList mimeTypes() const override;
    QMimeData* mimeData(const QModelIndexList& indexes) const override;

    Qt::DropActions supportedDragActions() const override { return Qt::CopyAction; }

    /// What stands in row `row`; null if another program took it out of the library since. It stays
    /// where it is until the next call.
    const catalogue::TextureRow* textureRow(int row) const;

    const std::vector<core::TextureId>& ids() const { return m_ids; }

    /// Cost: linear in the number of ids.
    std::optional<int> rowOf(core::TextureId id) const;

    /// Shows these ids. If they are those shown, the rows are read again and none is moved;
    /// otherwise the model is reset.
    void setIds(std::vector<core::TextureId> ids);

    /// How many rows were read from the library so far: for tests of what scrolling costs.
    std::size_t rowsRead() const { return m_rowsRead; }

private:
    using MaybeRow = std::optional<catalogue::TextureRow>;

    std::vector<MaybeRow> readPage(std::size_t first, std::size_t length) const;

    const catalogue::Library& m_library;
    std::vector<core::TextureId> m_ids;
    mutable PageCache<MaybeRow> m_pages;
    mutable std::size_t m_rowsRead = 0;
};

}  // namespace pantile::desktop
