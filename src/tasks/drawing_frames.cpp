#include "tasks/drawing_frames.h"

#include <algorithm>
#include <string>

#include "core/pixels.h"
#include "drawing/paint_order.h"
#include "image_files/write_png.h"

namespace pantile::tasks {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace fs = std::filesystem;

namespace {

constexpr std::int64_t kUsualFrames = 100;
constexpr int kSeenSide = 256;  ///< Pixels that the longer side has at the least, about.

/// The texture's cells enlarged, at first all transparent.
class Film {
public:
    explicit Film(const FittedTexture& fitted)
        : m_palette(fitted.palette),
          m_cells(fitted.grid.size()),
          m_factor(std::max(1, kSeenSide / std::max(m_cells.width, m_cells.height))) {
        m_picture.size = {m_cells.width * m_factor, m_cells.height * m_factor};
        m_picture.pixels.assign(static_cast<std::size_t>(m_picture.size.width) *
                                    static_cast<std::size_t>(m_picture.size.height),
                                core::Rgba8{0, 0, 0, 0});
    }

    void paint(const drawing::PaintedCell& painted) {
        const core::Rgb8 colour = m_palette[painted.colour];
        const core::Point corner{painted.cell.x * m_factor, painted.cell.y * m_factor};
        for (int y = 0; y < m_factor; ++y) {
            for (int x = 0; x < m_factor; ++x) {
                m_picture.at(corner.x + x, corner.y + y) = {colour.r, colour.g, colour.b, 255};
            }
        }
    }

    const core::Pixels& picture() const { return m_picture; }

private:
    const core::Palette& m_palette;
    core::Size m_cells;
    int m_factor;
    core::Pixels m_picture;
};

std::vector<std::int64_t> frameTimes(std::int64_t totalMs, std::int64_t everyMs) {
    std::vector<std::int64_t> times;
    for (std::int64_t ms = 0; ms < totalMs; ms += everyMs) times.push_back(ms);
    times.push_back(totalMs);
    return times;
}

std::string frameName(std::size_t number) {
    constexpr std::size_t kDigits = 4;
    const std::string digits = std::to_string(number);
    return "frame-" + std::string(kDigits - std::min(kDigits, digits.size()), '0') + digits +
           ".png";
}

}  // namespace

Result<std::vector<fs::path>> writeFrames(const PlannedDrawing& planned, const fs::path& folder,
                                          const FrameOptions& options,
                                          const core::Progress& progress) {
    const std::int64_t total = planned.plan.milliseconds;
    const std::int64_t every =
        options.everyMs > 0 ? options.everyMs
                            : std::max<std::int64_t>(1, (total + kUsualFrames - 1) / kUsualFrames);
    if (total / every + 2 > kMostFrames) {
        return Error{ErrorKind::TooLarge,
                     "the drawing would have about " + std::to_string(total / every + 2) +
                         " frames; at most " + std::to_string(kMostFrames) + " are written",
                     "leave more time between two frames"};
    }
    const std::vector<std::int64_t> times = frameTimes(total, every);
    std::vector<fs::path> files;
    for (std::size_t i = 0; i < times.size(); ++i) files.push_back(folder / frameName(i));
    PANTILE_RETURN_IF_ERROR(makeFolder(folder));
    PANTILE_RETURN_IF_ERROR(checkFree(files, options.ifExists));

    const std::vector<drawing::PaintedCell> order =
        drawing::paintOrder(planned.plan, planned.canvas, planned.board.timing);
    Film film(planned.fitted);
    std::size_t next = 0;
    for (std::size_t i = 0; i < times.size(); ++i) {
        if (progress.stopRequested()) return core::stoppedError();
        progress.tell(static_cast<std::int64_t>(i), std::ssize(times),
                      files[i].filename().string());
        // At its start nothing is painted, even where the first press takes no time to come.
        for (; i > 0 && next < order.size() && order[next].milliseconds <= times[i]; ++next) {
            film.paint(order[next]);
        }
        PANTILE_ASSIGN_OR_RETURN(const auto bytes, image_files::encodePng(film.picture()));
        PANTILE_RETURN_IF_ERROR(writeFile(files[i], bytes, options.ifExists));
    }
    progress.tell(std::ssize(times), std::ssize(times), "");
    return files;
}

}  // namespace pantile::tasks
