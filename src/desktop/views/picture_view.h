#pragma once

#include <optional>

#include <QImage>
#include <QWidget>

#include "core/texture.h"
#include "desktop/views/cell_picture.h"

namespace pantile::desktop {

/// One texture, as large as the width allows in whole multiples, once or as 3 x 3 tiles.
class PictureView : public QWidget {
    Q_OBJECT

public:
    PictureView(Hatch hatch, QWidget* parent);

    void setTexture(std::optional<core::Texture> texture);
    void setRepeat(Repeat repeat);

    /// What is shown, in pixels of the screen; null if there is none.
    const QImage& image() const { return m_image; }

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void renew();

    Hatch m_hatch;
    std::optional<core::Texture> m_texture;
    Repeat m_repeat = Repeat::Once;
    QImage m_image;
};

}  // namespace pantile::desktop
