#include "catalogue/entry_sets.h"

#include <algorithm>

namespace pantile::catalogue {
namespace {

constexpr std::size_t kBitsPerWord = 64;

}  // namespace

void EntrySets::addPalette(std::int64_t id, std::span<const std::uint8_t> colours) {
    EntryBits passing{};
    bool any = false;
    const std::size_t entries = std::min(colours.size() / 3, passing.size() * kBitsPerWord);
    for (std::size_t i = 0; i < entries; ++i) {
        if (!m_test({colours[3 * i], colours[3 * i + 1], colours[3 * i + 2]})) continue;
        passing[i / kBitsPerWord] |= std::uint64_t{1} << (i % kBitsPerWord);
        any = true;
    }
    if (!any) return;
    if (id < 0 || id >= kMostNear) {
        m_far[id] = passing;
        return;
    }
    const auto at = static_cast<std::size_t>(id);
    if (at >= m_places.size()) m_places.resize(at * 3 / 2 + 1);
    m_passing.push_back(passing);
    m_places[at] = static_cast<std::uint32_t>(m_passing.size());
}

}  // namespace pantile::catalogue
