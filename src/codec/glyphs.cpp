#include "codec/glyphs.h"

#include <algorithm>
#include <array>

#include "codec/base58.h"
#include "codec/markup.h"
#include "core/text.h"

namespace pantile::codec {
namespace {

// For characters that need a closer look; no glyph.
constexpr Glyph kSpecial = 255;

constexpr std::array<Glyph, 128> makeAsciiGlyphs() {
    std::array<Glyph, 128> table{};
    table.fill(kGap);
    for (std::size_t i = 0; i < kBase58Digits.size(); ++i) {
        table[static_cast<unsigned char>(kBase58Digits[i])] = static_cast<Glyph>(i);
    }
    table['0'] = kZero;
    table['O'] = kZeroLike;
    table['I'] = kEye;
    table['l'] = kEyeLike;
    for (const char c : {'\n', '\r', '\v', '\f', '<', '&', '\\', '%'}) {
        table[static_cast<unsigned char>(c)] = kSpecial;
    }
    return table;
}

constexpr std::array<Glyph, 128> kAsciiGlyphs = makeAsciiGlyphs();

bool isLineBreak(char32_t c) {
    return (c >= '\n' && c <= '\r') || c == 0x85 || c == 0x2028 || c == 0x2029;
}

/// Characters that take no room: joiners, soft hyphens, direction marks, variation selectors.
bool isInvisible(char32_t c) {
    const auto within = [c](char32_t first, char32_t last) { return c >= first && c <= last; };
    return c == 0 || c == 0xAD || c == 0x34F || c == 0x61C || c == 0xFEFF ||
           within(0x180B, 0x180F) || within(0x200B, 0x200F) || within(0x202A, 0x202E) ||
           within(0x2060, 0x206F) || within(0xFE00, 0xFE0F) || within(0xE0000, 0xE0FFF);
}

/// Full-width forms as ASCII, and the multiplication sign that one markup makes of an x.
char32_t folded(char32_t c) {
    constexpr char32_t kFullWidthFirst = 0xFF01;
    constexpr char32_t kFullWidthLast = 0xFF5E;
    constexpr char32_t kMultiplicationSign = 0xD7;
    if (c >= kFullWidthFirst && c <= kFullWidthLast) return c - kFullWidthFirst + U'!';
    return c == kMultiplicationSign ? U'x' : c;
}

class GlyphReader {
public:
    explicit GlyphReader(std::string_view text) : m_text(text) {
        m_result.glyphs.reserve(text.size());
    }

    GlyphText read() && {
        while (m_at < m_text.size()) readOne();
        return std::move(m_result);
    }

    std::vector<std::size_t> offsetsOf(std::span<const std::size_t> glyphs) && {
        std::vector<std::size_t> offsets;
        offsets.reserve(glyphs.size());
        while (m_at < m_text.size() && offsets.size() < glyphs.size()) {
            const std::size_t begin = m_at;
            readOne();
            while (offsets.size() < glyphs.size() &&
                   glyphs[offsets.size()] < m_result.glyphs.size()) {
                offsets.push_back(begin);
            }
        }
        offsets.resize(glyphs.size(), m_text.size());
        return offsets;
    }

private:
    void readOne() {
        const auto byte = static_cast<unsigned char>(m_text[m_at]);
        const Glyph glyph = byte < kAsciiGlyphs.size() ? kAsciiGlyphs[byte] : kSpecial;
        if (glyph == kSpecial) return readSpecial(byte);
        if (byte != 0) put(glyph);
        ++m_at;
    }

    void readSpecial(unsigned char byte) {
        if (isLineBreak(byte)) return readLineBreak();
        if (const std::optional<Markup> markup = markupAt(m_text, m_at)) {
            const std::size_t end = m_at + markup->length;
            for (; m_at < end; ++m_at) {
                if (m_text[m_at] == '\n') startLine();
            }
            return putCharacter(markup->meaning);
        }
        const core::CodePoint character = core::codePointAt(m_text, m_at);
        m_at += character.length;
        putCharacter(character.valid ? character.value : U' ');
        if (character.length > 1 && isLineBreak(character.value)) startLine();
    }

    void readLineBreak() {
        const bool pair = m_text.substr(m_at, 2) == "\r\n";
        m_at += pair ? 2 : 1;
        put(kBreak);
        startLine();
    }

    void putCharacter(char32_t c) {
        if (isInvisible(c)) return;
        if (isLineBreak(c)) return put(kBreak);
        const char32_t plain = folded(c);
        const Glyph glyph = plain < kAsciiGlyphs.size() ? kAsciiGlyphs[plain] : kGap;
        put(glyph == kSpecial ? kGap : glyph);
    }

    void put(Glyph glyph) {
        const bool again =
            isGap(glyph) && !m_result.glyphs.empty() && isGap(m_result.glyphs.back());
        if (!again) {
            m_result.glyphs.push_back(glyph);
        } else if (glyph == kBreak) {
            m_result.glyphs.back() = kBreak;
        }
    }

    void startLine() { m_result.lineStarts.push_back(m_result.glyphs.size()); }

    std::string_view m_text;
    std::size_t m_at = 0;
    GlyphText m_result;
};

}  // namespace

std::size_t GlyphText::lineOf(std::size_t glyph) const {
    const auto behind = std::upper_bound(lineStarts.begin(), lineStarts.end(), glyph);
    return 1 + static_cast<std::size_t>(behind - lineStarts.begin());
}

GlyphText readGlyphs(std::string_view text) {
    return GlyphReader(text).read();
}

std::vector<std::size_t> byteOffsets(std::string_view text, std::span<const std::size_t> glyphs) {
    return GlyphReader(text).offsetsOf(glyphs);
}

}  // namespace pantile::codec
