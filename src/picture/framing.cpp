#include "picture/framing.h"

#include <algorithm>

namespace pantile::picture {
namespace {

// `pixels` divided evenly among `cells`.
AxisSpan wholeSide(int pixels, int cells) {
    return {0, pixels, cells};
}

// How much of a margin lies before the picture, in halves of it: 0, 1 or 2.
struct Lead {
    int across = 1;
    int down = 1;
};

Lead leadOf(Anchor anchor) {
    const int number = static_cast<int>(anchor);  // row by row, three in each
    return {number % 3, number / 3};
}

// Part of `pixels`, by cells of the pitch otherPixels / otherCells that the other side has.
AxisSpan partOfSide(int pixels, int cells, int otherPixels, int otherCells, int lead) {
    const std::int64_t shown = std::int64_t{otherPixels} * cells;
    const std::int64_t margin = std::int64_t{pixels} * otherCells - shown;  // both ends together
    return {margin * lead, 2 * std::int64_t{otherPixels}, 2 * std::int64_t{otherCells}};
}

// pixels x cells / otherPixels to the nearest whole number, halves up, at least one cell.
int scaledSide(int pixels, int cells, int otherPixels) {
    const std::int64_t doubled = 2 * std::int64_t{pixels} * cells + otherPixels;
    return static_cast<int>(std::max<std::int64_t>(1, doubled / (2 * std::int64_t{otherPixels})));
}

Framing stretched(core::Size picture, core::Size painted, core::Size target, Lead lead = {}) {
    return {wholeSide(picture.width, painted.width),
            wholeSide(picture.height, painted.height),
            {(target.width - painted.width) * lead.across / 2,
             (target.height - painted.height) * lead.down / 2},
            painted,
            target};
}

}  // namespace

Framing frame(core::Size picture, core::Size target, Fit fit, Anchor anchor) {
    const Lead lead = leadOf(anchor);
    const std::int64_t pictureAcross = std::int64_t{picture.width} * target.height;
    const std::int64_t targetAcross = std::int64_t{target.width} * picture.height;
    Framing framing = stretched(picture, target, target);
    switch (fit) {
        case Fit::Exact:
            return stretched(picture, picture, picture);
        case Fit::Stretch:
            return framing;
        case Fit::Cover:
            if (pictureAcross > targetAcross)
                framing.columns = partOfSide(picture.width, target.width, picture.height,
                                             target.height, lead.across);
            else if (pictureAcross < targetAcross)
                framing.rows = partOfSide(picture.height, target.height, picture.width,
                                          target.width, lead.down);
            return framing;
        case Fit::Contain: {
            core::Size painted = target;
            if (pictureAcross > targetAcross)
                painted.height = scaledSide(picture.height, target.width, picture.width);
            else
                painted.width = scaledSide(picture.width, target.height, picture.height);
            return stretched(picture, painted, target, lead);
        }
    }
    return framing;
}

}  // namespace pantile::picture
