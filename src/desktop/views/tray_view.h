#pragma once

#include <optional>
#include <vector>

#include <QListView>

#include "core/ids.h"
#include "desktop/models/tray_model.h"
#include "desktop/theme/theme.h"
#include "desktop/views/tile_pictures.h"

namespace pantile::desktop {

/// The compartments of the tray in a row: what is dropped on them is put there.
class TrayView : public QListView {
    Q_OBJECT

public:
    /// Model and theme must outlive it.
    TrayView(TrayModel& model, const Theme& theme, TilePictures pictures, QWidget* parent);

    /// In the order of the slots, or the current one; empty ones are not among them.
    std::vector<core::TextureId> selectedIds() const;

    /// The filled slot that is current, from 0.
    std::optional<int> currentSlot() const;

    void selectIds(const std::vector<core::TextureId>& ids);

    /// Takes the textures that are dropped, for that place, if there are any.
    void take(QDropEvent& event, int place);

Q_SIGNALS:
    void chosenChanged();

    /// `from` is the load that they were dragged out of; empty for the library.
    void dropped(const std::vector<core::TextureId>& ids, const std::string& from, int place);

protected:
    void selectionChanged(const QItemSelection& selected,
                          const QItemSelection& deselected) override;
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dragMoveEvent(QDragMoveEvent* event) override;
    void dragLeaveEvent(QDragLeaveEvent* event) override;
    void dropEvent(QDropEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    int placeAt(const QPoint& point) const;
    void markPlace(std::optional<int> place);

    TrayModel& m_model;
    const Theme& m_theme;
    std::vector<core::TextureId> m_chosenBefore;  ///< While the model is reset.
    std::optional<int> m_markedPlace;             ///< Where what is dragged would be put.
};

}  // namespace pantile::desktop
