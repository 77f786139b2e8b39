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

/// The same as a picture, for rows of a list. Units: `pixelRatio` pixels of the screen for one of
/// the window's.
QImage markImage(MarkKind kind, const Theme& theme, double pixelRatio);

}  // namespace pantile::desktop
