#pragma once

#include <QWidget>

#include "desktop/action_table.h"
#include "desktop/theme/theme.h"

namespace pantile::desktop {

/// What an empty library shows: where to drop things, and three sentences.
class EmptyWall : public QWidget {
    Q_OBJECT

public:
    /// The theme must outlive it.
    EmptyWall(const Actions& actions, const Theme& theme, QWidget* parent);

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    const Theme& m_theme;
    QWidget* m_target;  ///< The room in which the drop target is painted.
};

}  // namespace pantile::desktop
