#pragma once

#include <optional>
#include <vector>

#include <QListView>

#include "core/ids.h"
#include "desktop/models/texture_model.h"
#include "desktop/views/texture_delegate.h"

namespace pantile::desktop {

/// The textures on the wall: as many columns as there is room for, evenly spread.
class TextureGridView : public QListView {
    Q_OBJECT

public:
    /// Model and theme must outlive it.
    TextureGridView(TextureModel& model, const Theme& theme, TilePictures pictures,
                    QWidget* parent);

    /// In the order in which they are shown.
    std::vector<core::TextureId> selectedIds() const;

    /// The one of them that the keys stand on.
    std::optional<core::TextureId> currentId() const;

    /// Shows other ids, keeping selection, current texture and scroll position by id.
    void showIds(std::vector<core::TextureId> ids);

    /// Selects those of `ids` that are shown and scrolls to the first.
    void selectIds(const std::vector<core::TextureId>& ids);

    void showLarger();
    void showSmaller();

Q_SIGNALS:
    /// Selection or current texture are others, or were read anew.
    void chosenChanged();

protected:
    void resizeEvent(QResizeEvent* event) override;
    void selectionChanged(const QItemSelection& selected,
                          const QItemSelection& deselected) override;
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;

private:
    // Where one was, in ids, which outlive a search.
    struct Place {
        std::vector<core::TextureId> selected;
        std::optional<core::TextureId> current;
        std::optional<core::TextureId> top;
        int offset = 0;
    };

    Place place() const;
    void restore(const Place& place);
    void select(const std::vector<core::TextureId>& ids, std::optional<core::TextureId> current);
    void setPictureStep(std::size_t step);
    void spreadColumns();

    TextureModel& m_model;
    TextureDelegate* m_delegate;
    std::size_t m_step = 1;  ///< Which of the picture sizes.
    bool m_quiet = false;    ///< Several changes are being made; tell of them once.
};

}  // namespace pantile::desktop
