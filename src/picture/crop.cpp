#include "picture/crop.h"

#include <cstddef>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

namespace pantile::picture {
namespace {

// Whether `length` steps from `start` on lie within `side`, however large the numbers are.
bool liesWithin(int start, int length, int side) {
    return start >= 0 && length >= 1 && std::int64_t{start} + length <= side;
}

template <typename T>
std::vector<T> partOf(const std::vector<T>& all, int width, const Rectangle& part) {
    std::vector<T> kept;
    kept.reserve(static_cast<std::size_t>(part.size.width) *
                 static_cast<std::size_t>(part.size.height));
    for (int y = part.at.y; y < part.at.y + part.size.height; ++y) {
        const auto row = all.begin() + static_cast<std::ptrdiff_t>(y) * width + part.at.x;
        kept.insert(kept.end(), row, row + part.size.width);
    }
    return kept;
}

}  // namespace

core::Result<core::Picture> cropped(const core::Picture& picture, const Rectangle& part) {
    const core::Size size = picture.pixels.size;
    if (!liesWithin(part.at.x, part.size.width, size.width) ||
        !liesWithin(part.at.y, part.size.height, size.height)) {
        return core::Error{core::ErrorKind::InvalidInput,
                           "a part of " + std::to_string(part.size.width) + "x" +
                               std::to_string(part.size.height) + " pixels at " +
                               std::to_string(part.at.x) + "," + std::to_string(part.at.y) +
                               " is not inside a picture of " + std::to_string(size.width) + "x" +
                               std::to_string(size.height),
                           "choose a part that the picture has"};
    }
    core::Picture result{{part.size, partOf(picture.pixels.pixels, size.width, part)},
                         std::nullopt};
    if (picture.indexed) {
        result.indexed = core::IndexedPixels{picture.indexed->table,
                                             partOf(picture.indexed->indices, size.width, part)};
    }
    return result;
}

}  // namespace pantile::picture
