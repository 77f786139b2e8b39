#pragma once

#include <optional>
#include <vector>

#include <QWidget>

#include "core/texture.h"
#include "desktop/theme/theme.h"
#include "desktop/views/cell_picture.h"

namespace pantile::desktop {

/// A palette as squares in its order. Colours that no cell has are half as high.
class SwatchStrip : public QWidget {
    Q_OBJECT

public:
    /// The theme must outlive it.
    SwatchStrip(const Theme& theme, QWidget* parent);

    void setTexture(const core::Texture& texture);

    bool hasHeightForWidth() const override { return true; }

    int heightForWidth(int width) const override;
    QSize sizeHint() const override;

protected:
    bool event(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    int columns(int width) const;
    QRect square(std::size_t index) const;
    QString words(std::size_t index) const;

    const Theme& m_theme;
    std::optional<core::Palette> m_palette;
    std::vector<bool> m_used;
};

}  // namespace pantile::desktop
