#pragma once

#include <QSplitter>

namespace pantile::desktop {

/// Parts that stand side by side, or one above the other where there is no room for that.
class FoldingSplitter : public QSplitter {
    Q_OBJECT

public:
    /// With less width than `roomForAll` they stand one above the other.
    FoldingSplitter(int roomForAll, QWidget* parent);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    int m_roomForAll;
};

}  // namespace pantile::desktop
