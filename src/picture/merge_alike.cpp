#include "picture/merge_alike.h"

#include <algorithm>

#include "core/colour_spaces.h"

namespace pantile::picture {
namespace {

using core::OkLab;
using core::Rgb8;

struct Entry {
    Rgb8 colour;
    OkLab lab;
    double cells = 0;
};

std::vector<Entry> countedEntries(std::span<const Rgb8> cells, std::span<const Rgb8> palette) {
    std::vector<Entry> entries;
    for (const Rgb8 colour : palette) entries.push_back({colour, core::toOkLab(colour), 0});
    for (const Rgb8 cell : cells) {
        const OkLab lab = core::toOkLab(cell);
        Entry* nearest = &entries.front();
        for (Entry& entry : entries) {
            if (core::squaredDistance(lab, entry.lab) < core::squaredDistance(lab, nearest->lab))
                nearest = &entry;
        }
        nearest->cells += 1;
    }
    return entries;
}

struct Pair {
    std::size_t first = 0;
    std::size_t second = 0;  // 0 if no pair is close enough
};

Pair closestPair(std::span<const Entry> entries, std::size_t pinned, double within) {
    Pair closest;
    double least = within * within;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        for (std::size_t j = std::max(i + 1, pinned); j < entries.size(); ++j) {
            const double distance = core::squaredDistance(entries[i].lab, entries[j].lab);
            if (distance < least) {
                least = distance;
                closest = {i, j};
            }
        }
    }
    return closest;
}

Entry meanOf(const Entry& p, const Entry& q) {
    // Two that no cell is nearest to count alike.
    const double cells = p.cells + q.cells;
    const double share = cells > 0 ? q.cells / cells : 0.5;
    const OkLab mean{p.lab.l + share * (q.lab.l - p.lab.l), p.lab.a + share * (q.lab.a - p.lab.a),
                     p.lab.b + share * (q.lab.b - p.lab.b)};
    const Rgb8 colour = core::toRgb8(core::toLinear(mean));
    return {colour, core::toOkLab(colour), cells};
}

}  // namespace

std::vector<Rgb8> mergedAlike(std::span<const Rgb8> cells, std::vector<Rgb8> palette,
                              std::size_t pinned, int within) {
    if (within <= 0 || palette.empty()) return palette;
    std::vector<Entry> entries = countedEntries(cells, palette);
    const double limit = static_cast<double>(within) / kMergeUnits;
    for (Pair pair = closestPair(entries, pinned, limit); pair.second > 0;
         pair = closestPair(entries, pinned, limit)) {
        Entry& kept = entries[pair.first];
        const Entry& gone = entries[pair.second];
        if (pair.first < pinned) {
            kept.cells += gone.cells;
        } else {
            kept = meanOf(kept, gone);
        }
        entries.erase(entries.begin() + static_cast<std::ptrdiff_t>(pair.second));
    }
    palette.clear();
    for (const Entry& entry : entries) palette.push_back(entry.colour);
    return palette;
}

}  // namespace pantile::picture
