#include "drawing/reports.h"

#include <algorithm>
#include <optional>

#include "drawing/timing.h"

namespace pantile::drawing {
namespace {

class Sender {
public:
    Sender(const core::Canvas& canvas, const core::PointerTiming& timing)
        : m_model(canvas, timing), m_pen(m_model.start()) {}

    void pick(core::PaletteIndex colour) { clickButton(m_model.swatch(colour)); }

    void fill(core::PaletteIndex colour) {
        pick(colour);
        clickButton(m_model.fillButton());
    }

    void draw(const Stroke& stroke) {
        moveTo(m_model.cellCentre(stroke.path.front()), m_model.stepUp());
        press();
        for (std::size_t i = 1; i < stroke.path.size(); ++i) {
            moveTo(m_model.cellCentre(stroke.path[i]),
                   stroke.jumpsTo(i) ? m_model.jumpStep() : m_model.stepDown());
        }
        release();
    }

    std::vector<Report> take() && { return std::move(m_reports); }

private:
    void clickButton(core::Point centre) {
        moveTo(centre, m_model.stepUp());
        press();
        release();
        if (m_model.timing().settleMs > 0) send(0, 0, m_model.timing().settleMs);
    }

    void moveTo(core::Point target, int largestStep) {
        while (m_pen != target) {
            const int dx = std::clamp(target.x - m_pen.x, -largestStep, largestStep);
            const int dy = std::clamp(target.y - m_pen.y, -largestStep, largestStep);
            send(dx, dy, m_model.timing().reportIntervalMs);
            m_pen = {m_pen.x + dx, m_pen.y + dy};
        }
    }

    void press() {
        m_pressed = true;
        send(0, 0, m_model.timing().pressMs);
    }

    void release() {
        m_pressed = false;
        send(0, 0, m_model.timing().releaseMs);
    }

    void send(int dx, int dy, int milliseconds) {
        m_reports.push_back({static_cast<std::int8_t>(dx), static_cast<std::int8_t>(dy), m_pressed,
                             static_cast<std::uint16_t>(milliseconds)});
    }

    TimeModel m_model;
    core::Point m_pen;
    bool m_pressed = false;
    std::vector<Report> m_reports;
};

}  // namespace

std::vector<Report> reportsOf(const Plan& plan, const core::Canvas& canvas,
                              const core::PointerTiming& timing) {
    Sender sender(canvas, timing);
    if (plan.fill) sender.fill(*plan.fill);
    std::optional<core::PaletteIndex> picked;
    for (const Stroke& stroke : plan.strokes) {
        if (picked != stroke.colour) sender.pick(stroke.colour);
        picked = stroke.colour;
        sender.draw(stroke);
    }
    return std::move(sender).take();
}

}  // namespace pantile::drawing
