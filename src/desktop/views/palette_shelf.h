#pragma once

#include <QScrollArea>

#include "desktop/views/palette_picker.h"

namespace pantile::desktop {

/// Room for a palette: as high as it needs, but of a large one a few rows are in sight, the colour
/// picked among them.
class PaletteShelf : public QScrollArea {
    Q_OBJECT

public:
    /// Takes the picker.
    PaletteShelf(PalettePicker* picker, QWidget* parent);

    bool hasHeightForWidth() const override { return true; }

    int heightForWidth(int width) const override;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

private:
    PalettePicker* m_picker;
};

}  // namespace pantile::desktop
