#include "desktop/views/folding_splitter.h"

namespace pantile::desktop {

FoldingSplitter::FoldingSplitter(int roomForAll, QWidget* parent)
    : QSplitter(parent), m_roomForAll(roomForAll) {
    setHandleWidth(1);
    setChildrenCollapsible(false);
}

void FoldingSplitter::resizeEvent(QResizeEvent* event) {
    setOrientation(width() >= m_roomForAll ? Qt::Horizontal : Qt::Vertical);
    QSplitter::resizeEvent(event);
}

}  // namespace pantile::desktop
