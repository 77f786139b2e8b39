#include "codec/harvest.h"

#include <algorithm>
#include <cstdint>
#include <map>
#include <optional>
#include <utility>

#include "codec/armour.h"
#include "codec/assembly.h"
#include "codec/damage.h"
#include "codec/glyphs.h"
#include "codec/pieces.h"
#include "codec/starts.h"

namespace pantile::codec {
namespace {

// A text of a few bytes a code can ask for textures without end: 2^28 cells are four thousand of
// the largest ones.
constexpr std::size_t kMostCells = std::size_t{1} << 28U;

/// What stood in the armour, and where the last of its lines begins.
struct Opened {
    core::Result<std::vector<std::uint8_t>> bytes;
    std::size_t end = 0;
};

/// Opens an assembly; nothing if its check value says that it is not the code.
std::optional<Opened> opened(const std::optional<Assembly>& assembly) {
    if (!assembly) return std::nullopt;
    Opened result{openArmour(assembly->symbols), assembly->end};
    const bool refused =
        !result.bytes && result.bytes.error().kind == core::ErrorKind::ChecksumMismatch;
    return refused ? std::nullopt : std::optional(std::move(result));
}

/// Tries the ways of reading from timid to bold.
std::optional<Opened> readRegion(std::span<const Glyph> glyphs, Region region) {
    constexpr std::size_t kFewestGlyphs = 2 + kHeadSymbols + kCheckSymbols;
    if (region.end - region.begin < kFewestGlyphs) return std::nullopt;
    for (const Cut cut : {Cut::AtGaps, Cut::AtMarks, Cut::LastWords, Cut::LongestWords}) {
        const PieceList list = piecesOf(glyphs, region, cut);
        if (auto result = opened(assembleInOrder(list))) return result;
        if (auto result = opened(assembleByNumber(list))) return result;
    }
    return opened(assembleWithoutMarks(glyphs, region));
}

class Harvester {
public:
    Harvester(std::string_view text, const PaletteLookup& lookup)
        : m_text(readGlyphs(text)), m_lookup(lookup) {}

    Harvest run(const core::Progress& progress) && {
        const std::vector<Start> starts = findStarts(m_text.glyphs);
        const std::size_t end = m_text.glyphs.size();
        noteLinesWithoutStart({0, starts.empty() ? end : starts.front().glyph});
        for (std::size_t i = 0; i < starts.size() && !progress.stopRequested(); ++i) {
            const std::size_t next = i + 1 < starts.size() ? starts[i + 1].glyph : end;
            readStart(starts[i], {starts[i].glyph, next});
            progress.tell(static_cast<std::int64_t>(i + 1),
                          static_cast<std::int64_t>(starts.size()), "codes");
        }
        return std::move(m_harvest);
    }

private:
    void readStart(const Start& start, Region region) {
        if (start.kind == StartKind::Whole) {
            if (const std::optional<Opened> read = readRegion(m_text.glyphs, region)) {
                take(start, *read);
                noteLinesWithoutStart({read->end, region.end});
                return;
            }
        }
        if (auto damage = diagnose(m_text.glyphs, region, start)) note(std::move(*damage));
    }

    void take(const Start& start, const Opened& read) {
        core::Result<core::Texture> texture =
            read.bytes ? unpackTexture(*read.bytes, m_lookup) : read.bytes.error();
        if (!texture) {
            const core::Error& error = texture.error();
            note({start.glyph, 1, error.message + "; " + error.hint});
            return;
        }
        if (isKnown(*texture)) return;
        m_cells += texture->grid().cellCount();
        if (m_cells > kMostCells) {
            note({start.glyph, 1, "too many textures for one text; read the rest by itself"});
            return;
        }
        m_byContent.emplace(texture->contentFingerprint().value, m_harvest.found.size());
        m_harvest.found.push_back({std::move(*texture), m_text.lineOf(start.glyph)});
    }

    bool isKnown(const core::Texture& texture) const {
        const auto [first, last] = m_byContent.equal_range(texture.contentFingerprint().value);
        return std::any_of(first, last, [&](const auto& entry) {
            return m_harvest.found[entry.second].texture == texture;
        });
    }

    void noteLinesWithoutStart(Region region) {
        if (auto damage = findLinesWithoutStart(m_text.glyphs, region)) note(std::move(*damage));
    }

    void note(Damage damage) {
        m_harvest.damaged.push_back({"line " + std::to_string(m_text.lineOf(damage.glyph)) +
                                         " of the text, line " + std::to_string(damage.codeLine) +
                                         " of the code",
                                     std::move(damage.reason)});
    }

    GlyphText m_text;
    const PaletteLookup& m_lookup;
    Harvest m_harvest;
    std::multimap<std::uint64_t, std::size_t> m_byContent;
    std::size_t m_cells = 0;
};

}  // namespace

Harvest harvestCodes(std::string_view text, const PaletteLookup& lookup,
                     const core::Progress& progress) {
    return Harvester(text, lookup).run(progress);
}

}  // namespace pantile::codec
