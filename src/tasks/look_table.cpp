#include "tasks/look_table.h"

#include <algorithm>

namespace pantile::tasks {

using catalogue::LookFigures;
using core::Result;
using picture::Look;

namespace {

catalogue::MeanRanges rangesAround(std::span<const Look> looks, int within) {
    const int reach = picture::meanReach(within);
    catalogue::MeanRanges ranges;
    ranges.least.fill(255);
    ranges.most.fill(0);
    for (const Look& look : looks) {
        const LookFigures figures = figuresOf(look);
        for (std::size_t i = 0; i < figures.means.size(); ++i) {
            const int mean = figures.means[i];
            ranges.least[i] =
                std::min(ranges.least[i], static_cast<std::uint8_t>(std::max(mean - reach, 0)));
            ranges.most[i] =
                std::max(ranges.most[i], static_cast<std::uint8_t>(std::min(mean + reach, 255)));
        }
    }
    return ranges;
}

}  // namespace

LookFigures figuresOf(const Look& look) {
    const picture::MeanTint& mean = look.mean;
    return {look.shape,
            {mean.lightness, mean.greenToRed, mean.blueToYellow, mean.unpainted},
            look.lights};
}

Look lookOf(const LookFigures& figures) {
    const auto& means = figures.means;
    return {figures.shape, {means[0], means[1], means[2], means[3]}, figures.lights};
}

Result<LookTable> LookTable::read(const catalogue::Library& library, std::span<const Look> looks,
                                  int within) {
    LookTable table;
    if (looks.empty()) return table;
    PANTILE_ASSIGN_OR_RETURN(const auto rows,
                             catalogue::looksWithin(library, rangesAround(looks, within)));
    table.m_entries.reserve(rows.size());
    for (const catalogue::ContentLook& row : rows)
        table.m_entries.push_back({row.contentId, lookOf(row.look)});
    std::stable_sort(table.m_entries.begin(), table.m_entries.end(),
                     [](const Entry& a, const Entry& b) {
                         return a.look.mean.lightness < b.look.mean.lightness;
                     });
    return table;
}

std::vector<std::int64_t> LookTable::near(const Look& look, int within) const {
    std::array<Look, picture::kOrientations.size()> ways;
    ways.fill(look);
    for (std::size_t i = 0; i < ways.size(); ++i)
        ways[i].lights = picture::orientedLights(look.lights, picture::kOrientations[i]);

    const int reach = picture::meanReach(within);
    const int lightness = look.mean.lightness;
    const auto begin = std::lower_bound(
        m_entries.begin(), m_entries.end(), lightness - reach,
        [](const Entry& entry, int least) { return entry.look.mean.lightness < least; });
    std::vector<std::int64_t> contents;
    for (auto entry = begin; entry != m_entries.end(); ++entry) {
        const Look& other = entry->look;
        if (other.mean.lightness > lightness + reach) break;
        if (!picture::mayBeNear(look.mean, other.mean, within)) continue;
        const bool isNear = std::any_of(ways.begin(), ways.end(), [&](const Look& way) {
            return picture::mayBeNear(way, other, within);
        });
        if (isNear) contents.push_back(entry->contentId);
    }
    return contents;
}

}  // namespace pantile::tasks
