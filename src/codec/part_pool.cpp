#include "codec/part_pool.h"

#include <algorithm>

#include "codec/number_list.h"

namespace pantile::codec {

std::string GatheredParts::missing() const {
    NumberList numbers;
    std::size_t next = 1;
    const auto meet = [&](std::size_t number) {
        numbers.add(next, number - 1);
        next = number + 1;
    };
    auto bad = damaged.begin();
    for (const auto& [number, slice] : slices) {
        for (; bad != damaged.end() && *bad < number; ++bad) meet(*bad);
        meet(number);
    }
    for (; bad != damaged.end(); ++bad) meet(*bad);
    numbers.add(next, head.parts);
    if (numbers.count() == 0) return {};
    const bool one = numbers.count() == 1;
    return (one ? "part " : "parts ") + numbers.told() + " of " + std::to_string(head.parts) +
           (one ? " is missing; ask for it" : " are missing; ask for them");
}

void PartPool::add(Part part, std::size_t glyph, std::vector<std::string> repairs) {
    GatheredParts& code = codeOf(part.head, glyph);
    const bool isNew = code.slices.emplace(part.head.number, std::move(part.slice)).second;
    if (!isNew) return;
    code.damaged.erase(part.head.number);
    for (std::string& repair : repairs) {
        code.repairs.push_back(part.head.name() + ", " + std::move(repair));
    }
}

void PartPool::addDamaged(const PartHead& head, std::size_t glyph) {
    GatheredParts& code = codeOf(head, glyph);
    if (!code.slices.contains(head.number)) code.damaged.insert(head.number);
}

std::vector<GatheredParts> PartPool::take() && {
    std::vector<GatheredParts> codes;
    codes.reserve(m_codes.size());
    for (auto& [key, code] : m_codes) codes.push_back(std::move(code));
    std::sort(codes.begin(), codes.end(),
              [](const GatheredParts& a, const GatheredParts& b) { return a.glyph < b.glyph; });
    return codes;
}

GatheredParts& PartPool::codeOf(const PartHead& head, std::size_t glyph) {
    const auto [entry, isNew] = m_codes.try_emplace({head.whole, head.parts});
    if (isNew) {
        entry->second.head = head;
        entry->second.glyph = glyph;
    }
    return entry->second;
}

}  // namespace pantile::codec
