#include "codec/part_pool.h"

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

bool PartPool::add(Part part, std::size_t glyph, std::vector<std::string> repairs) {
    GatheredParts* const code = codeOf(part.head, glyph);
    if (code == nullptr) return false;
    const bool isNew = code->slices.emplace(part.head.number, std::move(part.slice)).second;
    if (!isNew) return true;
    code->damaged.erase(part.head.number);
    for (std::string& repair : repairs) {
        code->repairs.push_back(part.head.name() + ", " + std::move(repair));
    }
    return true;
}

void PartPool::addDamaged(const PartHead& head, std::size_t glyph) {
    GatheredParts* const code = codeOf(head, glyph);
    if (code != nullptr && !code->slices.contains(head.number)) code->damaged.insert(head.number);
}

GatheredParts* PartPool::codeOf(const PartHead& head, std::size_t glyph) {
    const std::uint64_t key = std::uint64_t{head.whole} << 32U | head.parts;
    const auto known = m_byKey.find(key);
    if (known != m_byKey.end()) return &m_codes[known->second];
    if (m_codes.size() == kMostCodes) return nullptr;
    m_byKey.emplace(key, m_codes.size());
    m_codes.push_back({head, glyph, {}, {}, {}});
    return &m_codes.back();
}

}  // namespace pantile::codec
