#include "tasks/faster_settings.h"

#include <algorithm>
#include <cctype>
#include <utility>

#include "drawing/planner.h"

namespace pantile::tasks {

using core::PenModel;
using core::PointerTiming;
using core::Result;
using drawing::DrawingRequest;

namespace {

constexpr int kShortHoldMs = 16;   ///< As with quick timing.
constexpr int kFastReportMs = 1;   ///< The shortest interval of the protocol's full speed.
constexpr int kLongestStep = 127;  ///< The protocol's limit.

/// A request with one setting changed, and the words for it.
struct Variant {
    std::string setting;
    std::string how;
    DrawingRequest request;
};

/// A name as one word of a command.
std::string asWord(const std::string& name) {
    const auto isPlain = [](unsigned char c) {
        return std::isalnum(c) != 0 || c == '-' || c == '_' || c == '.';
    };
    if (std::all_of(name.begin(), name.end(), isPlain)) return name;
    std::string word = "'";
    for (const char c : name) word += c == '\'' ? std::string("'\\''") : std::string(1, c);
    return word + "'";
}

class Variants {
public:
    Variants(const DrawingRequest& request, const std::string& board)
        : m_request(request),
          m_setBoard("board set " + asWord(board)),
          m_setCanvas("canvas set " + asWord(request.canvas.name)) {}

    std::vector<Variant> list() && {
        addQuickTiming();
        addFastReports();
        addShortHolds();
        addPen(PenModel::Diagonals, "diagonals", "a pen that goes aslant");
        addPen(PenModel::Lines, "lines", "a pen that fills lines between reports far apart");
        addPen(PenModel::Sampled, "sampled", "a pen that paints only where reports land");
        addRule(&core::PenRules::turns, "--pen-turns", "strokes that turn corners");
        addRule(&core::PenRules::covers, "--pen-covers", "colours that cover one another");
        return std::move(m_variants);
    }

private:
    void add(std::string setting, std::string how, const PointerTiming& timing, PenModel pen) {
        DrawingRequest changed = m_request;
        changed.timing = timing;
        changed.canvas.penModel = pen;
        m_variants.push_back({std::move(setting), std::move(how), std::move(changed)});
    }

    void addTiming(std::string setting, const std::string& options, const PointerTiming& timing) {
        if (timing == m_request.timing) return;
        add(std::move(setting), m_setBoard + options, timing, m_request.canvas.penModel);
    }

    void addQuickTiming() { addTiming("quick timing", " --timing quick", PointerTiming::quick()); }

    void addFastReports() {
        PointerTiming timing = m_request.timing;
        timing.reportIntervalMs = kFastReportMs;
        addTiming("reports every 1 ms", " --report-ms 1", timing);
    }

    void addShortHolds() {
        PointerTiming timing = m_request.timing;
        const int longest = std::max(timing.pressMs, timing.releaseMs);
        const int shorter = longest > kShortHoldMs ? kShortHoldMs : std::max(longest / 2, 1);
        timing.pressMs = std::min(timing.pressMs, shorter);
        timing.releaseMs = std::min(timing.releaseMs, shorter);
        const std::string ms = std::to_string(shorter);
        addTiming("presses and releases of " + ms + " ms",
                  " --press-ms " + std::to_string(timing.pressMs) + " --release-ms " +
                      std::to_string(timing.releaseMs),
                  timing);
    }

    /// Long steps are what the last two pens are for.
    void addPen(PenModel pen, const std::string& word, std::string setting) {
        if (pen == m_request.canvas.penModel) return;
        PointerTiming timing = m_request.timing;
        std::string how = m_setCanvas + " --pen " + word;
        if (pen != PenModel::Diagonals && timing.maxStepDown < kLongestStep) {
            timing.maxStepDown = kLongestStep;
            how += "; " + m_setBoard + " --step-down " + std::to_string(kLongestStep);
        }
        add(std::move(setting), std::move(how), timing, pen);
    }

    void addRule(bool core::PenRules::*rule, const std::string& option, std::string setting) {
        if (m_request.canvas.rules.*rule) return;
        add(std::move(setting), m_setCanvas + " " + option + " yes", m_request.timing,
            m_request.canvas.penModel);
        m_variants.back().request.canvas.rules.*rule = true;
    }

    const DrawingRequest& m_request;
    std::string m_setBoard;
    std::string m_setCanvas;
    std::vector<Variant> m_variants;
};

}  // namespace

Result<std::vector<FasterSetting>> fasterSettings(const DrawingRequest& request,
                                                  const std::string& board, std::int64_t plannedMs,
                                                  const core::Progress& progress) {
    std::vector<FasterSetting> faster;
    for (const Variant& variant : Variants(request, board).list()) {
        PANTILE_ASSIGN_OR_RETURN(const drawing::Plan plan,
                                 drawing::planDrawing(variant.request, progress));
        const std::int64_t saves = plannedMs - plan.milliseconds;
        if (saves <= 0) continue;
        faster.push_back({variant.setting, variant.how, plan.milliseconds, saves});
    }
    std::stable_sort(faster.begin(), faster.end(),
                     [](const auto& a, const auto& b) { return a.savesMs > b.savesMs; });
    return faster;
}

}  // namespace pantile::tasks
