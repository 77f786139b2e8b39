#include "picture/digit_glyphs.h"

#include <array>
#include <cstddef>

namespace pantile::picture {
namespace {

constexpr int kGlyphWidth = 3;
constexpr int kGlyphHeight = 5;
constexpr int kAdvance = kGlyphWidth + 1;

constexpr std::array<std::array<std::string_view, kGlyphHeight>, 10> kGlyphs{{
    {"###", "#.#", "#.#", "#.#", "###"},
    {".#.", "##.", ".#.", ".#.", "###"},
    {"###", "..#", "###", "#..", "###"},
    {"###", "..#", ".##", "..#", "###"},
    {"#.#", "#.#", "###", "..#", "..#"},
    {"###", "#..", "###", "..#", "###"},
    {"###", "#..", "###", "#.#", "###"},
    {"###", "..#", ".#.", ".#.", ".#."},
    {"###", "#.#", "###", "#.#", "###"},
    {"###", "#.#", "###", "..#", "###"},
}};

void drawSquare(core::Pixels& pixels, core::Point at, int side, core::Rgba8 ink) {
    for (int y = at.y; y < at.y + side; ++y) {
        for (int x = at.x; x < at.x + side; ++x) {
            if (x >= 0 && y >= 0 && x < pixels.size.width && y < pixels.size.height)
                pixels.at(x, y) = ink;
        }
    }
}

}  // namespace

core::Size digitsSize(std::string_view digits, int scale) {
    if (digits.empty()) return {0, kGlyphHeight * scale};
    return {(static_cast<int>(digits.size()) * kAdvance - 1) * scale, kGlyphHeight * scale};
}

void drawDigits(core::Pixels& pixels, core::Point at, std::string_view digits, int scale,
                core::Rgba8 ink) {
    for (const char digit : digits) {
        if (digit >= '0' && digit <= '9') {
            const auto& glyph = kGlyphs[static_cast<std::size_t>(digit - '0')];
            for (int y = 0; y < kGlyphHeight; ++y) {
                for (int x = 0; x < kGlyphWidth; ++x) {
                    if (glyph[static_cast<std::size_t>(y)][static_cast<std::size_t>(x)] == '#')
                        drawSquare(pixels, {at.x + x * scale, at.y + y * scale}, scale, ink);
                }
            }
        }
        at.x += kAdvance * scale;
    }
}

}  // namespace pantile::picture
