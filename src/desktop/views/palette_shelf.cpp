#include "desktop/views/palette_shelf.h"

#include <algorithm>

namespace pantile::desktop {

namespace {

constexpr int kMostHeight = 3 * PalettePicker::kRowHeight;

}  // namespace

PaletteShelf::PaletteShelf(PalettePicker* picker, QWidget* parent)
    : QScrollArea(parent), m_picker(picker) {
    setFocusPolicy(Qt::NoFocus);  // The picker has it.
    setWidgetResizable(true);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setFrameShape(QFrame::NoFrame);
    setWidget(picker);
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    connect(picker, &PalettePicker::picked, this, [this] {
        updateGeometry();
        const QPoint middle = m_picker->swatch(m_picker->colour()).center();
        ensureVisible(middle.x(), middle.y(), 0, PalettePicker::kRowHeight / 2);
    });
}

int PaletteShelf::heightForWidth(int width) const {
    return std::min(m_picker->heightForWidth(width), kMostHeight);
}

QSize PaletteShelf::sizeHint() const {
    return {m_picker->sizeHint().width(), heightForWidth(width())};
}

QSize PaletteShelf::minimumSizeHint() const {
    return {2 * PalettePicker::kRowHeight, heightForWidth(width())};
}

}  // namespace pantile::desktop
