#pragma once

// Slips of the hand and worse, done to codes with seeded random numbers: for the tests of repairing
// and for the long run in tests/soak.

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "codec/base58.h"
#include "support/random.h"

namespace pantile::tests {

enum class Slip { Wrong, Missing, Doubled, Swapped };

/// Letters, marks, what looks like marks, and what a hand may strike beside them.
inline const std::string& typedLetters() {
    static const std::string letters = std::string(codec::kBase58Digits) + "0OIl .-?,";
    return letters;
}

inline std::size_t placeIn(Random& random, const std::string& text) {
    return static_cast<std::size_t>(random.between(0, static_cast<int>(text.size()) - 1));
}

/// One slip at `at`, which must lie inside `text`. Swapping takes the next letter, at the end the
/// one before.
inline void slipAt(std::string& text, std::size_t at, Slip slip, char wrong) {
    switch (slip) {
        case Slip::Wrong:
            text[at] = wrong;
            break;
        case Slip::Missing:
            text.erase(at, 1);
            break;
        case Slip::Doubled:
            text.insert(at, 1, text[at]);
            break;
        case Slip::Swapped:
            std::swap(text[at], text[at + 1 < text.size() ? at + 1 : at - 1]);
            break;
    }
}

inline void slipAnywhere(Random& random, std::string& text) {
    const auto slip = static_cast<Slip>(random.between(0, 3));
    const char wrong = typedLetters()[static_cast<std::size_t>(
        random.between(0, static_cast<int>(typedLetters().size()) - 1))];
    if (text.size() > 1) slipAt(text, placeIn(random, text), slip, wrong);
}

/// Damage of any kind: one to six slips, now and then a line lost, doubled or moved, or a piece cut
/// out or put elsewhere.
inline std::string damaged(Random& random, std::string text) {
    for (int slips = random.between(1, 6); slips > 0; --slips) slipAnywhere(random, text);
    if (random.between(0, 3) > 0) return text;
    const std::size_t first = placeIn(random, text);
    const std::size_t length =
        std::min<std::size_t>(static_cast<std::size_t>(random.between(1, 40)), text.size() - first);
    const std::string piece = text.substr(first, length);
    if (random.between(0, 2) > 0) text.erase(first, length);
    if (!text.empty() && random.between(0, 2) > 0) text.insert(placeIn(random, text), piece);
    return text;
}

}  // namespace pantile::tests
