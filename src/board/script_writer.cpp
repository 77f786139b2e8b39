#include "board/script_writer.h"

#include <algorithm>
#include <bit>
#include <cstdlib>
#include <vector>

#include "board/script_pen.h"
#include "drawing/timing.h"

namespace pantile::board {
namespace {

using core::Point;
using drawing::Stroke;
using Strokes = std::span<const Stroke>;

/// Form and colour, which both forms begin with.
ScriptBitWriter visitStart(Strokes strokes, const ScriptBounds& bounds, bool asRuns) {
    ScriptBitWriter out;
    out.bit(true);
    out.bit(asRuns);
    out.bits(strokes.front().colour, colourBits(bounds));
    out.number(static_cast<unsigned>(strokes.size() - 1), kStrokesParameter);
    return out;
}

/// The strokes themselves, wherever they lead.
class StrokeWriter {
public:
    StrokeWriter(ScriptBitWriter& out, const ScriptBounds& bounds, Point pen)
        : m_out(out), m_bounds(bounds), m_pen(pen) {}

    void put(const Stroke& stroke) {
        move(stroke.path.front(), kMoveParameter);
        m_first = true;
        m_lastTurn = kLeft;
        for (std::size_t i = 1; i < stroke.path.size(); ++i) {
            if (stroke.jumpsTo(i)) {
                m_out.bit(true);
                move(stroke.path[i], kJumpParameter);
            } else {
                piece(stroke.path[i]);
            }
        }
        end();
    }

private:
    void move(Point to, int parameter) {
        m_out.wayOnAxis(to.x - m_pen.x, parameter);
        m_out.wayOnAxis(to.y - m_pen.y, parameter);
        m_pen = to;
    }

    void piece(Point to) {
        const int direction = *directionOf(m_pen, to);
        if (m_first || jumps(m_bounds)) {
            m_out.bit(false);
            m_out.bits(static_cast<unsigned>(direction) >> (goesAslant(m_bounds) ? 0U : 1U),
                       directionBits(m_bounds));
        } else {
            turn(turned(direction, -m_direction));
        }
        length(drawing::longerSide(m_pen, to));
        m_pen = to;
        m_direction = direction;
        m_first = false;
    }

    void turn(int eighths) {
        if (goesAslant(m_bounds)) {
            m_out.bits(static_cast<unsigned>(eighths), directionBits(m_bounds));
        } else if (eighths == kBack) {
            m_out.bits(0b001, 3);
        } else if (eighths == m_lastTurn) {
            m_out.bits(0b01, 2);
        } else {
            m_out.bit(true);
            m_lastTurn = eighths;
        }
    }

    void length(int cells) {
        const int ones = std::min(cells - 1, kUnaryLength);
        for (int i = 0; i < ones; ++i) m_out.bit(true);
        if (ones < kUnaryLength) {
            m_out.bit(false);
        } else {
            m_out.number(static_cast<unsigned>(cells - 1 - kUnaryLength), kLongParameter);
        }
    }

    void end() {
        if (jumps(m_bounds)) {
            m_out.bit(true);
            move(m_pen, kJumpParameter);
        } else if (m_first) {
            m_out.bit(true);
        } else if (m_bounds.turns) {
            m_out.bits(0, 3);
        }
    }

    ScriptBitWriter& m_out;
    const ScriptBounds& m_bounds;
    Point m_pen;
    int m_direction = 0;
    int m_lastTurn = kLeft;
    bool m_first = true;
};

/// What is said of a run: the cells that are passed over before it, and those it has beyond one.
struct Run {
    unsigned gap = 0;
    unsigned more = 0;
};

/// Nothing unless the strokes are runs along rows, from left to right and from top to bottom, with
/// cells between them.
std::optional<std::vector<Run>> runsOf(Strokes strokes, const ScriptBounds& bounds) {
    std::vector<Run> runs;
    int next = 0;
    for (const Stroke& stroke : strokes) {
        const Point from = stroke.path.front();
        const Point to = stroke.path.back();
        const int gap = from.y * bounds.grid.width + from.x - next;
        if (stroke.path.size() > 2 || from.y != to.y || to.x < from.x || gap < 0 ||
            stroke.jumpsTo(1)) {
            return std::nullopt;
        }
        runs.push_back({static_cast<unsigned>(gap), static_cast<unsigned>(to.x - from.x)});
        next = nextRunPlace(bounds, to);
    }
    return runs;
}

/// The parameter by which these numbers of all runs take the fewest bits.
int bestParameter(const std::vector<Run>& runs, unsigned Run::*part) {
    const auto bits = [&](int parameter) {
        std::int64_t sum = 0;
        for (const Run& run : runs) sum += numberBits(run.*part, parameter);
        return sum;
    };
    int best = 0;
    for (int parameter = 1; parameter <= kMostRunParameter; ++parameter) {
        if (bits(parameter) < bits(best)) best = parameter;
    }
    return best;
}

std::optional<ScriptBitWriter> writeRuns(Strokes strokes, const ScriptBounds& bounds) {
    const auto runs = runsOf(strokes, bounds);
    if (!runs) return std::nullopt;
    const int gapParameter = bestParameter(*runs, &Run::gap);
    const int moreParameter = bestParameter(*runs, &Run::more);
    ScriptBitWriter out = visitStart(strokes, bounds, true);
    out.bits(static_cast<unsigned>(gapParameter), kRunParameterBits);
    out.bits(static_cast<unsigned>(moreParameter), kRunParameterBits);
    for (const Run& run : *runs) {
        if (run.gap > mostNumber(gapParameter)) return std::nullopt;
        out.number(run.gap, gapParameter);
        out.number(run.more, moreParameter);
    }
    return out;
}

}  // namespace

int colourBits(const ScriptBounds& bounds) {
    return static_cast<int>(std::bit_width(static_cast<unsigned>(bounds.colours - 1)));
}

std::optional<int> directionOf(Point from, Point to) {
    const int dx = to.x - from.x;
    const int dy = to.y - from.y;
    if (dx != 0 && dy != 0 && std::abs(dx) != std::abs(dy)) return std::nullopt;
    const Point step = {(dx > 0) - (dx < 0), (dy > 0) - (dy < 0)};
    const auto* const found = std::find(kDirections.begin(), kDirections.end(), step);
    if (found == kDirections.end()) return std::nullopt;
    return static_cast<int>(found - kDirections.begin());
}

std::optional<ScriptBitWriter> writeVisit(Strokes strokes, const ScriptBounds& bounds, Point pen) {
    if (strokes.size() - 1 > mostNumber(kStrokesParameter)) return std::nullopt;
    ScriptBitWriter out = visitStart(strokes, bounds, false);
    StrokeWriter writer(out, bounds, pen);
    for (const Stroke& stroke : strokes) writer.put(stroke);
    const auto runs = writeRuns(strokes, bounds);
    return runs && runs->size() < out.size() ? *runs : out;
}

}  // namespace pantile::board
