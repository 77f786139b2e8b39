#include "board/stroke_script.h"

#include <algorithm>
#include <optional>
#include <string>

#include "board/load_layout.h"
#include "board/script_bits.h"
#include "board/script_pen.h"
#include "board/script_writer.h"
#include "drawing/timing.h"

namespace pantile::board {
namespace {

using core::Error;
using core::ErrorKind;
using core::Point;
using core::Result;
using drawing::Stroke;

Error tooLong() {
    return {ErrorKind::TooLarge,
            "a plan is too long for a load: at most " + std::to_string(layout::kMaxScriptBytes) +
                " bytes, and " + std::to_string(mostNumber(kStrokesParameter) + 1) +
                " strokes of a colour after the other, are allowed",
            "use a smaller grid or fewer strokes"};
}

/// What is wrong with a piece of a stroke, from the point before `place` to that; else nothing.
std::optional<std::string> pieceFault(const Stroke& stroke, std::size_t place,
                                      const ScriptBounds& bounds) {
    const Point from = stroke.path[place - 1];
    const Point to = stroke.path[place];
    if (to == from) return "stands still at cell ";
    if (!bounds.turns && place > 1) return "turns, which the pen cannot, before cell ";
    if (stroke.jumpsTo(place)) {
        const int most = jumps(bounds) ? bounds.jumpCells : 0;
        if (drawing::longerSide(from, to) <= most) return std::nullopt;
        return "jumps further than the pen can, to cell ";
    }
    const auto direction = directionOf(from, to);
    if (!direction) return "does not go straight to cell ";
    if (*direction % 2 != 0 && !goesAslant(bounds)) {
        return "goes aslant, which the pen cannot, to cell ";
    }
    const bool behindPiece = place > 1 && !stroke.jumpsTo(place - 1);
    if (behindPiece && !jumps(bounds) && direction == directionOf(stroke.path[place - 2], from)) {
        return "goes straight on in two pieces to cell ";
    }
    return std::nullopt;
}

Result<void> checkStroke(const Stroke& stroke, std::size_t number, const ScriptBounds& bounds) {
    const auto fault = [&](const std::string& what) {
        return Error{ErrorKind::InvalidInput,
                     "stroke " + std::to_string(number + 1) + " of the plan " + what,
                     "plan the texture anew"};
    };
    if (stroke.path.empty()) return fault("has no cell");
    if (stroke.colour >= bounds.colours) {
        return fault("has colour " + std::to_string(stroke.colour) + " of a palette of " +
                     std::to_string(bounds.colours));
    }
    for (std::size_t i = 0; i < stroke.path.size(); ++i) {
        if (!contains(bounds, stroke.path[i])) {
            return fault("leaves the grid at cell " + cellText(stroke.path[i]));
        }
        if (i == 0) continue;
        if (const auto wrong = pieceFault(stroke, i, bounds)) {
            return fault(*wrong + cellText(stroke.path[i]));
        }
    }
    return {};
}

Result<void> checkStrokes(std::span<const Stroke> strokes, const ScriptBounds& bounds) {
    for (std::size_t i = 0; i < strokes.size(); ++i) {
        PANTILE_RETURN_IF_ERROR(checkStroke(strokes[i], i, bounds));
    }
    return {};
}

/// How many of the first strokes have the colour of the first.
std::size_t visitLength(std::span<const Stroke> strokes) {
    const auto end = std::find_if(strokes.begin(), strokes.end(), [&](const Stroke& stroke) {
        return stroke.colour != strokes.front().colour;
    });
    return static_cast<std::size_t>(end - strokes.begin());
}

class Decoder {
public:
    Decoder(std::span<const std::uint8_t> script, const ScriptBounds& bounds)
        : m_in(script), m_bounds(bounds) {}

    Result<std::vector<Stroke>> decode() {
        while (m_in.bit()) {
            PANTILE_RETURN_IF_ERROR(takeVisit());
        }
        PANTILE_RETURN_IF_ERROR(checkBits());
        if (!m_in.tookAll()) return fault("ends before its last bit");
        return std::move(m_strokes);
    }

private:
    Error fault(const std::string& what) const {
        return {ErrorKind::Corrupt,
                "its script, at byte " + std::to_string(m_in.byte()) + ", " + what,
                "write the load again"};
    }

    /// To be asked before what was taken is used, and so that nothing goes on for ever.
    Result<void> checkBits() const {
        if (m_in.brokeOff()) return fault("breaks off or has a number that is too long");
        return {};
    }

    Result<void> takeVisit() {
        const bool asRuns = m_in.bit();
        const unsigned colour = m_in.bits(colourBits(m_bounds));
        const unsigned strokes = m_in.number(kStrokesParameter) + 1;
        PANTILE_RETURN_IF_ERROR(checkBits());
        if (colour >= static_cast<unsigned>(m_bounds.colours) || m_colour == colour) {
            return fault("picks colour " + std::to_string(colour) +
                         ", which is outside the palette or already picked");
        }
        m_colour = static_cast<core::PaletteIndex>(colour);
        if (asRuns) return takeRuns(strokes);
        for (unsigned i = 0; i < strokes; ++i) {
            PANTILE_RETURN_IF_ERROR(takeStroke());
        }
        return {};
    }

    Result<void> takeRuns(unsigned count) {
        const int gapParameter = static_cast<int>(m_in.bits(kRunParameterBits));
        const int moreParameter = static_cast<int>(m_in.bits(kRunParameterBits));
        int next = 0;
        for (unsigned i = 0; i < count; ++i) {
            const int place = next + static_cast<int>(m_in.number(gapParameter));
            const int more = static_cast<int>(m_in.number(moreParameter));
            PANTILE_RETURN_IF_ERROR(checkBits());
            m_pen = {place % m_bounds.grid.width, place / m_bounds.grid.width};
            PANTILE_RETURN_IF_ERROR(begin());
            if (more > 0) {
                PANTILE_RETURN_IF_ERROR(goTo({m_pen.x + more, m_pen.y}));
            }
            next = nextRunPlace(m_bounds, m_pen);
        }
        return {};
    }

    Result<void> begin() {
        if (!contains(m_bounds, m_pen)) return fault("leaves the grid at cell " + cellText(m_pen));
        m_strokes.push_back({*m_colour, {m_pen}});
        m_first = true;
        m_lastTurn = kLeft;
        return {};
    }

    Result<void> goTo(Point cell) {
        if (!contains(m_bounds, cell)) return fault("leaves the grid at cell " + cellText(cell));
        m_strokes.back().path.push_back(cell);
        m_pen = cell;
        return {};
    }

    /// Where a way of this parameter leads.
    Point takeMove(int parameter) {
        const int dx = m_in.wayOnAxis(parameter);
        const int dy = m_in.wayOnAxis(parameter);
        return {m_pen.x + dx, m_pen.y + dy};
    }

    Result<void> takeStroke() {
        m_pen = takeMove(kMoveParameter);
        PANTILE_RETURN_IF_ERROR(checkBits());
        PANTILE_RETURN_IF_ERROR(begin());
        bool goesOn = true;
        while (goesOn) {
            PANTILE_ASSIGN_OR_RETURN(goesOn, takePiece());
        }
        return {};
    }

    /// A piece or a jump; false if the stroke ends instead.
    Result<bool> takePiece() {
        if (jumps(m_bounds) && m_in.bit()) return takeJump();
        if (!takeDirection()) {
            PANTILE_RETURN_IF_ERROR(checkBits());
            return false;
        }
        const int cells = takeLength();
        PANTILE_RETURN_IF_ERROR(checkBits());
        const Point step = kDirections[static_cast<std::size_t>(m_direction)];
        PANTILE_RETURN_IF_ERROR(goTo({m_pen.x + step.x * cells, m_pen.y + step.y * cells}));
        m_first = false;
        return true;
    }

    Result<bool> takeJump() {
        const Point to = takeMove(kJumpParameter);
        PANTILE_RETURN_IF_ERROR(checkBits());
        if (to == m_pen) return false;
        const int longer = drawing::longerSide(m_pen, to);
        if (longer > m_bounds.jumpCells) {
            return fault("jumps " + std::to_string(longer) + " cells, where the pen can " +
                         std::to_string(m_bounds.jumpCells));
        }
        PANTILE_RETURN_IF_ERROR(goTo(to));
        Stroke& stroke = m_strokes.back();
        stroke.jumps.resize(stroke.path.size());
        stroke.jumps.back() = true;
        return true;
    }

    /// The direction of the next piece; false if the stroke ends instead.
    bool takeDirection() {
        if (jumps(m_bounds)) {
            m_direction = static_cast<int>(m_in.bits(directionBits(m_bounds)));
            return true;
        }
        if (m_first) {
            if (m_in.bit()) return false;
            const auto direction = static_cast<int>(m_in.bits(directionBits(m_bounds)));
            m_direction = goesAslant(m_bounds) ? direction : 2 * direction;
            return true;
        }
        if (!m_bounds.turns) return false;
        const int turn = goesAslant(m_bounds) ? static_cast<int>(m_in.bits(3)) : takeCorner();
        m_direction = turned(m_direction, turn);
        return turn != 0;
    }

    /// Of a pen that goes in four directions: the turn in eighths, 0 for the stroke's end.
    int takeCorner() {
        if (m_in.bit()) {
            m_lastTurn = turned(0, -m_lastTurn);
            return m_lastTurn;
        }
        if (m_in.bit()) return m_lastTurn;
        return m_in.bit() ? kBack : 0;
    }

    int takeLength() {
        int cells = 1;
        while (cells <= kUnaryLength && m_in.bit()) ++cells;
        if (cells > kUnaryLength) cells += static_cast<int>(m_in.number(kLongParameter));
        return cells;
    }

    ScriptBitReader m_in;
    ScriptBounds m_bounds;
    std::vector<Stroke> m_strokes;
    std::optional<core::PaletteIndex> m_colour;
    Point m_pen;
    int m_direction = 0;
    int m_lastTurn = kLeft;
    bool m_first = true;
};

}  // namespace

Result<std::vector<std::uint8_t>> encodeScript(std::span<const Stroke> strokes,
                                               const ScriptBounds& bounds) {
    PANTILE_RETURN_IF_ERROR(checkStrokes(strokes, bounds));
    ScriptBitWriter out;
    Point pen;
    while (!strokes.empty()) {
        const std::size_t length = visitLength(strokes);
        const auto visit = writeVisit(strokes.first(length), bounds, pen);
        if (!visit) return tooLong();
        out.append(*visit);
        pen = strokes[length - 1].path.back();
        strokes = strokes.subspan(length);
    }
    out.bit(false);
    std::vector<std::uint8_t> script = out.bytes();
    if (script.size() > layout::kMaxScriptBytes) return tooLong();
    return script;
}

Result<std::size_t> visitBits(std::span<const Stroke> strokes, const ScriptBounds& bounds) {
    PANTILE_RETURN_IF_ERROR(checkStrokes(strokes, bounds));
    const auto visit = writeVisit(strokes, bounds, strokes.front().path.front());
    if (!visit) return tooLong();
    return visit->size();
}

Result<std::vector<Stroke>> decodeScript(std::span<const std::uint8_t> script,
                                         const ScriptBounds& bounds) {
    return Decoder(script, bounds).decode();
}

}  // namespace pantile::board
