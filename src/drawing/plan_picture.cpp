#include "drawing/plan_picture.h"

#include <algorithm>
#include <array>
#include <optional>
#include <vector>

#include "core/counted.h"
#include "core/duration.h"
#include "core/text.h"

namespace pantile::drawing {
namespace {

constexpr int kTenths = 10;
constexpr int kMargin = 160;
constexpr int kLineHeight = 130;
constexpr int kTextSize = 90;
constexpr int kShownWidth = 960;  ///< Pixels, unless the viewer scales it.
constexpr int kLegendWidth = 3400;
constexpr int kSampleWidth = 400;

std::string escaped(std::string_view text) {
    std::string result;
    for (const char c : core::visibleText(text)) {
        switch (c) {
            case '&':
                result += "&amp;";
                break;
            case '<':
                result += "&lt;";
                break;
            case '>':
                result += "&gt;";
                break;
            case '"':
                result += "&quot;";
                break;
            default:
                result += c;
        }
    }
    return result;
}

std::string number(std::int64_t value) {
    return std::to_string(value);
}

/// ` name="value"`
std::string with(std::string_view name, int value) {
    return " " + std::string(name) + "=\"" + number(value) + "\"";
}

class Picture {
public:
    Picture(const Plan& plan, const PictureOf& of)
        : m_plan(plan), m_of(of), m_pitch(of.canvas.geometry.cellPitch * kTenths) {}

    std::string draw() && {
        listPicks();
        measure();
        begin();
        drawCells();
        drawSwatches();
        drawTravels();
        for (const Stroke& stroke : m_plan.strokes) drawStroke(stroke);
        drawWords();
        m_text += "</svg>\n";
        return std::move(m_text);
    }

private:
    /// A square around a centre.
    struct Square {
        core::Point centre;
        int side;
    };

    core::Point cell(core::Point c) const { return tenths(m_of.canvas.geometry.cellCentre(c)); }

    core::Point swatch(core::PaletteIndex colour) const {
        return tenths(m_of.canvas.geometry.swatch(colour));
    }

    static core::Point tenths(core::Point counts) {
        return {counts.x * kTenths, counts.y * kTenths};
    }

    std::string colourText(core::PaletteIndex colour) const {
        return core::toHex(m_of.palette[colour]);
    }

    /// For each colour, the numbers of its picks.
    void listPicks() {
        int picks = 0;
        const auto pick = [&](core::PaletteIndex colour) {
            std::string& numbers = m_picks[colour];
            numbers += (numbers.empty() ? "" : ", ") + number(++picks);
        };
        if (m_plan.fill) pick(*m_plan.fill);
        std::optional<core::PaletteIndex> picked;
        for (const Stroke& stroke : m_plan.strokes) {
            if (picked != stroke.colour) pick(stroke.colour);
            picked = stroke.colour;
        }
    }

    void measure() {
        const auto take = [&](Square square) {
            const int half = square.side / 2;
            m_least = {std::min(m_least.x, square.centre.x - half),
                       std::min(m_least.y, square.centre.y - half)};
            m_most = {std::max(m_most.x, square.centre.x + half),
                      std::max(m_most.y, square.centre.y + half)};
        };
        m_least = m_most = cell({0, 0});
        take({cell({0, 0}), m_pitch});
        take({cell({m_of.canvas.size.width - 1, m_of.canvas.size.height - 1}), m_pitch});
        for (std::size_t i = 0; i < m_picks.size(); ++i) {
            // The numbers of the picks stand beside it.
            if (m_picks[i].empty()) continue;
            const auto colour = static_cast<core::PaletteIndex>(i);
            take({swatch(colour), swatchSide()});
            m_most.x = std::max(
                m_most.x, swatch(colour).x + swatchSide() / 2 + kTextSize * textLength(m_picks[i]));
        }
        if (m_plan.fill) take({button(), swatchSide()});
        m_most.x = std::max(m_most.x, m_least.x + kLegendWidth);
    }

    static int textLength(const std::string& text) { return static_cast<int>(text.size()); }

    int swatchSide() const { return m_of.canvas.geometry.swatchPitch * kTenths * 3 / 4; }

    core::Point button() const {
        return tenths(m_of.canvas.geometry.fillButton.value_or(core::Point{}));
    }

    void begin() {
        const int left = m_least.x - kMargin;
        const int top = m_least.y - kMargin - 2 * kLineHeight;
        const int width = m_most.x - m_least.x + 2 * kMargin;
        const int height = m_most.y - m_least.y + 2 * kMargin + 8 * kLineHeight;
        const std::string box =
            number(left) + " " + number(top) + " " + number(width) + " " + number(height);
        m_text += R"(<svg xmlns="http://www.w3.org/2000/svg" viewBox=")" + box + "\"" +
                  with("width", kShownWidth) + with("height", kShownWidth * height / width) +
                  ">\n<title>" + escaped(m_of.title) + "</title>\n";
        m_text += "<rect" + with("x", left) + with("y", top) + with("width", width) +
                  with("height", height) + " fill=\"#ffffff\"/>\n";
    }

    void square(Square square, const std::string& rest) {
        m_text += "<rect" + with("x", square.centre.x - square.side / 2) +
                  with("y", square.centre.y - square.side / 2) + with("width", square.side) +
                  with("height", square.side) + rest + "/>\n";
    }

    /// The texture pale below the strokes, each run of a row as one piece; the canvas around it.
    void drawCells() {
        const core::Point corner = cell({0, 0});
        m_text += "<rect" + with("x", corner.x - m_pitch / 2) + with("y", corner.y - m_pitch / 2) +
                  with("width", m_of.canvas.size.width * m_pitch) +
                  with("height", m_of.canvas.size.height * m_pitch) +
                  " fill=\"#f4f4f4\" stroke=\"#777777\" stroke-width=\"8\"/>\n";
        m_text += "<g fill-opacity=\"0.35\">\n";
        const core::Grid& grid = m_of.grid;
        for (int y = 0; y < grid.height(); ++y) {
            for (int x = 0; x < grid.width();) {
                const core::PaletteIndex colour = grid.at(x, y);
                int end = x + 1;
                while (end < grid.width() && grid.at(end, y) == colour) ++end;
                if (m_of.palette.transparent() != colour) drawRun({x, y}, end - x, colour);
                x = end;
            }
        }
        m_text += "</g>\n";
    }

    void drawRun(core::Point first, int cells, core::PaletteIndex colour) {
        const core::Point centre = cell(first);
        m_text += "<rect" + with("x", centre.x - m_pitch / 2) + with("y", centre.y - m_pitch / 2) +
                  with("width", cells * m_pitch) + with("height", m_pitch) + " fill=\"" +
                  colourText(colour) + "\"/>\n";
    }

    void drawSwatches() {
        for (std::size_t i = 0; i < m_picks.size(); ++i) {
            if (m_picks[i].empty()) continue;
            const auto colour = static_cast<core::PaletteIndex>(i);
            const core::Point centre = swatch(colour);
            square({centre, swatchSide()},
                   " fill=\"" + colourText(colour) + "\" stroke=\"#333333\" stroke-width=\"6\"");
            words({centre.x + swatchSide() / 2 + 30, centre.y + kTextSize / 3}, m_picks[i]);
        }
        if (!m_plan.fill) return;
        square({button(), swatchSide()},
               " fill=\"" + colourText(*m_plan.fill) + "\" stroke=\"#333333\" stroke-width=\"20\"");
    }

    /// All ways of the raised pen as one line that breaks off wherever the pen goes down.
    void drawTravels() {
        std::string way;
        core::Point pen = cell({0, 0});
        const auto go = [&](core::Point to) {
            if (to != pen) way += "M" + place(pen) + "L" + place(to);
            pen = to;
        };
        if (m_plan.fill) {
            go(swatch(*m_plan.fill));
            go(button());
        }
        std::optional<core::PaletteIndex> picked;
        for (const Stroke& stroke : m_plan.strokes) {
            if (picked != stroke.colour) go(swatch(stroke.colour));
            picked = stroke.colour;
            go(cell(stroke.path.front()));
            pen = cell(stroke.path.back());
        }
        if (!way.empty()) m_text += "<path d=\"" + way + "\"" + std::string(kTravelLook) + "/>\n";
    }

    static std::string place(core::Point p) { return number(p.x) + " " + number(p.y); }

    /// Dark below, so that light colours show, and the colour over it; a ring where the pen goes
    /// down.
    void drawStroke(const Stroke& stroke) {
        std::string way = "M" + place(cell(stroke.path.front()));
        std::string jumps;
        for (std::size_t i = 1; i < stroke.path.size(); ++i) {
            const std::string to = place(cell(stroke.path[i]));
            way += (stroke.jumpsTo(i) ? "M" : "L") + to;
            if (stroke.jumpsTo(i)) jumps += "M" + place(cell(stroke.path[i - 1])) + "L" + to;
        }
        strokeLine(way, "#333333", m_pitch * 4 / 10);
        strokeLine(way, colourText(stroke.colour), m_pitch * 25 / 100);
        if (!jumps.empty()) m_text += "<path d=\"" + jumps + "\"" + std::string(kJumpLook) + "/>\n";
        for (std::size_t i = 0; i < stroke.path.size(); ++i) {
            if (standsAlone(stroke, i)) dot(cell(stroke.path[i]), stroke.colour);
        }
        ring(cell(stroke.path.front()));
    }

    /// A cell of the path with no line to it and none from it.
    static bool standsAlone(const Stroke& stroke, std::size_t i) {
        const bool noneTo = i == 0 || stroke.jumpsTo(i);
        return noneTo && (i + 1 == stroke.path.size() || stroke.jumpsTo(i + 1));
    }

    void dot(core::Point centre, core::PaletteIndex colour) {
        m_text += "<circle" + with("cx", centre.x) + with("cy", centre.y) +
                  with("r", m_pitch * 16 / 100) + " fill=\"" + colourText(colour) +
                  "\" stroke=\"#333333\"" + with("stroke-width", m_pitch * 8 / 100) + "/>\n";
    }

    void strokeLine(const std::string& way, const std::string& colour, int width) {
        m_text += "<path d=\"" + way + "\" fill=\"none\" stroke=\"" + colour + "\"" +
                  with("stroke-width", width) +
                  " stroke-linecap=\"round\" stroke-linejoin=\"round\"/>\n";
    }

    void ring(core::Point centre) {
        m_text += "<circle" + with("cx", centre.x) + with("cy", centre.y) +
                  with("r", m_pitch * 3 / 10) +
                  " fill=\"none\" stroke=\"#111111\" stroke-width=\"6\"/>\n";
    }

    void words(core::Point at, const std::string& text) {
        m_text += "<text" + with("x", at.x) + with("y", at.y) + with("font-size", kTextSize) +
                  " font-family=\"sans-serif\" fill=\"#222222\">" + text + "</text>\n";
    }

    void drawWords() {
        words({m_least.x, m_least.y - kMargin - kLineHeight / 2}, escaped(m_of.title));
        words({m_least.x, m_least.y - kMargin + kLineHeight / 2},
              core::counted(std::ssize(m_plan.strokes), "stroke", "strokes") + ", " +
                  core::counted(m_plan.picks, "colour pick", "colour picks") +
                  (m_plan.fill ? ", 1 fill" : "") + ", " + core::spokenTime(m_plan.milliseconds));
        core::Point line{m_least.x, m_most.y + kMargin + kLineHeight};
        const auto entry = [&](const std::string& text) {
            words({line.x + kSampleWidth, line.y + kTextSize / 3}, text);
            line.y += kLineHeight;
        };
        const auto sample = [&] {
            return "M" + place(line) + "L" + place({line.x + kSampleWidth - 100, line.y});
        };
        strokeLine(sample(), "#333333", 40);
        strokeLine(sample(), "#d0d0d0", 25);
        entry("pen down, in the colour of the stroke");
        ring({line.x + (kSampleWidth - 100) / 2, line.y});
        entry("where a stroke begins");
        m_text += "<path d=\"" + sample() + "\"" + std::string(kTravelLook) + "/>\n";
        entry("pen up");
        m_text += "<path d=\"" + sample() + "\"" + std::string(kJumpLook) + "/>\n";
        entry("jump with the pen down, nothing painted between");
        words({line.x, line.y + kTextSize / 3}, "1, 2");
        entry("beside a colour: when it is picked; a frame of its own: the fill button");
    }

    static constexpr std::string_view kTravelLook =
        " fill=\"none\" stroke=\"#8a8a8a\" stroke-width=\"8\" stroke-dasharray=\"24 18\"";
    static constexpr std::string_view kJumpLook =
        " fill=\"none\" stroke=\"#b03060\" stroke-width=\"8\" stroke-dasharray=\"8 12\"";

    const Plan& m_plan;
    const PictureOf& m_of;
    int m_pitch;
    std::array<std::string, 256> m_picks;
    core::Point m_least;
    core::Point m_most;
    std::string m_text;
};

}  // namespace

std::string planSvg(const Plan& plan, const PictureOf& of) {
    return Picture(plan, of).draw();
}

}  // namespace pantile::drawing
