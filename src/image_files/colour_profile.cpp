#include "image_files/colour_profile.h"

#include <algorithm>
#include <cstdlib>

#include <QColorSpace>
#include <QColorTransform>
#include <QImage>

#include "image_files/png_chunks.h"

namespace pantile::image_files {
namespace {

using Bytes = std::span<const std::uint8_t>;

// A PNG's gamma (gAMA) and primaries (cHRM) alone are no profile: much pixel art says 1/2.2 where
// sRGB is meant, and its colours would move.
bool hasProfileChunk(Bytes bytes) {
    Bytes rest = bytes.subspan(std::min(kPngSignatureBytes, bytes.size()));
    for (PngChunk chunk = takePngChunk(rest); !chunk.name.empty() && chunk.name != "IDAT";
         chunk = takePngChunk(rest)) {
        if (chunk.name == "iCCP") return true;
    }
    return false;
}

int largestChange(QRgb before, QRgb after) {
    return std::max({std::abs(qRed(before) - qRed(after)), std::abs(qGreen(before) - qGreen(after)),
                     std::abs(qBlue(before) - qBlue(after))});
}

// Profiles of sRGB differ in how they write its curve; their last digits shall move no colour.
bool isNearlyIdentity(const QColorTransform& transform) {
    constexpr int kStep = 17;
    constexpr int kMostLevels = 2;
    for (int r = 0; r < 256; r += kStep) {
        for (int g = 0; g < 256; g += kStep) {
            for (int b = 0; b < 256; b += kStep) {
                const QRgb colour = qRgb(r, g, b);
                if (largestChange(colour, transform.map(colour)) > kMostLevels) return false;
            }
        }
    }
    return true;
}

}  // namespace

QColorTransform transformToSrgb(ImageKind kind, Bytes bytes, const QImage& image) {
    if (kind == ImageKind::Png && !hasProfileChunk(bytes)) return {};
    if (!image.colorSpace().isValid()) return {};
    const QColorTransform transform =
        image.colorSpace().transformationToColorSpace(QColorSpace(QColorSpace::SRgb));
    return isNearlyIdentity(transform) ? QColorTransform() : transform;
}

}  // namespace pantile::image_files
