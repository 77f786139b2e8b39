#include "picture/contact_sheet.h"

#include <algorithm>
#include <string>
#include <vector>

#include "core/range_check.h"
#include "picture/digit_glyphs.h"
#include "picture/enlarge.h"

namespace pantile::picture {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;

constexpr int kBoxSide = 128;  // 64 cells twice, 32 four times, 16 eight times
constexpr int kGap = 16;       // between boxes, and around them all
constexpr int kLabelGap = 6;   // between a texture and its id
constexpr int kDigitScale = 2;
constexpr int kHatchPitch = 4;
constexpr int kMaxColumns = 64;

constexpr core::Rgba8 kPaper{238, 236, 229, 255};
constexpr core::Rgba8 kInk{84, 82, 76, 255};
constexpr core::Rgba8 kHatchPaper{227, 225, 217, 255};
constexpr core::Rgba8 kHatchLine{198, 195, 186, 255};

int factorFor(const core::Grid& grid) {
    const int longSide = std::max(grid.width(), grid.height());
    return std::clamp(kBoxSide / longSide, 1, kMaxEnlargement);
}

core::Size drawnSize(const core::Grid& grid) {
    const int factor = factorFor(grid);
    return {grid.width() * factor, grid.height() * factor};
}

int labelHeight() {
    return kLabelGap + digitsSize("0", kDigitScale).height;
}

// Boxes are as wide as their column's widest texture and as high as their row's highest.
struct Layout {
    std::vector<int> widths;
    std::vector<int> heights;

    Layout(std::span<const SheetItem> items, int columns)
        : widths(std::min(static_cast<std::size_t>(columns), items.size()), kBoxSide),
          heights((items.size() + widths.size() - 1) / widths.size(), kBoxSide) {
        for (std::size_t i = 0; i < items.size(); ++i) {
            const core::Size size = drawnSize(items[i].grid);
            int& width = widths[i % widths.size()];
            int& height = heights[i / widths.size()];
            width = std::max(width, size.width);
            height = std::max(height, size.height);
        }
    }

    std::int64_t width() const {
        std::int64_t sum = kGap;
        for (const int box : widths) sum += box + kGap;
        return sum;
    }

    std::int64_t height() const {
        std::int64_t sum = kGap;
        for (const int box : heights) sum += box + labelHeight() + kGap;
        return sum;
    }
};

core::Rgba8 hatchAt(int x, int y) {
    return (x + y) % kHatchPitch == 0 ? kHatchLine : kHatchPaper;
}

Result<void> drawTexture(core::Pixels& sheet, core::Point at, const SheetItem& item) {
    PANTILE_ASSIGN_OR_RETURN(const core::Pixels picture,
                             enlarged(item.grid, item.palette, factorFor(item.grid)));
    for (int y = 0; y < picture.size.height; ++y) {
        for (int x = 0; x < picture.size.width; ++x) {
            const core::Rgba8& pixel = picture.at(x, y);
            sheet.at(at.x + x, at.y + y) = pixel.a == 0 ? hatchAt(x, y) : pixel;
        }
    }
    return {};
}

// The texture stands in the middle of its box's floor, the id in the middle below.
Result<void> drawItem(core::Pixels& sheet, core::Point corner, core::Size box,
                      const SheetItem& item) {
    const core::Size size = drawnSize(item.grid);
    const core::Point at{corner.x + (box.width - size.width) / 2,
                         corner.y + box.height - size.height};
    PANTILE_RETURN_IF_ERROR(drawTexture(sheet, at, item));
    const std::string label = std::to_string(item.id);
    const int labelWidth = digitsSize(label, kDigitScale).width;
    drawDigits(sheet, {corner.x + (box.width - labelWidth) / 2, corner.y + box.height + kLabelGap},
               label, kDigitScale, kInk);
    return {};
}

}  // namespace

Result<core::Pixels> contactSheet(std::span<const SheetItem> items, const SheetOptions& options) {
    if (items.empty())
        return Error{ErrorKind::InvalidInput, "a contact sheet needs at least one texture",
                     "select some textures"};
    PANTILE_RETURN_IF_ERROR(
        core::checkRange("the number of columns", options.columns, 1, kMaxColumns));
    const Layout layout(items, options.columns);
    if (layout.height() > kMaxSheetPixels || layout.width() * layout.height() > kMaxSheetPixels)
        return Error{ErrorKind::TooLarge,
                     "a contact sheet of " + std::to_string(items.size()) +
                         " textures would have more than " +
                         std::to_string(kMaxSheetPixels >> 20U) + " megapixels",
                     "select fewer textures at a time"};

    core::Pixels sheet{{static_cast<int>(layout.width()), static_cast<int>(layout.height())}, {}};
    sheet.pixels.assign(static_cast<std::size_t>(layout.width() * layout.height()), kPaper);
    core::Point corner{kGap, kGap};
    for (std::size_t i = 0; i < items.size(); ++i) {
        const std::size_t column = i % layout.widths.size();
        const std::size_t row = i / layout.widths.size();
        PANTILE_RETURN_IF_ERROR(
            drawItem(sheet, corner, {layout.widths[column], layout.heights[row]}, items[i]));
        corner.x += layout.widths[column] + kGap;
        if (column + 1 == layout.widths.size())
            corner = {kGap, corner.y + layout.heights[row] + labelHeight() + kGap};
    }
    return sheet;
}

}  // namespace pantile::picture
