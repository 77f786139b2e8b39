#pragma once

// Finds every code in a text, whatever stands around and inside it: mail, pages saved from a
// browser, chat exports, quoted replies. Authority: docs/code-format.md.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "codec/contents.h"
#include "core/progress.h"
#include "core/texture.h"

namespace pantile::codec {

struct FoundCode {
    core::Texture texture;
    std::size_t textLine = 1;          ///< Where it begins in the text; counted from 1.
    std::size_t textByte = 0;          ///< The same in bytes, counted from 0.
    int repaired = 0;                  ///< Slips put right in its code.
    std::vector<std::string> repairs;  ///< Each in words: "line 3, letter 12: q read as g".
};

struct DamagedCode {
    std::string where;         ///< "line 14 of the text, line 3 of the code"
    std::string reason;        ///< What is wrong with it, and what to do where there is something.
    std::string text;          ///< If a newer version made it: the code itself, to be kept.
    std::size_t textByte = 0;  ///< Where to look in the text, in bytes counted from 0.
};

enum class CodeMark { Read, Repaired, Damaged };

/// Bytes begin..end-1 of the text: a code, a part of one, or for a damaged one at least the word at
/// which to look.
struct MarkedText {
    std::size_t begin = 0;
    std::size_t end = 0;
    CodeMark mark = CodeMark::Read;

    bool operator==(const MarkedText&) const = default;
};

struct Harvest {
    std::vector<FoundCode> found;      ///< In the order of the text, each texture once.
    std::vector<DamagedCode> damaged;  ///< In the order of the text; the first ten thousand.
    std::vector<MarkedText> marks;     ///< In the order of the text, none over another.
};

/// What one text may ask for at most; else a text of a few bytes a code could take memory and time
/// without end. The last code may go beyond.
struct HarvestLimits {
    std::size_t cells = std::size_t{1} << 28U;      ///< Four thousand of the largest textures.
    std::size_t decisions = std::size_t{1} << 26U;  ///< Of models: half a minute, 6000 of 64x64.
};

/// Never gives a texture whose check values do not all fit; damaged codes are put right where that
/// can be done in one way alone, and parts are joined, in whatever order they stand. Stops early,
/// with what it has, if `progress` asks for it; codes beyond `limits` are told as damaged. Cost:
/// linear in the length of `text` and in the cells of its textures.
Harvest harvestCodes(std::string_view text, const PaletteLookup& lookup = {},
                     const core::Progress& progress = {}, const HarvestLimits& limits = {});

}  // namespace pantile::codec
