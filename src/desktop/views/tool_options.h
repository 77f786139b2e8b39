#pragma once

#include <QWidget>

#include "desktop/action_table.h"
#include "desktop/edit/tools.h"
#include "desktop/theme/theme.h"

class QComboBox;
class QSpinBox;

namespace pantile::desktop {

class TickBox;

/// How the tools paint: brush, symmetry, shapes, fills, the edges. What the tool in hand does not
/// go by is not enabled.
class ToolOptions : public QWidget {
    Q_OBJECT

public:
    /// All must outlive it.
    ToolOptions(const Actions& actions, const Theme& theme, QWidget* parent);

    /// The settings with what is chosen here.
    ToolSettings applied(ToolSettings settings) const;

    void setTool(Tool tool);

    /// Eightfold symmetry is for square textures alone.
    void setSize(core::Size size);

Q_SIGNALS:
    void changed();

private:
    void makeFields();
    void connectActions(const Actions& actions);

    QSpinBox* m_brush;
    TickBox* m_round;
    QComboBox* m_symmetry;
    TickBox* m_filled;
    TickBox* m_corners;
    TickBox* m_around;
};

}  // namespace pantile::desktop
