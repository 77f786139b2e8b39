#include "catalogue/near_entries.h"

#include <algorithm>

namespace pantile::catalogue {
namespace {

constexpr std::size_t kBitsPerByte = 8;

}  // namespace

void NearEntries::addPalette(std::int64_t id, std::span<const std::uint8_t> colours) {
    Bits near{};
    bool any = false;
    const std::size_t entries = std::min(colours.size() / 3, near.size() * kBitsPerByte);
    for (std::size_t i = 0; i < entries; ++i) {
        if (!m_neighbourhood.holds({colours[3 * i], colours[3 * i + 1], colours[3 * i + 2]})) {
            continue;
        }
        near[i / kBitsPerByte] |= static_cast<std::uint8_t>(1U << (i % kBitsPerByte));
        any = true;
    }
    if (any) m_entries[id] = near;
}

bool NearEntries::isPainted(std::int64_t palette, std::span<const std::uint8_t> used) const {
    const auto found = m_entries.find(palette);
    if (found == m_entries.end()) return false;
    const Bits& near = found->second;
    for (std::size_t i = 0; i < std::min(used.size(), near.size()); ++i) {
        if ((near[i] & used[i]) != 0) return true;
    }
    return false;
}

}  // namespace pantile::catalogue
