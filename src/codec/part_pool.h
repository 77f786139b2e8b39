#pragma once

// Keeps the parts that a text holds until their codes are whole.

#include <cstddef>
#include <cstdint>
#include <map>
#include <set>
#include <string>
#include <unordered_map>
#include <utility>
#include <vector>

#include "codec/parts.h"
#include "core/result.h"

namespace pantile::codec {

/// One code that came in parts.
struct GatheredParts {
    PartHead head;          ///< Of the part that stands first in the text.
    std::size_t glyph = 0;  ///< Where that begins.
    std::map<std::size_t, std::vector<std::uint8_t>> slices;
    std::set<std::size_t> damaged;     ///< Numbers of parts that are there, but beyond repair.
    std::vector<std::string> repairs;  ///< What was put right in the parts.

    bool isWhole() const { return slices.size() == head.parts; }

    /// "parts 2 and 4 to 6 of 9 are missing; ask for them"; empty if all that are missing are
    /// there, but damaged. Longer lists are cut.
    std::string missing() const;
};

/// Memory: what the parts themselves hold.
class PartPool {
public:
    static constexpr std::size_t kMostCodes = 4096;

    /// Takes a part that begins at `glyph`, parts in the order of the text. One that was there
    /// already is dropped. False if it belongs to one code more than kMostCodes.
    bool add(Part part, std::size_t glyph, std::vector<std::string> repairs);

    void addDamaged(const PartHead& head, std::size_t glyph);

    /// All codes, in the order of the text.
    std::vector<GatheredParts> take() && { return std::move(m_codes); }

private:
    /// The code that a part belongs to; nullptr if it would be one too many.
    GatheredParts* codeOf(const PartHead& head, std::size_t glyph);

    std::vector<GatheredParts> m_codes;
    std::unordered_map<std::uint64_t, std::size_t> m_byKey;  ///< By check value and parts.
};

}  // namespace pantile::codec
