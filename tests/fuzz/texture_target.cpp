// A texture made from the input, written in every way there is, pasted, and read again. The input
// is: width - 1, height - 1, colours - 2, flags, length of the title, the title; then the cells, as
// long as they last.

#include <algorithm>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "codec/armour.h"
#include "codec/parts.h"
#include "codec/text_code.h"
#include "fuzz/targets.h"

namespace pantile::fuzz {
namespace {

constexpr std::size_t kParts = 3;
constexpr std::uint8_t kHasTransparent = 1;
constexpr std::uint8_t kRepeatsCells = 2;  ///< Else the cells behind the last of the input are 0.
constexpr std::uint8_t kMayBeLarge = 4;
constexpr int kMostUsualSide = 48;  ///< Large grids take too much of the time to be usual.

/// Takes bytes off the front of the input, and zeros behind its end.
class Taker {
public:
    explicit Taker(Bytes input) : m_rest(input) {}

    std::uint8_t take() {
        if (m_rest.empty()) return 0;
        const std::uint8_t byte = m_rest.front();
        m_rest = m_rest.subspan(1);
        return byte;
    }

    Bytes rest() const { return m_rest; }

private:
    Bytes m_rest;
};

core::Palette paletteOf(int size, std::uint8_t flags) {
    std::vector<core::Rgb8> colours;
    for (int i = 0; i < size; ++i) {
        const auto part = static_cast<std::uint8_t>(i);
        colours.push_back({part, static_cast<std::uint8_t>(255 - i), flags});
    }
    std::optional<core::PaletteIndex> transparent;
    if ((flags & kHasTransparent) != 0) transparent = static_cast<core::PaletteIndex>(flags % size);
    return *core::Palette::create(std::move(colours), transparent);
}

core::Grid gridOf(core::Size size, int colours, std::uint8_t flags, Bytes cells) {
    std::vector<core::PaletteIndex> list;
    const int count = size.width * size.height;
    for (int i = 0; i < count; ++i) {
        const auto at = static_cast<std::size_t>(i);
        std::uint8_t cell = at < cells.size() ? cells[at] : 0;
        if ((flags & kRepeatsCells) != 0 && !cells.empty()) cell = cells[at % cells.size()];
        list.push_back(static_cast<core::PaletteIndex>(cell % colours));
    }
    return *core::Grid::create(size.width, size.height, std::move(list));
}

/// Nothing if the title breaks the rules for one.
std::optional<core::Texture> textureOf(Bytes input) {
    Taker taker(input);
    const int width = taker.take();
    const int height = taker.take();
    const int colours = taker.take() % (core::kMaxPaletteColours - 1) + core::kMinPaletteColours;
    const std::uint8_t flags = taker.take();
    const int mostSide = (flags & kMayBeLarge) != 0 ? core::kMaxGridSide : kMostUsualSide;
    const core::Size size{width % mostSide + 1, height % mostSide + 1};
    core::TextureText text;
    for (int length = taker.take(); length > 0; --length)
        text.title += static_cast<char>(taker.take());
    core::Grid grid = gridOf(size, colours, flags, taker.rest());
    auto texture =
        core::Texture::create(std::move(grid), paletteOf(colours, flags), std::move(text));
    if (!texture) return std::nullopt;
    return std::move(*texture);
}

std::string asQuote(const std::string& code) {
    std::string text = "keeper wrote:\n> ";
    for (const char letter : code) {
        text += letter;
        if (letter == '\n') text += "> ";
    }
    return text + "\nnice, no?";
}

void requireRead(const std::string& text, const core::Texture& texture,
                 const codec::PaletteLookup& lookup) {
    const codec::Harvest read = codec::harvestCodes(text, lookup);
    require(read.damaged.empty() && read.found.size() == 1, "a pasted code is read");
    require(read.found.front().texture == texture, "a texture comes back from its code");
    require(read.found.front().repaired == 0, "nothing is repaired that is whole");
}

/// The parts of a code, the last one first.
std::string asParts(const codec::TextCode& code) {
    const auto parts =
        codec::armouredParts(code.container, std::min(kParts, code.container.size()));
    require(parts.has_value(), "every code can be cut");
    std::string text;
    for (const std::string& part : *parts) text.insert(0, part + "\n\n");
    return text;
}

/// With itself in another size, as a set.
void trySet(const core::Texture& texture, codec::PaletteForm palette,
            const codec::PaletteLookup& lookup) {
    const std::vector<core::Texture> set = {
        texture, *core::Texture::create(*core::Grid::filled(3, 2, 1), texture.palette())};
    const auto code = codec::encodeSetCode(set, {codec::MethodChoice::Shortest, palette});
    if (!code) return;  // Too large or too noisy for this form.
    const codec::Harvest read = codec::harvestCodes(code->text, lookup);
    require(read.damaged.empty(), "a set is read");
    std::vector<core::Texture> found;
    for (const codec::FoundCode& one : read.found) found.push_back(one.texture);
    require(found == set || set.front() == set.back(), "a set comes back from its code");
}

}  // namespace

void tryTexture(Bytes input) {
    const std::optional<core::Texture> texture = textureOf(input);
    if (!texture) return;
    const codec::PaletteLookup lookup = [&](core::Fingerprint) { return texture->palette(); };
    for (const auto palette : {codec::PaletteForm::Inside, codec::PaletteForm::ByFingerprint}) {
        for (const auto method :
             {codec::MethodChoice::PlainRunsOnly, codec::MethodChoice::Shortest}) {
            const auto code = codec::encodeTextCode(*texture, {method, palette});
            require(code.has_value(), "every texture has a code");
            require(code->bytes <= codec::kMaxArmouredBytes, "every texture fits the armour");
            requireRead(code->text, *texture, lookup);
            requireRead(asQuote(code->text), *texture, lookup);
            requireRead(asParts(*code), *texture, lookup);
        }
        trySet(*texture, palette, lookup);
    }
}

}  // namespace pantile::fuzz
