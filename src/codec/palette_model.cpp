#include "codec/palette_model.h"

#include <algorithm>
#include <array>
#include <bit>
#include <cstdlib>
#include <utility>
#include <vector>

#include "codec/bit_mixer.h"
#include "codec/start_values.h"

namespace pantile::codec {
namespace {

constexpr int kCountBits = 8;
constexpr int kIndexBits = 8;

/// Differences of one channel, as a size class (how many bits it has), a sign and the bits below
/// the first one.
class DifferenceModel {
public:
    DifferenceModel() {
        for (std::size_t i = 0; i < m_larger.size(); ++i) m_larger[i] = started(kLargerStart[i]);
        for (std::size_t i = 0; i < m_negative.size(); ++i) {
            m_negative[i] = started(kNegativeStart[i]);
        }
    }

    int code(BitCoder& coder, std::size_t channel, int difference) {
        const auto size = static_cast<unsigned>(std::abs(difference));
        int bits = 0;
        while (bits < kMostBits && codeLearned(coder, static_cast<int>(std::bit_width(size)) > bits,
                                               larger(channel, bits))) {
            ++bits;
        }
        m_lastBits = bits;
        if (bits == 0) return 0;
        Learned& sign = m_negative[3 * channel + static_cast<std::size_t>(std::min(bits, 3) - 1)];
        const bool negative = codeLearned(coder, difference < 0, sign);
        unsigned coded = 1U << static_cast<unsigned>(bits - 1);
        if (bits > 1) coded |= coder.codeNumber(size & (coded - 1), bits - 1);
        return negative ? -static_cast<int>(coded) : static_cast<int>(coded);
    }

private:
    static constexpr int kMostBits = 8;

    static Learned started(std::uint8_t yes) {
        return {.yes = static_cast<std::uint16_t>(yes << 8U), .seen = kSeenAtStart};
    }

    static bool codeLearned(BitCoder& coder, bool bit, Learned& learned) {
        bit = coder.code(bit, learned.yes);
        learned.learn(bit);
        return bit;
    }

    Learned& larger(std::size_t channel, int bits) {
        const auto last = static_cast<std::size_t>(std::min(m_lastBits, 7));
        return m_larger[(channel * 8 + last) * 8 + static_cast<std::size_t>(bits)];
    }

    static constexpr std::uint8_t kSeenAtStart = 12;

    std::array<Learned, kLargerStart.size()> m_larger;
    std::array<Learned, kNegativeStart.size()> m_negative;
    int m_lastBits = 0;
};

/// Green first; red and blue are foretold to move as it does.
std::optional<core::Rgb8> codeColour(BitCoder& coder, DifferenceModel& model, core::Rgb8 before,
                                     core::Rgb8 colour) {
    const auto inRange = [](int value) { return value >= 0 && value <= 255; };
    const int green = before.g + model.code(coder, 0, colour.g - before.g);
    const int moved = green - before.g;
    const int redGuess = std::clamp(before.r + moved, 0, 255);
    const int red = redGuess + model.code(coder, 1, colour.r - redGuess);
    const int blueGuess = std::clamp(before.b + moved - (red - before.r - moved) / 2, 0, 255);
    const int blue = blueGuess + model.code(coder, 2, colour.b - blueGuess);
    if (!inRange(green) || !inRange(red) || !inRange(blue)) return std::nullopt;
    return core::Rgb8{static_cast<std::uint8_t>(red), static_cast<std::uint8_t>(green),
                      static_cast<std::uint8_t>(blue)};
}

std::optional<core::PaletteIndex> codeTransparent(BitCoder& coder, int size,
                                                  const core::Palette* palette) {
    const std::optional<core::PaletteIndex> index =
        palette != nullptr ? palette->transparent() : std::nullopt;
    if (!coder.codeEven(index.has_value())) return std::nullopt;
    const auto last = static_cast<core::PaletteIndex>(size - 1);
    if (coder.codeEven(index == last)) return last;
    return static_cast<core::PaletteIndex>(coder.codeNumber(index.value_or(0), kIndexBits));
}

}  // namespace

std::optional<core::Palette> codePalette(BitCoder& coder, const core::Palette* palette) {
    const int wanted = palette != nullptr ? palette->size() : core::kMinPaletteColours;
    const int size =
        static_cast<int>(coder.codeNumber(static_cast<std::uint32_t>(wanted - 1), kCountBits)) + 1;
    const std::optional<core::PaletteIndex> transparent = codeTransparent(coder, size, palette);
    DifferenceModel model;
    core::Rgb8 before{};
    std::vector<core::Rgb8> colours;
    for (int i = 0; i < size; ++i) {
        const core::Rgb8 own =
            palette != nullptr ? palette->colours()[static_cast<std::size_t>(i)] : core::Rgb8{};
        // What nobody sees is black as a rule, and far from its neighbours.
        if (transparent == i && coder.codeEven(own == core::Rgb8{})) {
            colours.push_back({});
            continue;
        }
        const std::optional<core::Rgb8> colour = codeColour(coder, model, before, own);
        if (!colour) return std::nullopt;
        colours.push_back(*colour);
        before = *colour;
    }
    core::Result<core::Palette> made = core::Palette::create(std::move(colours), transparent);
    if (!made) return std::nullopt;
    return std::move(*made);
}

}  // namespace pantile::codec
