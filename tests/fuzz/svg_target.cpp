// Drawings from anywhere, as they are added: checked, then drawn by Qt.

#include <algorithm>

#include "core/pixels.h"
#include "fuzz/targets.h"
#include "image_files/image_kind.h"
#include "image_files/read_image.h"

namespace pantile::fuzz {
namespace {

void requireReason(const core::Error& error) {
    using core::ErrorKind;
    require(error.kind == ErrorKind::Corrupt || error.kind == ErrorKind::Unsupported ||
                error.kind == ErrorKind::TooLarge,
            "a drawing that is not read is damaged, refused or too large");
    require(!error.message.empty() && !error.hint.empty(),
            "an error says what is wrong and what to do");
}

}  // namespace

void trySvg(Bytes input) {
    if (image_files::imageKindOf(input) != image_files::ImageKind::Svg) return;
    const auto picture = image_files::readImageBytes(input, "buoy.svg");
    if (!picture) return requireReason(picture.error());
    const core::Size size = picture->pixels.size;
    require(std::max(size.width, size.height) == image_files::kSvgSide &&
                std::min(size.width, size.height) >= 1,
            "the longer side is the one that is promised");
    require(picture->pixels.pixels.size() ==
                static_cast<std::size_t>(size.width) * static_cast<std::size_t>(size.height),
            "there is a pixel for every place");
    require(!picture->indexed && !picture->planes, "a drawing has no palette and no blocks");
}

}  // namespace pantile::fuzz
