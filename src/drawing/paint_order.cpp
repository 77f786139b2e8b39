#include "drawing/paint_order.h"

#include <optional>

#include "drawing/timing.h"

namespace pantile::drawing {
namespace {

int towards(int from, int to) {
    return (to > from) - (to < from);
}

class Clock {
public:
    Clock(const core::Canvas& canvas, const core::PointerTiming& timing)
        : m_canvas(canvas), m_model(canvas, timing), m_pen(m_model.start()) {}

    void fill(core::PaletteIndex colour) {
        m_now += m_model.fillMs(m_pen, colour);
        m_pen = m_model.fillButton();
        const std::int64_t pressed = m_now - m_model.timing().settleMs - m_model.clickMs();
        for (int y = 0; y < m_canvas.size.height; ++y) {
            for (int x = 0; x < m_canvas.size.width; ++x) {
                m_cells.push_back({{x, y}, colour, pressed});
            }
        }
    }

    void draw(const Stroke& stroke) {
        if (m_picked != stroke.colour) {
            m_now += m_model.pickMs(m_pen, stroke.colour);
            m_pen = m_model.swatch(stroke.colour);
            m_picked = stroke.colour;
        }
        m_now += m_model.travelMs(m_pen, m_model.cellCentre(stroke.path.front()));
        m_cells.push_back({stroke.path.front(), stroke.colour, m_now});
        m_now += m_model.timing().pressMs;
        for (std::size_t i = 1; i < stroke.path.size(); ++i) drag(stroke, i);
        m_now += m_model.timing().releaseMs;
        m_pen = m_model.cellCentre(stroke.path.back());
    }

    std::vector<PaintedCell> take() && { return std::move(m_cells); }

private:
    void drag(const Stroke& stroke, std::size_t place) {
        const core::Point from = stroke.path[place - 1];
        const core::Point to = stroke.path[place];
        if (stroke.jumpsTo(place)) {
            m_now += m_model.timing().reportIntervalMs;
            m_cells.push_back({to, stroke.colour, m_now});
            return;
        }
        for (core::Point cell = from; cell != to;) {
            cell = {cell.x + towards(cell.x, to.x), cell.y + towards(cell.y, to.y)};
            m_cells.push_back({cell, stroke.colour, m_now + m_model.dragMs(from, cell)});
        }
        m_now += m_model.dragMs(from, to);
    }

    const core::Canvas& m_canvas;
    TimeModel m_model;
    core::Point m_pen;
    std::optional<core::PaletteIndex> m_picked;
    std::int64_t m_now = 0;
    std::vector<PaintedCell> m_cells;
};

}  // namespace

std::vector<PaintedCell> paintOrder(const Plan& plan, const core::Canvas& canvas,
                                    const core::PointerTiming& timing) {
    Clock clock(canvas, timing);
    if (plan.fill) clock.fill(*plan.fill);
    for (const Stroke& stroke : plan.strokes) clock.draw(stroke);
    return std::move(clock).take();
}

}  // namespace pantile::drawing
