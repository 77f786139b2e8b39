#include "picture/look.h"

#include <algorithm>
#include <cstdlib>
#include <numeric>

#include "picture/step_lab.h"

namespace pantile::picture {
namespace {

constexpr int kParts = 4;         // Along each side.
constexpr int kFurtherSteps = 2;  // Of looking one cell further.
constexpr int kTintSteps = 200;   // For black to white.
constexpr int kTintMiddle = 100;

// An unpainted cell is a grey in lightness and this far away by itself: then it is never further
// from a painted one than black from white.
constexpr std::int64_t kUnpaintedLightness = kLabSteps / 2;
constexpr std::int64_t kUnpaintedAway = kLabSteps * 8 / 10;

/// Source: the finalizer of MurmurHash3 (A. Appleby, 2011, in the public domain).
constexpr std::uint32_t stirred(std::uint32_t value) {
    value ^= value >> 16U;
    value *= 0x85EBCA6BU;
    value ^= value >> 13U;
    value *= 0xC2B2AE35U;
    return value ^ (value >> 16U);
}

// Odd numbers without a pattern: the digits of the golden ratio and of the roots of 2 and 3.
constexpr std::uint32_t kBesideFactor = 0x9E3779B9U;
constexpr std::uint32_t kAslantFactor = 0x6A09E667U;
constexpr std::uint32_t kAlikeFactor = 0xBB67AE85U;

/// Where colours change along one side, with wrap-around: all such places are a first one and whole
/// multiples of `step` beyond it.
struct Changes {
    int step;
    int first = -1;  ///< -1: none.

    void add(int place) {
        if (first < 0) first = place;
        step = std::gcd(step, place - first);
    }
};

/// Values of cells with a border in which those of the opposite edge stand again.
template <typename T>
class Wrapped {
public:
    explicit Wrapped(core::Size size)
        : m_width(static_cast<std::size_t>(size.width)),
          m_height(static_cast<std::size_t>(size.height)),
          m_values((m_width + 2) * (m_height + 2)) {}

    /// From one left of the first cell of row `y`, which is -1 to the height.
    T* row(int y) { return &m_values[static_cast<std::size_t>(y + 1) * (m_width + 2)]; }

    void closeEdges() {
        const auto height = static_cast<int>(m_height);
        for (int y = 0; y < height; ++y) {
            row(y)[0] = row(y)[m_width];
            row(y)[m_width + 1] = row(y)[1];
        }
        std::copy_n(row(height - 1), m_width + 2, row(-1));
        std::copy_n(row(0), m_width + 2, row(height));
    }

private:
    std::size_t m_width;
    std::size_t m_height;
    std::vector<T> m_values;
};

/// First labels: how many cells have the cell's colour, whether it is unpainted, and how many of
/// the eight neighbours have that colour too.
std::vector<std::uint32_t> firstLabels(const ColourClasses& classes) {
    std::vector<std::uint32_t> ofClass;
    for (std::size_t i = 0; i < classes.uses.size(); ++i) {
        const bool unpainted = std::cmp_equal(classes.unpainted, i);
        ofClass.push_back(
            stirred(2 * static_cast<std::uint32_t>(classes.uses[i]) + (unpainted ? 1 : 0)));
    }
    const auto width = static_cast<std::size_t>(classes.size.width);
    Wrapped<std::uint8_t> wrapped(classes.size);
    for (int y = 0; y < classes.size.height; ++y)
        std::copy_n(&classes.cells[static_cast<std::size_t>(y) * width], width, wrapped.row(y) + 1);
    wrapped.closeEdges();

    std::vector<std::uint32_t> labels;
    labels.reserve(classes.cells.size());
    for (int y = 0; y < classes.size.height; ++y) {
        const std::uint8_t* const up = wrapped.row(y - 1);
        const std::uint8_t* const here = wrapped.row(y);
        const std::uint8_t* const down = wrapped.row(y + 1);
        for (std::size_t x = 1; x <= width; ++x) {
            const std::uint8_t own = here[x];
            const auto is = [own](std::uint8_t other) {
                return static_cast<std::uint32_t>(own == other);
            };
            const std::uint32_t beside =
                is(up[x]) + is(here[x - 1]) + is(here[x + 1]) + is(down[x]);
            const std::uint32_t aslant =
                is(up[x - 1]) + is(up[x + 1]) + is(down[x - 1]) + is(down[x + 1]);
            labels.push_back(ofClass[own] + (beside + 8 * aslant) * kAlikeFactor);
        }
    }
    return labels;
}

/// Each cell's label joined with those of its eight neighbours. Sums do not tell in which order
/// their parts came, so turning and mirroring are left out.
void lookFurther(std::vector<std::uint32_t>& labels, core::Size size) {
    const auto width = static_cast<std::size_t>(size.width);
    Wrapped<std::uint32_t> wrapped(size);
    for (int y = 0; y < size.height; ++y) {
        const std::uint32_t* const from = &labels[static_cast<std::size_t>(y) * width];
        std::transform(from, from + width, wrapped.row(y) + 1, stirred);
    }
    wrapped.closeEdges();
    auto label = labels.begin();
    for (int y = 0; y < size.height; ++y) {
        const std::uint32_t* const up = wrapped.row(y - 1);
        const std::uint32_t* const here = wrapped.row(y);
        const std::uint32_t* const down = wrapped.row(y + 1);
        for (std::size_t x = 1; x <= width; ++x, ++label) {
            const std::uint32_t beside = up[x] + here[x - 1] + here[x + 1] + down[x];
            const std::uint32_t aslant = up[x - 1] + up[x + 1] + down[x - 1] + down[x + 1];
            *label = here[x] + beside * kBesideFactor + aslant * kAslantFactor;
        }
    }
}

std::uint32_t shapeOf(const ColourClasses& base) {
    std::uint32_t sum = 0;
    for (const std::uint32_t label : surroundings(base)) sum += stirred(label);
    const auto shorter = static_cast<std::uint32_t>(std::min(base.size.width, base.size.height));
    const auto longer = static_cast<std::uint32_t>(std::max(base.size.width, base.size.height));
    return stirred(sum ^ stirred(shorter << 16U | longer));
}

/// Units: kLabSteps for black to white; index by index.
std::vector<StepLab> tintsOf(const core::Palette& palette) {
    std::vector<StepLab> tints;
    for (const core::Rgb8 colour : palette.colours()) tints.push_back(toSteps(colour));
    if (const auto transparent = palette.transparent())
        tints[*transparent] = {kUnpaintedLightness, 0, 0};
    return tints;
}

/// The mean in tint steps, rounded to the nearest and never below 0: the middle is added first.
std::uint8_t tintByte(std::int64_t sum, std::int64_t weight, std::int64_t middle = 0) {
    const std::int64_t unit = kLabSteps * weight;
    const std::int64_t scaled = sum * kTintSteps + middle * unit;
    return static_cast<std::uint8_t>(std::clamp<std::int64_t>((scaled + unit / 2) / unit, 0, 255));
}

MeanTint meanOf(const core::Grid& grid, const core::Palette& palette,
                const std::vector<StepLab>& tints) {
    std::array<std::int64_t, 256> uses{};
    for (const core::PaletteIndex index : grid.cells()) ++uses[index];
    StepLab sum;
    for (std::size_t i = 0; i < tints.size(); ++i) {
        sum.l += uses[i] * tints[i].l;
        sum.a += uses[i] * tints[i].a;
        sum.b += uses[i] * tints[i].b;
    }
    const auto transparent = palette.transparent();
    const std::int64_t away = transparent ? uses[*transparent] * kUnpaintedAway : 0;
    const auto cells = static_cast<std::int64_t>(grid.cellCount());
    return {tintByte(sum.l, cells), tintByte(sum.a, cells, kTintMiddle),
            tintByte(sum.b, cells, kTintMiddle), tintByte(away, cells)};
}

using PartSums = std::array<std::int64_t, kParts>;

/// Sums over equal parts of a row of values. `before[x]` is the sum of the first x of them. A part
/// begins inside a value where the parts do not come out even: that one is shared.
PartSums partSums(const std::vector<std::int64_t>& before) {
    const std::size_t count = before.size() - 1;
    const auto upTo = [&](std::size_t quarters) {
        const std::size_t x = quarters / kParts;
        const auto rest = static_cast<std::int64_t>(quarters % kParts);
        const std::int64_t whole = before[x] * kParts;
        return rest == 0 ? whole : whole + (before[x + 1] - before[x]) * rest;
    };
    PartSums sums{};
    for (std::size_t part = 0; part < kParts; ++part)
        sums[part] = upTo((part + 1) * count) - upTo(part * count);
    return sums;
}

PartLights lightsOf(const core::Grid& grid, const std::vector<StepLab>& tints) {
    const auto width = static_cast<std::size_t>(grid.width());
    const auto height = static_cast<std::size_t>(grid.height());
    std::array<std::int64_t, 256> light{};
    for (std::size_t i = 0; i < tints.size(); ++i) light[i] = tints[i].l;

    std::array<std::vector<std::int64_t>, kParts> down;  // For each part of the rows.
    for (auto& before : down) before.assign(height + 1, 0);
    std::vector<std::int64_t> across(width + 1, 0);
    for (std::size_t y = 0; y < height; ++y) {
        const auto row = grid.cells().subspan(y * width, width);
        for (std::size_t x = 0; x < width; ++x) across[x + 1] = across[x] + light[row[x]];
        const PartSums sums = partSums(across);
        for (std::size_t part = 0; part < kParts; ++part)
            down[part][y + 1] = down[part][y] + sums[part];
    }
    const auto weight = static_cast<std::int64_t>(grid.cellCount());
    PartLights lights{};
    for (std::size_t column = 0; column < kParts; ++column) {
        const PartSums sums = partSums(down[column]);
        for (std::size_t row = 0; row < kParts; ++row)
            lights[row * kParts + column] = tintByte(sums[row], weight);
    }
    return lights;
}

// Means are rounded, so two of them are up to one step nearer or further than they are.
constexpr int kRounding = 1;

std::int64_t surelyApart(int p, int q) {
    return std::max(0, std::abs(p - q) - kRounding);
}

std::int64_t squared(std::int64_t value) {
    return value * value;
}

std::int64_t squaredColourApart(const MeanTint& p, const MeanTint& q) {
    return squared(surelyApart(p.greenToRed, q.greenToRed)) +
           squared(surelyApart(p.blueToYellow, q.blueToYellow)) +
           squared(surelyApart(p.unpainted, q.unpainted));
}

constexpr std::int64_t kAllParts = std::int64_t{kParts} * kParts;

std::int64_t stepsWithin(int within) {
    return std::int64_t{within} * kTintSteps / 100;
}

/// `squared` in steps of which there are kAllParts to a tint step. Distances are cut off after
/// ten-thousandths, cell by cell, which is less than one of these.
bool isWithin(std::int64_t squaredSteps, int within) {
    return squaredSteps <= squared(kAllParts * stepsWithin(within) + 1);
}

}  // namespace

ColourClasses ColourClasses::of(const core::Grid& grid, const core::Palette& palette) {
    std::array<int, 256> classOf{};
    classOf.fill(-1);
    ColourClasses classes;
    classes.size = grid.size();
    std::vector<core::Rgb8>& colours = classes.colours;
    const auto numberOf = [&](core::PaletteIndex index) {
        const auto next = static_cast<int>(colours.size());
        if (palette.transparent() == index) {
            classes.unpainted = next;
            colours.emplace_back();
            return next;
        }
        for (int i = 0; i < next; ++i) {
            if (i != classes.unpainted && colours[static_cast<std::size_t>(i)] == palette[index])
                return i;
        }
        colours.push_back(palette[index]);
        return next;
    };
    std::array<int, 256> uses{};
    classes.cells.reserve(grid.cellCount());
    for (const core::PaletteIndex index : grid.cells()) {
        int& number = classOf[index];
        if (number < 0) number = numberOf(index);
        ++uses[static_cast<std::size_t>(number)];
        classes.cells.push_back(static_cast<std::uint8_t>(number));
    }
    classes.uses.assign(uses.begin(), uses.begin() + static_cast<std::ptrdiff_t>(colours.size()));
    return classes;
}

Enlargement enlargementOf(const ColourClasses& classes) {
    const auto [width, height] = classes.size;
    Changes across{width};
    Changes down{height};
    for (int y = 0; y < height; ++y) {
        for (int x = 0; x < width; ++x) {
            const std::uint8_t here = classes.at(x, y);
            if (here != classes.at(x == 0 ? width - 1 : x - 1, y)) across.add(x);
            if (here != classes.at(x, y == 0 ? height - 1 : y - 1)) down.add(y);
            if (across.step == 1 || down.step == 1) return {};
        }
    }
    const int factor = std::gcd(across.step, down.step);
    return {factor, {std::max(across.first, 0) % factor, std::max(down.first, 0) % factor}};
}

ColourClasses baseOf(const ColourClasses& classes, const Enlargement& enlargement) {
    const auto& [factor, offset] = enlargement;
    if (factor == 1) return classes;
    ColourClasses base{{classes.size.width / factor, classes.size.height / factor},
                       {},
                       classes.uses,
                       classes.colours,
                       classes.unpainted};
    base.cells.reserve(classes.cells.size() / static_cast<std::size_t>(factor * factor));
    for (int y = 0; y < base.size.height; ++y) {
        for (int x = 0; x < base.size.width; ++x)
            base.cells.push_back(classes.at(x * factor + offset.x, y * factor + offset.y));
    }
    for (int& uses : base.uses) uses /= factor * factor;
    return base;
}

std::vector<std::uint32_t> surroundings(const ColourClasses& classes) {
    std::vector<std::uint32_t> labels = firstLabels(classes);
    for (int round = 0; round < kFurtherSteps; ++round) lookFurther(labels, classes.size);
    return labels;
}

Look lookOf(const core::Grid& grid, const core::Palette& palette) {
    const ColourClasses classes = ColourClasses::of(grid, palette);
    const std::vector<StepLab> tints = tintsOf(palette);
    return {shapeOf(baseOf(classes, enlargementOf(classes))), meanOf(grid, palette, tints),
            lightsOf(grid, tints)};
}

int meanReach(int within) {
    return static_cast<int>(stepsWithin(within)) + kRounding;
}

bool mayBeNear(const MeanTint& p, const MeanTint& q, int within) {
    const std::int64_t apart =
        squared(surelyApart(p.lightness, q.lightness)) + squaredColourApart(p, q);
    return isWithin(squared(kAllParts) * apart, within);
}

// A mean of distances is never less than the distance of the means, in any of the channels, for
// lightness part by part.
bool mayBeNear(const Look& p, const Look& q, int within) {
    std::int64_t sum = 0;
    for (std::size_t i = 0; i < p.lights.size(); ++i) sum += std::abs(p.lights[i] - q.lights[i]);
    const std::int64_t lightness = std::max<std::int64_t>(0, sum - kRounding * kAllParts);
    const std::int64_t colour = squared(kAllParts) * squaredColourApart(p.mean, q.mean);
    return isWithin(squared(lightness) + colour, within);
}

PartLights orientedLights(const PartLights& lights, Orientation orientation) {
    const core::Grid turned =
        oriented(*core::Grid::create(kParts, kParts, {lights.begin(), lights.end()}), orientation);
    PartLights result{};
    std::copy(turned.cells().begin(), turned.cells().end(), result.begin());
    return result;
}

}  // namespace pantile::picture
