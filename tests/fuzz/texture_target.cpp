// A texture made from the input, written in every way there is, pasted, and read again. The input
// is: width - 1, height - 1, colours - 2, flags, length of the title, the title; then the cells, as
// long as they last.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "codec/armour.h"
#include "codec/text_code.h"
#include "fuzz/checking.h"

namespace pantile::fuzz {
namespace {

constexpr std::uint8_t kHasTransparent = 1;
constexpr std::uint8_t kRepeatsCells = 2;  ///< Else the cells behind the last of the input are 0.

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
    const core::Size size{taker.take() + 1, taker.take() + 1};
    const int colours = taker.take() % (core::kMaxPaletteColours - 1) + core::kMinPaletteColours;
    const std::uint8_t flags = taker.take();
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

void tryTexture(Bytes input) {
    const std::optional<core::Texture> texture = textureOf(input);
    if (!texture) return;
    const codec::PaletteLookup lookup = [&](core::Fingerprint) { return texture->palette(); };
    for (const auto method : {codec::MethodChoice::PlainRunsOnly, codec::MethodChoice::Shortest}) {
        for (const auto palette : {codec::PaletteForm::Inside, codec::PaletteForm::ByFingerprint}) {
            const auto code = codec::encodeTextCode(*texture, {method, palette});
            require(code.has_value(), "every texture has a code");
            require(code->bytes <= codec::kMaxArmouredBytes, "every texture fits the armour");
            for (const std::string& text : {code->text, asQuote(code->text)}) {
                const codec::Harvest read = codec::harvestCodes(text, lookup);
                require(read.damaged.empty() && read.found.size() == 1, "a pasted code is read");
                require(read.found.front().texture == *texture,
                        "a texture comes back from its code");
            }
        }
    }
}

}  // namespace
}  // namespace pantile::fuzz

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    pantile::fuzz::tryTexture({data, size});
    return 0;
}
