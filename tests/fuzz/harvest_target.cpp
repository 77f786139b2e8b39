// A text from anywhere as harvestCodes takes it. Each byte 1 in it stands for a whole code, so that
// codes come to stand between all that mutations make.

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "codec/text_code.h"
#include "fuzz/targets.h"

namespace pantile::fuzz {
namespace {

constexpr char kPlaceOfCode = '\x01';
constexpr std::size_t kMostCodes = 64;  // An input of nothing else would be slow, and show no more.
// Glyphs, pieces, starts, and a sentence of damage for each of these, in vectors as they grow.
constexpr std::size_t kHarvestMostMemoryPerByte = 256;
constexpr std::size_t kHarvestMostMemoryPerCell = 8;
// Of the model of the largest set: one is read at a time.
constexpr std::size_t kHarvestMostMemoryBeside = std::size_t{6} << 20U;

/// 9x8 cells, a code of four lines.
const core::Texture& shingle() {
    static const core::Texture texture = [] {
        std::vector<core::PaletteIndex> cells;
        for (int i = 0; i < 72; ++i)
            cells.push_back(static_cast<core::PaletteIndex>(i * i / 3 % 3));
        return *core::Texture::create(
            *core::Grid::create(9, 8, std::move(cells)),
            *core::Palette::create({{0x2B, 0x2E, 0x33}, {0x6E, 0x5A, 0x3C}, {0xB9, 0xA0, 0x6B}}));
    }();
    return texture;
}

std::string textOf(Bytes input) {
    static const std::string code = codec::encodeTextCode(shingle())->text;
    std::string text;
    std::size_t codes = 0;
    for (const std::uint8_t byte : input) {
        const auto character = static_cast<char>(byte);
        if (character != kPlaceOfCode) {
            text += character;
        } else if (codes < kMostCodes) {
            text += code;
            ++codes;
        }
    }
    return text;
}

void requireComesBack(const core::Texture& texture) {
    const auto code = codec::encodeTextCode(texture);
    require(code.has_value(), "what was read can be written");
    const codec::Harvest again = codec::harvestCodes(code->text);
    require(
        again.damaged.empty() && again.found.size() == 1 && again.found.front().texture == texture,
        "what was read and written is read as the same");
}

}  // namespace

void tryHarvest(Bytes input) {
    const std::string text = textOf(input);
    const MemoryWatch watch;
    const codec::Harvest harvest = codec::harvestCodes(text);
    std::size_t cells = 0;
    for (const codec::FoundCode& found : harvest.found) cells += found.texture.grid().cellCount();
    require(watch.most() <= kHarvestMostMemoryPerByte * text.size() +
                                kHarvestMostMemoryPerCell * cells + kHarvestMostMemoryBeside,
            "reading takes memory for the text and the textures in it");
    std::size_t line = 1;
    for (const codec::FoundCode& found : harvest.found) {
        require(found.textLine >= line, "textures stand in the order of the text");
        line = found.textLine;
        requireComesBack(found.texture);
    }
    for (const codec::DamagedCode& damaged : harvest.damaged) {
        require(!damaged.where.empty() && !damaged.reason.empty(),
                "damage has a place and a reason");
    }
    std::size_t behind = 0;
    for (const codec::MarkedText& mark : harvest.marks) {
        require(mark.begin >= behind && mark.begin < mark.end && mark.end <= text.size(),
                "marks lie in the text, one behind the other");
        behind = mark.end;
    }
    require(!harvest.marks.empty() || (harvest.found.empty() && harvest.damaged.empty()),
            "what is told is marked");
    const bool isCode = input.size() == 1 && static_cast<char>(input.front()) == kPlaceOfCode;
    if (isCode) require(harvest.found.size() == 1 && line == 1, "a code alone is read");
}

}  // namespace pantile::fuzz
