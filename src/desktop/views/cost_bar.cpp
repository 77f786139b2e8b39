#include "desktop/views/cost_bar.h"

#include <algorithm>
#include <numeric>

#include <QPainter>

#include "desktop/theme/apply_theme.h"

namespace pantile::desktop {

namespace {

constexpr int kBarHeight = 8;
constexpr int kThin = 4;  // The pieces within the limit.
constexpr int kLimitMark = 2;

}  // namespace

CostBar::CostBar(const Theme& theme, QWidget* parent) : QWidget(parent), m_theme(theme) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void CostBar::setCosts(std::vector<std::int64_t> pieces, std::int64_t limit, const QString& words) {
    m_pieces = std::move(pieces);
    m_limit = limit;
    setAccessibleName(words);
    setToolTip(words);
    update();
}

QSize CostBar::sizeHint() const {
    return {20 * kGap, kBarHeight};
}

std::int64_t CostBar::total() const {
    return std::accumulate(m_pieces.begin(), m_pieces.end(), std::int64_t{0});
}

void CostBar::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    const int middle = (kBarHeight - kThin) / 2;
    painter.fillRect(0, middle, width(), kThin, toQColor(m_theme.selection));
    const std::int64_t all = std::max({total(), m_limit, std::int64_t{1}});
    const auto place = [&](std::int64_t value) {
        return static_cast<int>(static_cast<double>(value) / static_cast<double>(all) * width());
    };
    const int limit = m_limit > 0 ? place(m_limit) : width();
    std::int64_t before = 0;
    for (const std::int64_t piece : m_pieces) {
        const int from = place(before);
        before += piece;
        // A pixel apart, but a small piece is seen all the same.
        const int to = std::max(place(before) - 1, from + 1);
        painter.fillRect(from, middle, std::min(to, limit) - from, kThin,
                         toQColor(m_theme.structure));
        if (to <= limit) continue;
        const int over = std::max(from, limit);
        painter.fillRect(over, 0, to - over, kBarHeight, toQColor(m_theme.over));
    }
    if (isOver())
        painter.fillRect(limit - kLimitMark, 0, kLimitMark, kBarHeight, toQColor(m_theme.text));
}

}  // namespace pantile::desktop
