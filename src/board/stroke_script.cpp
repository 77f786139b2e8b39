#include "board/stroke_script.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <optional>
#include <string>

#include "board/load_layout.h"
#include "drawing/timing.h"

namespace pantile::board {
namespace {

using core::Error;
using core::ErrorKind;
using core::Point;
using core::Result;
using drawing::Stroke;

// Stored in loads; never renumber.
constexpr std::uint8_t kEnd = 0x00;
constexpr std::uint8_t kPick = 0x01;
constexpr std::uint8_t kBeginAt = 0x02;
constexpr std::uint8_t kDragTo = 0x03;
constexpr std::uint8_t kJumpTo = 0x04;
constexpr std::uint8_t kJumpNear = 0x08;
constexpr std::uint8_t kJumpNearLast = 0x38;
constexpr std::uint8_t kBeginNear = 0x40;
constexpr std::uint8_t kDrag = 0x80;
constexpr std::array<Point, 8> kDirections = {
    {{1, 0}, {1, 1}, {0, 1}, {-1, 1}, {-1, 0}, {-1, -1}, {0, -1}, {1, -1}}};

constexpr int kJumpNearMost = 3;  ///< Cells on an axis, either way.
constexpr int kJumpNearSide = 7;  ///< Places on an axis.
constexpr int kNearLeast = -4;
constexpr int kNearMost = 3;
constexpr int kLongestEnding = 15;    ///< Cells of a drag byte that ends its way.
constexpr std::uint8_t kGoesOn = 15;  ///< The number in a drag byte whose way goes on.
constexpr int kGoesOnCells = 15;

bool contains(const ScriptBounds& bounds, Point p) {
    return p.x >= 0 && p.y >= 0 && p.x < bounds.grid.width && p.y < bounds.grid.height;
}

std::string cellText(Point p) {
    return "(" + std::to_string(p.x) + ", " + std::to_string(p.y) + ")";
}

/// The direction from one cell to another in the same row, column or diagonal.
std::optional<std::uint8_t> directionOf(Point from, Point to) {
    const int dx = to.x - from.x;
    const int dy = to.y - from.y;
    if (dx != 0 && dy != 0 && std::abs(dx) != std::abs(dy)) return std::nullopt;
    const Point step = {(dx > 0) - (dx < 0), (dy > 0) - (dy < 0)};
    const auto* const found = std::find(kDirections.begin(), kDirections.end(), step);
    return static_cast<std::uint8_t>(found - kDirections.begin());
}

int jumpLength(const Stroke& stroke, std::size_t place) {
    return drawing::longerSide(stroke.path[place - 1], stroke.path[place]);
}

class Encoder {
public:
    explicit Encoder(const ScriptBounds& bounds) : m_bounds(bounds) {}

    Result<void> add(const Stroke& stroke, std::size_t number) {
        PANTILE_RETURN_IF_ERROR(check(stroke, number));
        if (m_colour != stroke.colour) {
            put(kPick);
            put(stroke.colour);
            m_colour = stroke.colour;
        }
        begin(stroke.path.front());
        for (std::size_t i = 1; i < stroke.path.size(); ++i) {
            if (stroke.jumpsTo(i)) {
                jump(stroke.path[i]);
            } else {
                drag(stroke.path[i]);
            }
        }
        return {};
    }

    std::vector<std::uint8_t> finish() && {
        put(kEnd);
        return std::move(m_script);
    }

private:
    Result<void> check(const Stroke& stroke, std::size_t number) const {
        const auto fault = [&](const std::string& what) {
            return Error{ErrorKind::InvalidInput,
                         "stroke " + std::to_string(number + 1) + " of the plan " + what,
                         "plan the texture anew"};
        };
        if (stroke.path.empty()) return fault("has no cell");
        if (stroke.colour >= m_bounds.colours) {
            return fault("has colour " + std::to_string(stroke.colour) + " of a palette of " +
                         std::to_string(m_bounds.colours));
        }
        for (std::size_t i = 0; i < stroke.path.size(); ++i) {
            if (!contains(m_bounds, stroke.path[i])) {
                return fault("leaves the grid at cell " + cellText(stroke.path[i]));
            }
            if (i > 0 && stroke.path[i] == stroke.path[i - 1]) {
                return fault("stands still at cell " + cellText(stroke.path[i]));
            }
            if (i > 0 && stroke.jumpsTo(i) && jumpLength(stroke, i) > m_bounds.jumpCells) {
                return fault("jumps further than the pen can, to cell " + cellText(stroke.path[i]));
            }
        }
        return {};
    }

    void put(std::uint8_t byte) { m_script.push_back(byte); }

    void putCell(Point cell) {
        put(static_cast<std::uint8_t>(cell.x));
        put(static_cast<std::uint8_t>(cell.y));
    }

    void begin(Point cell) {
        const int dx = cell.x - m_pen.x;
        const int dy = cell.y - m_pen.y;
        const auto isNear = [](int d) { return d >= kNearLeast && d <= kNearMost; };
        if (isNear(dx) && isNear(dy)) {
            put(static_cast<std::uint8_t>(kBeginNear | (dx - kNearLeast) << 3 | (dy - kNearLeast)));
        } else {
            put(kBeginAt);
            putCell(cell);
        }
        m_pen = cell;
    }

    void jump(Point cell) {
        const int dx = cell.x - m_pen.x;
        const int dy = cell.y - m_pen.y;
        if (std::abs(dx) <= kJumpNearMost && std::abs(dy) <= kJumpNearMost) {
            const int place = (dy + kJumpNearMost) * kJumpNearSide + dx + kJumpNearMost;
            put(static_cast<std::uint8_t>(kJumpNear + place));
        } else {
            put(kJumpTo);
            putCell(cell);
        }
        m_pen = cell;
    }

    void drag(Point cell) {
        if (const auto direction = directionOf(m_pen, cell)) {
            const auto base = static_cast<std::uint8_t>(kDrag | *direction << 4);
            int cells = std::max(std::abs(cell.x - m_pen.x), std::abs(cell.y - m_pen.y));
            for (; cells > kLongestEnding; cells -= kGoesOnCells) {
                put(static_cast<std::uint8_t>(base | kGoesOn));
            }
            put(static_cast<std::uint8_t>(base | (cells - 1)));
        } else {
            put(kDragTo);
            putCell(cell);
        }
        m_pen = cell;
    }

    ScriptBounds m_bounds;
    std::vector<std::uint8_t> m_script;
    std::optional<core::PaletteIndex> m_colour;
    Point m_pen;
};

class Decoder {
public:
    Decoder(std::span<const std::uint8_t> script, const ScriptBounds& bounds)
        : m_script(script), m_bounds(bounds) {}

    Result<std::vector<Stroke>> decode() {
        while (true) {
            m_opStart = m_next;
            PANTILE_ASSIGN_OR_RETURN(const std::uint8_t op, take());
            if (op == kEnd) break;
            PANTILE_RETURN_IF_ERROR(carryOut(op));
        }
        if (m_next != m_script.size()) return fault("ends before its last byte");
        return std::move(m_strokes);
    }

private:
    Error fault(const std::string& what) const {
        return {ErrorKind::Corrupt,
                "its script, at byte " + std::to_string(m_opStart) + ", " + what,
                "write the load again"};
    }

    Result<std::uint8_t> take() {
        if (m_next == m_script.size()) return fault("breaks off");
        return m_script[m_next++];
    }

    Result<Point> takeCell() {
        PANTILE_ASSIGN_OR_RETURN(const std::uint8_t x, take());
        PANTILE_ASSIGN_OR_RETURN(const std::uint8_t y, take());
        return Point{x, y};
    }

    Result<void> carryOut(std::uint8_t op) {
        if (op >= kDrag) return dragAlong(op);
        if (op >= kBeginNear) {
            return begin({m_pen.x + (op >> 3 & 7) + kNearLeast, m_pen.y + (op & 7) + kNearLeast});
        }
        if (op >= kJumpNear && op <= kJumpNearLast) return jumpNear(op - kJumpNear);
        if (op == kPick) return pick();
        if (op != kBeginAt && op != kDragTo && op != kJumpTo) {
            return fault("has the unknown step " + std::to_string(op));
        }
        PANTILE_ASSIGN_OR_RETURN(const Point cell, takeCell());
        if (op == kBeginAt) return begin(cell);
        return op == kDragTo ? dragTo(cell) : jumpTo(cell);
    }

    Result<void> pick() {
        PANTILE_ASSIGN_OR_RETURN(const std::uint8_t colour, take());
        if (colour >= m_bounds.colours || m_colour == colour) {
            return fault("picks colour " + std::to_string(colour) +
                         ", which is outside the palette or already picked");
        }
        m_colour = colour;
        m_inStroke = false;
        return {};
    }

    Result<void> begin(Point cell) {
        if (!m_colour) return fault("draws before a colour was picked");
        if (!contains(m_bounds, cell)) return fault("leaves the grid at cell " + cellText(cell));
        m_strokes.push_back({*m_colour, {cell}});
        m_pen = cell;
        m_inStroke = true;
        return {};
    }

    Result<void> dragTo(Point cell) {
        if (!m_inStroke) return fault("drags without a stroke");
        if (!contains(m_bounds, cell)) return fault("leaves the grid at cell " + cellText(cell));
        if (cell == m_pen) return fault("stands still at cell " + cellText(cell));
        m_strokes.back().path.push_back(cell);
        m_pen = cell;
        return {};
    }

    Result<void> jumpTo(Point cell) {
        const int longer = drawing::longerSide(m_pen, cell);
        if (longer > m_bounds.jumpCells) {
            return fault("jumps " + std::to_string(longer) + " cells, where the pen can " +
                         std::to_string(m_bounds.jumpCells));
        }
        PANTILE_RETURN_IF_ERROR(dragTo(cell));
        Stroke& stroke = m_strokes.back();
        stroke.jumps.resize(stroke.path.size());
        stroke.jumps.back() = true;
        return {};
    }

    Result<void> jumpNear(int place) {
        return jumpTo({m_pen.x + place % kJumpNearSide - kJumpNearMost,
                       m_pen.y + place / kJumpNearSide - kJumpNearMost});
    }

    Result<void> dragAlong(std::uint8_t op) {
        const Point step = kDirections[op >> 4 & 7];
        const std::uint8_t base = op & 0xF0U;
        int cells = 0;
        while ((op & 0x0FU) == kGoesOn) {
            cells += kGoesOnCells;
            if (cells > core::kMaxGridSide) return fault("drags beyond the largest grid");
            PANTILE_ASSIGN_OR_RETURN(op, take());
            if ((op & 0xF0U) != base) return fault("breaks off in the middle of a drag");
        }
        cells += (op & 0x0F) + 1;
        return dragTo({m_pen.x + step.x * cells, m_pen.y + step.y * cells});
    }

    std::span<const std::uint8_t> m_script;
    ScriptBounds m_bounds;
    std::size_t m_next = 0;
    std::size_t m_opStart = 0;
    std::vector<Stroke> m_strokes;
    std::optional<core::PaletteIndex> m_colour;
    Point m_pen;
    bool m_inStroke = false;
};

}  // namespace

Result<std::vector<std::uint8_t>> encodeScript(std::span<const Stroke> strokes,
                                               const ScriptBounds& bounds) {
    Encoder encoder(bounds);
    for (std::size_t i = 0; i < strokes.size(); ++i) {
        PANTILE_RETURN_IF_ERROR(encoder.add(strokes[i], i));
    }
    std::vector<std::uint8_t> script = std::move(encoder).finish();
    if (script.size() > layout::kMaxScriptBytes) {
        return Error{ErrorKind::TooLarge,
                     "a plan of " + std::to_string(script.size()) +
                         " bytes is too long for a load; at most " +
                         std::to_string(layout::kMaxScriptBytes) + " are allowed",
                     "use a smaller grid or fewer strokes"};
    }
    return script;
}

Result<std::vector<Stroke>> decodeScript(std::span<const std::uint8_t> script,
                                         const ScriptBounds& bounds) {
    return Decoder(script, bounds).decode();
}

}  // namespace pantile::board
