#include "codec/harvest.h"

#include <algorithm>
#include <cstdint>
#include <optional>
#include <span>
#include <unordered_map>
#include <unordered_set>
#include <utility>

#include "codec/armour.h"
#include "codec/damage.h"
#include "codec/glyphs.h"
#include "codec/kept_text.h"
#include "codec/letters.h"
#include "codec/line_places.h"
#include "codec/part_pool.h"
#include "codec/reading.h"
#include "codec/repair.h"
#include "codec/starts.h"

namespace pantile::codec {
namespace {

using Bytes = std::vector<std::uint8_t>;
using core::ErrorKind;

constexpr std::size_t kCellsOfAFailure = std::size_t{1} << 16U;  // As many as one texture may have.

constexpr std::size_t kMostTold = 10000;  // Damaged codes; nobody reads more.
constexpr std::string_view kTooMuch =
    "; and too much is damaged in this text to put all of it right: read this code by itself";

/// A code that was read, in one piece or put together from parts.
struct Taken {
    std::size_t glyph = 0;  ///< Where it begins.
    std::vector<std::string> repairs;
};

/// Where the glyphs from which a code is read stand in the text.
struct Place {
    std::size_t begin = 0;
    std::ptrdiff_t shift = 0;  ///< From a glyph read, but for the first ones, to that of the text.
};

/// The bytes of a text at which some of its glyphs begin.
class GlyphBytes {
public:
    GlyphBytes(std::string_view text, std::vector<std::size_t> glyphs)
        : m_glyphs(std::move(glyphs)) {
        std::sort(m_glyphs.begin(), m_glyphs.end());
        m_bytes = byteOffsets(text, m_glyphs);
    }

    /// `glyph` is one of those.
    std::size_t of(std::size_t glyph) const {
        const auto at = std::lower_bound(m_glyphs.begin(), m_glyphs.end(), glyph);
        return m_bytes[static_cast<std::size_t>(at - m_glyphs.begin())];
    }

private:
    std::vector<std::size_t> m_glyphs;
    std::vector<std::size_t> m_bytes;
};

class Harvester {
public:
    Harvester(std::string_view text, const PaletteLookup& lookup, const HarvestLimits& limits)
        : m_source(text), m_text(readGlyphs(text)), m_lookup(lookup), m_limits(limits) {}

    Harvest run(const core::Progress& progress) && {
        m_starts = findStarts(m_text.glyphs);
        std::size_t read = 0;  // All before it is dealt with.
        for (std::size_t i = 0; i < m_starts.size() && !progress.stopRequested(); ++i) {
            const std::size_t begin = m_starts[i].glyph;
            if (begin >= read) {
                Region above = readNearStarts({read, begin});
                read = readStart(i, above);
                tellLinesWithoutStart(above);
            }
            progress.tell(static_cast<std::int64_t>(i + 1),
                          static_cast<std::int64_t>(m_starts.size()), "codes");
        }
        if (!progress.stopRequested())
            tellLinesWithoutStart(readNearStarts({read, m_text.glyphs.size()}));
        takeJoined();
        return inOrder();
    }

private:
    /// Where the region of a start ends, or that of the start with that number.
    std::size_t endBefore(std::size_t start) const {
        return start < m_starts.size() ? m_starts[start].glyph : m_text.glyphs.size();
    }

    /// Reads the code at a start, and what else may stand in front of the next one. Gives the glyph
    /// up to which all is dealt with. `above` is what stands in front of the start and is in no
    /// code; nothing of it is left if lines of this one are there.
    std::size_t readStart(std::size_t index, Region& above) {
        const Start& start = m_starts[index];
        const Region region{start.glyph, endBefore(index + 1)};
        if (region.end - region.begin < kFewestLetters) return region.end;
        if (start.kind == StartKind::Known || start.kind == StartKind::Doubtful) {
            const Place place{start.glyph, 0};
            if (const auto end = readRegion(m_text.glyphs, region, place)) return *end;
            // A slip or a quotation may have put a second start mark into the code.
            const Region longer{region.begin, endBefore(index + 2)};
            if (isCutByAFalseStart(region, index + 1)) {
                if (const auto end = readRegion(m_text.glyphs, longer, place)) return *end;
            }
            if (readWithLinesAbove(region, above)) {
                above.begin = above.end;
                return region.end;
            }
        }
        if (standsAgainBehind(region, index + 1)) return region.end;
        auto damage = mayTellMore() ? diagnose(m_text.glyphs, region, start) : std::nullopt;
        if (damage) {
            if (damage->part) m_parts.addDamaged(*damage->part, start.glyph);
            const bool newer = start.kind == StartKind::Newer;
            if (!newer && m_budget.isSpent()) damage->reason += kTooMuch;
            note(std::move(*damage), newer ? keptText(m_text.glyphs, region) : std::string());
        }
        readNearStarts({std::min(region.begin + kStartMarks, region.end), region.end});
        return region.end;
    }

    /// Whether a code promises more than its region holds, and what ends the region is no code's
    /// first line.
    bool isCutByAFalseStart(Region region, std::size_t next) const {
        if (next >= m_starts.size()) return false;
        const std::optional<CodeShape> shape = promisedShape(m_text.glyphs, region);
        if (!shape || region.end - region.begin >= shape->symbols + 2 * shape->lines) return false;
        constexpr std::size_t kFirstLine = 80;  // With gaps in it.
        const std::size_t end = std::min(endBefore(next + 1), region.end + kFirstLine);
        return !shapeFromFirstLine(lettersOf(m_text.glyphs, {region.end, end}));
    }

    /// Whether the letters of a region are the first ones of the next: pasted twice, it says the
    /// same.
    bool standsAgainBehind(Region region, std::size_t next) const {
        if (next >= m_starts.size()) return false;
        const Letters here = lettersOf(m_text.glyphs, region);
        const Letters behind = lettersOf(m_text.glyphs, {region.end, endBefore(next + 1)});
        return here.size() <= behind.size() &&
               std::equal(here.glyphs.begin(), here.glyphs.end(), behind.glyphs.begin());
    }

    /// Reads the code with which `region` begins, or puts it right and reads it. Gives the glyph
    /// behind it; nothing if it cannot be read.
    std::optional<std::size_t> readRegion(std::span<const Glyph> glyphs, Region region, Place place,
                                          std::vector<std::string> repairs = {}) {
        if (const std::optional<ReadCode> code = readCode(glyphs, region)) {
            markRead(place, code->end, repairs.empty() ? CodeMark::Read : CodeMark::Repaired);
            take(code->opened, code->symbols, {place.begin, std::move(repairs)});
            return code->end;
        }
        const Confirmation confirm = [&](SymbolSpan symbols) { return holdsSomething(symbols); };
        if (const auto code = repairCode(glyphs, region, confirm, m_budget)) {
            for (const Slip& slip : code->slips) repairs.push_back(slip.told());
            markRead(place, code->end, CodeMark::Repaired);
            take(openArmour(code->symbols), code->symbols, {place.begin, std::move(repairs)});
            return code->end;
        }
        return std::nullopt;
    }

    /// Reads the code with which `region` begins, where some of its lines were put above the first.
    bool readWithLinesAbove(Region region, Region above) {
        const std::optional<CodeShape> shape = promisedShape(m_text.glyphs, region);
        if (!shape) return false;
        const std::size_t room = roomFor(*shape);
        if (above.end - above.begin > room) above.begin = above.end - room;
        if (above.end - above.begin < kFewestLetters) return false;
        std::vector<Glyph> glyphs;
        append(glyphs, region);
        glyphs.push_back(kGap);
        append(glyphs, above);
        const std::optional<ReadCode> code = readCode(glyphs, {0, glyphs.size()});
        if (!code) return false;
        // Where the last of its lines stands above, only the first one is known to be here.
        const std::size_t last = region.begin + code->end;
        markRead({region.begin, 0}, last < region.end ? last : region.begin, CodeMark::Read);
        take(code->opened, code->symbols, {region.begin, {}});
        return true;
    }

    /// Puts the text's glyphs of `region` behind others.
    void append(std::vector<Glyph>& glyphs, Region region) const {
        const auto some = std::span(m_text.glyphs).subspan(region.begin, region.end - region.begin);
        glyphs.insert(glyphs.end(), some.begin(), some.end());
    }

    /// Reads codes whose start mark is damaged; gives what stands behind the last of them.
    Region readNearStarts(Region region) {
        for (const NearStart& start : findNearStarts(m_text.glyphs, region)) {
            if (start.glyph < region.begin) continue;
            const auto end = readNearStart(start, region.end);
            if (end) region.begin = *end;
        }
        return region;
    }

    void tellLinesWithoutStart(Region region) {
        if (!mayTellMore()) return;
        if (auto damage = findLinesWithoutStart(m_text.glyphs, region)) note(std::move(*damage));
    }

    std::optional<std::size_t> readNearStart(const NearStart& start, std::size_t end) {
        const std::size_t length = std::min(end - start.resume, lengthOfNear(start));
        if (!m_budget.spend(length)) return std::nullopt;
        std::vector<Glyph> glyphs = {kZero, kEye};
        glyphs.insert(glyphs.end(), start.front.begin(), start.front.end());
        const std::size_t front = glyphs.size();
        append(glyphs, {start.resume, start.resume + length});
        const auto shift =
            static_cast<std::ptrdiff_t>(start.resume) - static_cast<std::ptrdiff_t>(front);
        const auto read = readRegion(glyphs, {0, glyphs.size()}, {start.glyph, shift},
                                     {"line 1: start mark put right"});
        if (!read) return std::nullopt;
        return start.resume + std::max(*read, front) - front;
    }

    /// Glyphs in which a code should lie, with quote marks and such between.
    static std::size_t roomFor(const CodeShape& shape) {
        constexpr std::size_t kRoom = 200;
        constexpr std::size_t kMostForOne = 4;  // Glyphs that the text has for one of the code.
        return kMostForOne * shape.characters() + kRoom;
    }

    std::size_t lengthOfNear(const NearStart& start) const {
        Symbols head = start.front;
        for (std::size_t at = start.resume; head.size() < kHeadSymbols; ++at) {
            if (isSymbol(m_text.glyphs[at])) head.push_back(m_text.glyphs[at]);
        }
        return roomFor(CodeShape::of(toldBytes(head)));
    }

    bool holdsSomething(SymbolSpan symbols) {
        const auto opened = openArmour(symbols);
        if (!opened) return opened.error().kind == ErrorKind::Unsupported;
        if (opened->form == ArmourForm::Part) return readPart(opened->bytes).has_value();
        if (m_seen.contains(asKey(opened->bytes))) return true;
        auto textures = unpack(opened->bytes);
        if (textures) {
            m_confirmed = Confirmed{opened->bytes, std::move(*textures)};
            return true;
        }
        const ErrorKind kind = textures.error().kind;
        return kind == ErrorKind::NotFound || kind == ErrorKind::Unsupported;
    }

    void take(const core::Result<OpenedArmour>& opened, const Symbols& symbols, Taken taken) {
        if (!opened) return noteError(taken.glyph, opened.error(), writtenLines(symbols));
        if (opened->form == ArmourForm::Whole) {
            return takeContainer(opened->bytes, std::move(taken));
        }
        auto part = readPart(opened->bytes);
        if (!part) return noteError(taken.glyph, part.error(), {});
        if (m_parts.add(std::move(*part), taken.glyph, std::move(taken.repairs))) return;
        noteIn(taken.glyph, "", "too many codes in parts for one text; read the rest by itself");
    }

    void takeJoined() {
        for (GatheredParts& code : std::move(m_parts).take()) {
            if (!code.isWhole()) {
                if (!mayTellMore()) continue;
                const std::string missing = code.missing();
                if (!missing.empty()) noteIn(code.glyph, ", " + code.head.name(), missing);
                continue;
            }
            const auto container = joinParts(code.head, code.slices);
            if (!container) {
                noteError(code.glyph, container.error(), {});
                continue;
            }
            takeContainer(*container, {code.glyph, std::move(code.repairs)});
        }
    }

    bool mayUnpack() const {
        return m_cells <= m_limits.cells && m_decisions <= m_limits.decisions;
    }

    core::Result<std::vector<core::Texture>> unpack(const Bytes& container) {
        if (m_confirmed && m_confirmed->container == container) {
            return std::move(std::exchange(m_confirmed, std::nullopt)->textures);
        }
        if (!mayUnpack()) {
            return core::Error{ErrorKind::TooLarge, "too many textures for one text",
                               "read the rest by itself"};
        }
        auto textures = unpackTextures(container, m_lookup, &m_decisions);
        if (!textures) m_cells += kCellsOfAFailure;
        return textures;
    }

    void takeContainer(const Bytes& container, Taken taken) {
        if (mayUnpack() && !m_seen.insert(asKey(container)).second) return;
        auto textures = unpack(container);
        if (!textures) {
            // A container has one code, so this is the text itself; or for parts one that can be
            // kept in their place.
            return noteError(taken.glyph, textures.error(), *armoured(container));
        }
        for (core::Texture& texture : *textures) {
            if (isKnown(texture)) continue;
            m_cells += texture.grid().cellCount();
            m_byContent.emplace(texture.contentFingerprint().value, m_found.size());
            m_found.push_back({taken.glyph,
                               {std::move(texture), m_text.lineOf(taken.glyph), 0,
                                static_cast<int>(taken.repairs.size()), taken.repairs}});
        }
    }

    static std::string asKey(const Bytes& bytes) { return {bytes.begin(), bytes.end()}; }

    bool isKnown(const core::Texture& texture) const {
        const auto [first, last] = m_byContent.equal_range(texture.contentFingerprint().value);
        return std::any_of(first, last, [&](const auto& entry) {
            return m_found[entry.second].code.texture == texture;
        });
    }

    /// `nearEnd` is a glyph of the place's that stands near the end of the code.
    void markRead(Place place, std::size_t nearEnd, CodeMark mark) {
        const std::ptrdiff_t end = static_cast<std::ptrdiff_t>(nearEnd) + place.shift;
        const auto least = static_cast<std::ptrdiff_t>(place.begin + 1);
        m_marks.push_back(
            {place.begin, wordEnd(static_cast<std::size_t>(std::max(end, least))), mark});
    }

    /// Where the word ends in which a glyph stands.
    std::size_t wordEnd(std::size_t glyph) const {
        while (glyph < m_text.glyphs.size() && !isGap(m_text.glyphs[glyph])) ++glyph;
        return std::min(glyph, m_text.glyphs.size());
    }

    bool mayTellMore() const { return m_damaged.size() < kMostTold; }

    void note(Damage damage, std::string text = {}) {
        std::string where = ", line " + std::to_string(damage.codeLine) + " of ";
        where += damage.part ? damage.part->name() : std::string("the code");
        noteIn(damage.glyph, where, std::move(damage.reason), std::move(text));
    }

    void noteError(std::size_t glyph, const core::Error& error, std::string text) {
        const bool newer = error.kind == ErrorKind::Unsupported;
        note({glyph, 1, error.message + "; " + error.hint, std::nullopt},
             newer ? std::move(text) : std::string());
    }

    void noteIn(std::size_t glyph, const std::string& place, std::string reason,
                std::string text = {}) {
        if (!mayTellMore()) return;
        if (m_damaged.size() + 1 == kMostTold) {
            reason = "more of this text is damaged than can be told; read the rest by itself";
            text.clear();
        }
        m_marks.push_back({glyph, wordEnd(glyph), CodeMark::Damaged});
        m_damaged.push_back(
            {glyph,
             {"line " + std::to_string(m_text.lineOf(glyph)) + " of the text" + place,
              std::move(reason), std::move(text), 0}});
    }

    /// Parts are joined behind all other codes, and belong where the first of them stands.
    Harvest inOrder() {
        const auto byGlyph = [](const auto& a, const auto& b) { return a.glyph < b.glyph; };
        const auto sort = [&](auto& list) {
            if (std::is_sorted(list.begin(), list.end(), byGlyph)) return;
            std::stable_sort(list.begin(), list.end(), byGlyph);
        };
        sort(m_found);
        sort(m_damaged);
        Harvest harvest;
        harvest.found.reserve(m_found.size());
        harvest.damaged.reserve(m_damaged.size());
        const std::vector<MarkedText> marks = marksApart();
        std::vector<std::size_t> glyphs;
        for (const Found& found : m_found) glyphs.push_back(found.glyph);
        for (const Damaged& damaged : m_damaged) glyphs.push_back(damaged.glyph);
        for (const MarkedText& mark : marks) glyphs.insert(glyphs.end(), {mark.begin, mark.end});
        const GlyphBytes bytes(m_source, std::move(glyphs));
        for (Found& found : m_found) {
            found.code.textByte = bytes.of(found.glyph);
            harvest.found.push_back(std::move(found.code));
        }
        for (Damaged& damaged : m_damaged) {
            damaged.code.textByte = bytes.of(damaged.glyph);
            harvest.damaged.push_back(std::move(damaged.code));
        }
        for (const MarkedText& mark : marks)
            harvest.marks.push_back({bytes.of(mark.begin), bytes.of(mark.end), mark.mark});
        return harvest;
    }

    /// In glyphs. What is told of a code that was read well, as that its palette is unknown, marks
    /// all of it.
    std::vector<MarkedText> marksApart() {
        std::stable_sort(m_marks.begin(), m_marks.end(),
                         [](const auto& a, const auto& b) { return a.begin < b.begin; });
        std::vector<MarkedText> apart;
        for (const MarkedText& mark : m_marks) {
            if (apart.empty() || mark.begin >= apart.back().end) {
                apart.push_back(mark);
                continue;
            }
            apart.back().end = std::max(apart.back().end, mark.end);
            apart.back().mark = std::max(apart.back().mark, mark.mark);
        }
        return apart;
    }

    /// What a repair was confirmed by, so that it need not be read again.
    struct Confirmed {
        Bytes container;
        std::vector<core::Texture> textures;
    };

    struct Found {
        std::size_t glyph;
        FoundCode code;
    };

    struct Damaged {
        std::size_t glyph;
        DamagedCode code;
    };

    std::string_view m_source;
    GlyphText m_text;
    const PaletteLookup& m_lookup;
    HarvestLimits m_limits;
    std::vector<Start> m_starts;
    RepairBudget m_budget;
    PartPool m_parts;
    std::unordered_set<std::string> m_seen;  ///< Containers.
    std::optional<Confirmed> m_confirmed;
    std::vector<Found> m_found;
    std::vector<Damaged> m_damaged;
    std::vector<MarkedText> m_marks;  ///< In glyphs.
    std::unordered_multimap<std::uint64_t, std::size_t> m_byContent;
    std::size_t m_cells = 0;
    std::size_t m_decisions = 0;
};

}  // namespace

Harvest harvestCodes(std::string_view text, const PaletteLookup& lookup,
                     const core::Progress& progress, const HarvestLimits& limits) {
    return Harvester(text, lookup, limits).run(progress);
}

}  // namespace pantile::codec
