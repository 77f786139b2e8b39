#pragma once

// Pictures written by Qt's own writers, for the formats that are too much to write by hand.

#include <cstdint>
#include <vector>

#include <QBuffer>
#include <QByteArray>
#include <QImage>

namespace pantile::image_files {

/// Red above blue: a picture that shows which way up it is.
inline QImage redAboveBlue(int width, int height) {
    QImage image(width, height, QImage::Format_RGB32);
    for (int y = 0; y < height; ++y) {
        for (int x = 0; x < width; ++x)
            image.setPixel(x, y, y < height / 2 ? qRgb(255, 0, 0) : qRgb(0, 0, 255));
    }
    return image;
}

/// Empty if Qt cannot write that format here.
inline std::vector<std::uint8_t> writtenByQt(const QImage& image, const char* format,
                                             int quality = 95) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    if (!image.save(&buffer, format, quality)) return {};
    return {bytes.begin(), bytes.end()};
}

}  // namespace pantile::image_files
