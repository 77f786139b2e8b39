#include "cli/progress_bar.h"

#include <algorithm>
#include <ostream>
#include <string>

#include "cli/column_width.h"
#include "core/text.h"

namespace pantile::cli {
namespace {

constexpr int kBarCells = 24;

std::string barLine(std::int64_t done, std::int64_t total, std::string_view what) {
    const auto filled = static_cast<int>(done * kBarCells / total);
    std::string line = "  ";
    for (int i = 0; i < kBarCells; ++i) line += i < filled ? "█" : "·";
    line += "  " + std::to_string(done) + " of " + std::to_string(total);
    if (!what.empty()) line += "  " + core::excerpt(what);
    return line;
}

}  // namespace

std::function<void(std::int64_t, std::int64_t, std::string_view)> progressBar(std::ostream& err,
                                                                              int columns) {
    const auto room = static_cast<std::size_t>(std::max(columns - 1, 1));
    return [&err, room](std::int64_t done, std::int64_t total, std::string_view what) {
        if (total <= 0) return;
        const std::string line = barLine(std::clamp<std::int64_t>(done, 0, total), total, what);
        err << "\r\x1b[K";
        if (done < total && columnWidth(line) <= room) err << line;
        err.flush();
    };
}

}  // namespace pantile::cli
