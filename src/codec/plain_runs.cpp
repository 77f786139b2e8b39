#include "codec/plain_runs.h"

#include <cassert>
#include <optional>
#include <string>

#include "codec/varint.h"
#include "core/palette.h"
#include "core/range_check.h"
#include "core/runs.h"

namespace pantile::codec {
namespace {

// Stored in libraries and codes: never change these.
constexpr int kMaxNibbleColours = 16;
constexpr std::uint32_t kMaxNibbleLength = 15;

bool fitsNibbles(int paletteSize) {
    return paletteSize <= kMaxNibbleColours;
}

void appendRun(std::vector<std::uint8_t>& bytes, const core::Run& run, int paletteSize) {
    if (!fitsNibbles(paletteSize)) {
        bytes.push_back(run.colour);
        appendVarint(bytes, run.length - 1);
        return;
    }
    const auto colourBits = static_cast<unsigned>(run.colour) << 4U;
    if (run.length <= kMaxNibbleLength) {
        bytes.push_back(static_cast<std::uint8_t>(colourBits | run.length));
        return;
    }
    bytes.push_back(static_cast<std::uint8_t>(colourBits));
    appendVarint(bytes, run.length - kMaxNibbleLength - 1);
}

/// Takes a run off the front; nothing if it is cut short or its number is not in the one form.
std::optional<core::Run> takeRun(std::span<const std::uint8_t>& bytes, int paletteSize) {
    if (bytes.empty()) return std::nullopt;
    const std::uint8_t lead = bytes.front();
    bytes = bytes.subspan(1);
    const bool nibbles = fitsNibbles(paletteSize);
    const std::uint32_t shortLength = lead & 15U;
    const auto colour = static_cast<core::PaletteIndex>(nibbles ? lead >> 4U : lead);
    if (nibbles && shortLength != 0) return core::Run{colour, shortLength};
    const std::optional<std::uint32_t> more = takeVarint(bytes);
    if (!more) return std::nullopt;
    return core::Run{colour, *more + (nibbles ? kMaxNibbleLength + 1 : 1)};
}

core::Error corruptRuns(std::string message) {
    return {core::ErrorKind::Corrupt, std::move(message), "ask for the texture again"};
}

}  // namespace

std::vector<std::uint8_t> packPlainRuns(const core::Grid& grid, int paletteSize) {
    assert(grid.largestIndex() < paletteSize);
    std::vector<std::uint8_t> bytes;
    for (const core::Run& run : core::runsOf(grid.cells())) appendRun(bytes, run, paletteSize);
    return bytes;
}

std::size_t mostPlainRunsBytes(std::size_t cells, int paletteSize) {
    return fitsNibbles(paletteSize) ? cells : 2 * cells;
}

core::Result<core::Grid> unpackPlainRuns(std::span<const std::uint8_t> bytes, core::Size size,
                                         int paletteSize) {
    PANTILE_RETURN_IF_ERROR(core::checkGridSize(size.width, size.height));
    PANTILE_RETURN_IF_ERROR(core::checkRange("the number of colours", paletteSize,
                                             core::kMinPaletteColours, core::kMaxPaletteColours));
    const auto wanted =
        static_cast<std::size_t>(size.width) * static_cast<std::size_t>(size.height);
    std::vector<core::PaletteIndex> cells;
    cells.reserve(wanted);
    std::optional<core::PaletteIndex> previous;
    std::span<const std::uint8_t> rest = bytes;
    while (cells.size() < wanted) {
        const std::string place = " at byte " + std::to_string(bytes.size() - rest.size() + 1);
        const std::optional<core::Run> run = takeRun(rest, paletteSize);
        if (!run) return corruptRuns("a run is cut short or malformed" + place);
        if (run->colour >= paletteSize) {
            return corruptRuns("a run has colour " + std::to_string(run->colour) + " of only " +
                               std::to_string(paletteSize) + place);
        }
        if (run->colour == previous)
            return corruptRuns("a run repeats the colour before it" + place);
        if (run->length > wanted - cells.size()) {
            return corruptRuns("a run goes beyond the last of " + std::to_string(wanted) +
                               " cells" + place);
        }
        cells.insert(cells.end(), run->length, run->colour);
        previous = run->colour;
    }
    if (!rest.empty()) {
        return corruptRuns("there are " + std::to_string(rest.size()) +
                           " bytes too many behind the last run");
    }
    return core::Grid::create(size.width, size.height, std::move(cells));
}

}  // namespace pantile::codec
