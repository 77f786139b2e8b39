#include "picture/cell_lines.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstddef>
#include <cstdlib>
#include <limits>
#include <numeric>
#include <vector>

#include "core/grid.h"

namespace pantile::picture {
namespace {

// Art of fewer cells a side is believed only if it uses half of its lines: art of twice as many
// cells could happen to look so.
constexpr int kUsualLeastSide = 16;
constexpr int kLeastCells = 4;
constexpr int kLeastPitch = 2;
// Any one or two edges lie on multiples of something.
constexpr int kLeastLines = 4;
// Levels of 0..255; pictures without any such step are gradients.
constexpr int kLeastStep = 8;
// So unlikely must it be, as a power of two, that lines fall into place by chance.
constexpr double kLeastEvidence = 16;
// How weak steps inside cells must be next to those between them, as a ratio of mean squares. Art
// saved as JPEG at quality 85 stays below 0.4, photographs lie near 1.
constexpr double kMostInside = 0.4;
constexpr double kMostInsideOffGrid = 0.2;

// The steps across each line between two pixels; line x lies before pixel x, and line 0 is none.
struct Steps {
    std::vector<std::int64_t> differing;  // how many pixel pairs differ in anything visible
    std::vector<double> energy;           // squared differences of luma and alpha, in levels
    int largest = 0;                      // in any channel
};

bool looksAlike(const core::Rgba8& p, const core::Rgba8& q) {
    return p == q || (p.a == 0 && q.a == 0);
}

int largestStep(const core::Rgba8& p, const core::Rgba8& q) {
    return std::max(
        {std::abs(p.r - q.r), std::abs(p.g - q.g), std::abs(p.b - q.b), std::abs(p.a - q.a)});
}

// Rec. ITU-R BT.601 luma in 1/256 levels.
int lumaOf(const core::Rgba8& p) {
    return 77 * p.r + 150 * p.g + 29 * p.b;
}

void addStep(Steps& steps, std::size_t line, const core::Rgba8& p, const core::Rgba8& q) {
    if (looksAlike(p, q)) return;
    ++steps.differing[line];
    steps.largest = std::max(steps.largest, largestStep(p, q));
    const double luma = (lumaOf(p) - lumaOf(q)) / 256.0;
    const double alpha = p.a - q.a;
    steps.energy[line] += luma * luma + alpha * alpha;
}

Steps emptySteps(int pixels) {
    const auto count = static_cast<std::size_t>(pixels);
    return {std::vector<std::int64_t>(count), std::vector<double>(count), 0};
}

struct BothSteps {
    Steps columns;
    Steps rows;
};

BothSteps stepsOf(const core::Pixels& pixels) {
    BothSteps both{emptySteps(pixels.size.width), emptySteps(pixels.size.height)};
    for (int y = 0; y < pixels.size.height; ++y) {
        for (int x = 0; x < pixels.size.width; ++x) {
            const core::Rgba8& pixel = pixels.at(x, y);
            if (x > 0)
                addStep(both.columns, static_cast<std::size_t>(x), pixels.at(x - 1, y), pixel);
            if (y > 0) addStep(both.rows, static_cast<std::size_t>(y), pixels.at(x, y - 1), pixel);
        }
    }
    return both;
}

std::vector<int> usedLines(const Steps& steps) {
    std::vector<int> lines;
    for (std::size_t line = 1; line < steps.differing.size(); ++line) {
        if (steps.differing[line] > 0) lines.push_back(static_cast<int>(line));
    }
    return lines;
}

// Cells of `pitch` whole pixels, one of whose lines is `offset`, 0 to pitch - 1.
CellSide wholeSide(int pixels, int pitch, int offset) {
    const bool firstIsCut = offset > 0 && 2 * offset >= pitch;
    const int start = firstIsCut ? offset - pitch : offset;
    const int rest = (pixels - offset) % pitch;
    const int end = 2 * rest >= pitch ? pixels - rest + pitch : pixels - rest;
    return {{start, pitch, 1}, (end - start) / pitch};
}

CellSide dividedSide(int pixels, int cells) {
    return {{0, pixels, cells}, cells};
}

bool hasFittingSize(const CellLines& lines) {
    const auto fits = [](int cells) { return cells >= kLeastCells && cells <= core::kMaxGridSide; };
    return fits(lines.columns.cells) && fits(lines.rows.cells);
}

// Whether so many lines in use tell this size from one of more cells.
bool isBelievable(const CellLines& lines, double used) {
    if (!hasFittingSize(lines)) return false;
    const int all = lines.columns.cells + lines.rows.cells - 2;
    return std::min(lines.columns.cells, lines.rows.cells) >= kUsualLeastSide || 2 * used >= all;
}

CellLines wholeLines(core::Size size, int pitch, core::Point offset = {}) {
    return {wholeSide(size.width, pitch, offset.x), wholeSide(size.height, pitch, offset.y), true};
}

// The coarsest believable cells of which `pitch` is a multiple, the lines staying where they are.
std::optional<CellLines> believablePart(core::Size size, int pitch, core::Point offset,
                                        double used) {
    for (int part = pitch; part >= kLeastPitch; --part) {
        if (pitch % part != 0) continue;
        CellLines lines = wholeLines(size, part, {offset.x % part, offset.y % part});
        if (isBelievable(lines, used)) return lines;
    }
    return std::nullopt;
}

// 0 for numbers below 1.
int log2Floor(int value) {
    if (value < 1) return 0;
    return static_cast<int>(std::bit_width(static_cast<unsigned>(value))) - 1;
}

// All lines in use are multiples of one number, and so are the sides.
std::optional<CellLines> exactWhole(core::Size size, const std::vector<int>& columns,
                                    const std::vector<int>& rows) {
    int pitch = std::gcd(size.width, size.height);
    for (const int line : columns) pitch = std::gcd(pitch, line);
    for (const int line : rows) pitch = std::gcd(pitch, line);
    const auto used = static_cast<double>(columns.size() + rows.size());
    if (used < kLeastLines) return std::nullopt;
    return believablePart(size, pitch, {}, used);
}

// The same, but the picture begins or ends inside a cell.
std::optional<CellLines> exactCut(core::Size size, const std::vector<int>& columns,
                                  const std::vector<int>& rows) {
    if (columns.empty() || rows.empty()) return std::nullopt;
    int pitch = 0;
    for (const int line : columns) pitch = std::gcd(pitch, line - columns.front());
    for (const int line : rows) pitch = std::gcd(pitch, line - rows.front());
    if (pitch < kLeastPitch) return std::nullopt;
    const auto used = static_cast<double>(columns.size() + rows.size());
    if ((used - 2) * log2Floor(pitch) < kLeastEvidence) return std::nullopt;
    return believablePart(size, pitch, {columns.front() % pitch, rows.front() % pitch}, used);
}

// Calls `use` with the numbers of rows of cells whose pitch is nearest to that of the columns.
template <typename Use>
void forEachRowCount(core::Size size, int columns, Use use) {
    const int rows = static_cast<int>(std::int64_t{size.height} * columns / size.width);
    for (const int count : {rows, rows + 1}) {
        if (count >= kLeastCells && count <= std::min(core::kMaxGridSide, size.height / 2))
            use(count);
    }
}

bool liesOn(const CellSide& side, int pixels, const std::vector<int>& used) {
    std::size_t found = 0;
    for (int cell = 0; cell <= side.cells && found < used.size(); ++cell) {
        if (side.firstPixel(cell, pixels) == used[found]) ++found;
    }
    return found == used.size();
}

// The same, give or take what is left of a pixel: programs round edges in their own ways.
bool liesNear(const CellSide& side, int /*pixels*/, const std::vector<int>& used) {
    return std::all_of(used.begin(), used.end(), [&side](int line) {
        const std::int64_t at = line * side.span.denominator - side.span.start;
        const std::int64_t past = at % side.span.step;
        return std::min(past, side.span.step - past) < side.span.denominator;
    });
}

// Cells of a pitch that is no whole number and that divide the whole picture. Of `pitch` places for
// a line, `lies` accepts as many as `places`.
template <typename Lies>
std::optional<CellLines> exactDivided(core::Size size, const std::vector<int>& columns,
                                      const std::vector<int>& rows, int places, Lies lies) {
    const auto used = static_cast<double>(columns.size() + rows.size());
    std::optional<CellLines> found;
    const int most = std::min(core::kMaxGridSide, size.width / 2);
    for (int count = kLeastCells; count <= most && !found; ++count) {
        const CellSide side = dividedSide(size.width, count);
        if (used * log2Floor(size.width / count / places) < kLeastEvidence) continue;
        if (!lies(side, size.width, columns)) continue;
        forEachRowCount(size, count, [&](int rowCount) {
            const CellLines lines{side, dividedSide(size.height, rowCount), true};
            if (!found && isBelievable(lines, used) && lies(lines.rows, size.height, rows))
                found = lines;
        });
    }
    return found;
}

// How the energy of steps divides between lines and what lies inside cells.
struct Balance {
    double onLines = 0;
    double inside = 0;
    double lines = 0;
    double others = 0;
    double rootsOnLines = 0;

    void add(const Balance& more) {
        onLines += more.onLines;
        inside += more.inside;
        lines += more.lines;
        others += more.others;
        rootsOnLines += more.rootsOnLines;
    }

    // Mean energy inside over mean energy on lines; `floor` is what any picture has inside.
    double ratio(double floor) const {
        if (!(onLines > 0) || !(others > 0)) return std::numeric_limits<double>::infinity();
        return (inside / others + floor) / (onLines / lines);
    }

    // How many lines carry the steps: the square of their sum over the sum of their squares.
    double used() const { return rootsOnLines * rootsOnLines / onLines; }
};

Balance balanceOf(const Steps& steps, const CellSide& side) {
    const int pixels = static_cast<int>(steps.energy.size());
    Balance balance;
    int line = 1;
    for (int cell = 0; cell <= side.cells; ++cell) {
        const int next = side.firstPixel(cell, pixels);
        for (; line < std::min(next, pixels); ++line) {
            balance.inside += steps.energy[static_cast<std::size_t>(line)];
            ++balance.others;
        }
        if (next < 1 || next >= pixels || line != next) continue;
        const double energy = steps.energy[static_cast<std::size_t>(line)];
        balance.onLines += energy;
        balance.rootsOnLines += std::sqrt(energy);
        ++balance.lines;
        ++line;
    }
    return balance;
}

struct Candidate {
    CellLines lines;
    Balance balance;
    double ratio = std::numeric_limits<double>::infinity();
};

class Search {
public:
    Search(core::Size size, const BothSteps& steps) : m_size(size), m_steps(steps) {
        constexpr double kRounding = 0.25;  // squared levels that rounding alone leaves in a pixel
        m_floor = kRounding * (size.width + size.height) / 2;
    }

    // Whole pitches that divide both sides; then those with a cut cell; then others.
    std::optional<CellLines> run() const {
        Candidate best;
        const int sides = std::gcd(m_size.width, m_size.height);
        for (int pitch = kLeastPitch; pitch <= sides; ++pitch) {
            if (sides % pitch == 0) take(best, wholeLines(m_size, pitch));
        }
        if (const auto found = accepted(best, kMostInside, 0)) return found;
        best = {};
        const int most = std::max(m_size.width, m_size.height) / kLeastCells;
        for (int pitch = kLeastPitch; pitch <= most; ++pitch)
            take(best, wholeLines(m_size, pitch, bestOffset(pitch)));
        const int mostCells = std::min(core::kMaxGridSide, m_size.width / kLeastPitch);
        for (int count = kLeastCells; count <= mostCells; ++count) {
            forEachRowCount(m_size, count, [&](int rowCount) {
                take(best, {dividedSide(m_size.width, count), dividedSide(m_size.height, rowCount),
                            true});
            });
        }
        return accepted(best, kMostInsideOffGrid, 4);
    }

private:
    void take(Candidate& best, const CellLines& lines) const {
        if (!hasFittingSize(lines)) return;
        Balance balance = balanceOf(m_steps.columns, lines.columns);
        balance.add(balanceOf(m_steps.rows, lines.rows));
        const double ratio = balance.ratio(m_floor);
        if (ratio < best.ratio) best = {lines, balance, ratio};
    }

    static int bestOffset(const Steps& steps, int pitch) {
        std::vector<double> sums(static_cast<std::size_t>(pitch));
        for (std::size_t line = 1; line < steps.energy.size(); ++line)
            sums[line % sums.size()] += steps.energy[line];
        return static_cast<int>(std::max_element(sums.begin(), sums.end()) - sums.begin());
    }

    core::Point bestOffset(int pitch) const {
        return {bestOffset(m_steps.columns, pitch), bestOffset(m_steps.rows, pitch)};
    }

    // `fitted` is how many lines the place and pitch could be fitted to without proving anything.
    std::optional<CellLines> accepted(const Candidate& best, double mostInside, int fitted) const {
        if (!(best.ratio <= mostInside)) return std::nullopt;
        const double used = best.balance.used();
        const int pitch = static_cast<int>(best.balance.others / best.balance.lines + 1.5);
        if ((used - fitted) * log2Floor(pitch) < kLeastEvidence) return std::nullopt;
        std::optional<CellLines> lines = best.lines;
        if (!isBelievable(*lines, used)) lines = finer(*lines, used);
        if (lines) lines->exact = false;
        return lines;
    }

    std::optional<CellLines> finer(const CellLines& lines, double used) const {
        const AxisSpan& columns = lines.columns.span;
        const AxisSpan& rows = lines.rows.span;
        if (columns.denominator != 1) return std::nullopt;
        const auto pitch = static_cast<int>(columns.step);
        // A first cell that is cut begins before the picture.
        const core::Point offset{static_cast<int>((columns.start + pitch) % pitch),
                                 static_cast<int>((rows.start + pitch) % pitch)};
        return believablePart(m_size, pitch, offset, used);
    }

    core::Size m_size;
    const BothSteps& m_steps;
    double m_floor = 0;
};

}  // namespace

int CellSide::firstPixel(int cell, int pixels) const {
    // The first x with x + 1/2 >= edge: twice the edge less one, over two, upwards.
    const std::int64_t twice = 2 * span.edge(cell) - span.denominator;
    const std::int64_t divisor = 2 * span.denominator;
    const std::int64_t first = twice <= 0 ? 0 : (twice + divisor - 1) / divisor;
    return static_cast<int>(std::min<std::int64_t>(first, pixels));
}

int CellSide::centrePixel(int cell, int pixels) const {
    const std::int64_t centre = (span.edge(cell) + span.edge(cell + 1)) / (2 * span.denominator);
    return static_cast<int>(std::clamp<std::int64_t>(centre, 0, pixels - 1));
}

std::optional<CellLines> findCellLines(const core::Pixels& pixels) {
    const BothSteps steps = stepsOf(pixels);
    if (std::max(steps.columns.largest, steps.rows.largest) < kLeastStep) return std::nullopt;
    const std::vector<int> columns = usedLines(steps.columns);
    const std::vector<int> rows = usedLines(steps.rows);
    if (auto lines = exactWhole(pixels.size, columns, rows)) return lines;
    if (auto lines = exactCut(pixels.size, columns, rows)) return lines;
    if (auto lines = exactDivided(pixels.size, columns, rows, 1, liesOn)) return lines;
    if (auto lines = exactDivided(pixels.size, columns, rows, 2, liesNear)) return lines;
    return Search(pixels.size, steps).run();
}

}  // namespace pantile::picture
