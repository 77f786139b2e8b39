#pragma once

#include <QImage>
#include <QWidget>

#include "desktop/theme/theme.h"

namespace pantile::desktop {

enum class MarkKind { Done, Caution };

/// A small disc with a tick or a square with an exclamation mark: told apart by shape and sign, not
/// by colour alone.
class Mark : public QWidget {
    Q_OBJECT

public:
    /// The theme must outlive it.
    Mark(MarkKind kind, const Theme& theme, QWidget* parent);

    void setKind(MarkKind kind);

    MarkKind kind() const { return m_kind; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    MarkKind m_kind;
    const Theme& m_theme;
};

/// The same as a picture, in the middle of a square, for rows of a list. Units: the window's
/// pixels for the side, and the screen's for each of these.
QImage markImage(MarkKind kind, const Theme& theme, int side, double pixelRatio);

}  // namespace pantile::desktop
