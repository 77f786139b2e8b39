#include "core/nearest_word.h"

#include <algorithm>
#include <cstddef>
#include <vector>

namespace pantile::core {
namespace {

// The number of single-letter slips (change, loss, addition, swap of neighbours) between two words.
std::size_t slipsBetween(std::string_view a, std::string_view b) {
    std::vector<std::vector<std::size_t>> d(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
    for (std::size_t i = 0; i <= a.size(); ++i) d[i][0] = i;
    for (std::size_t j = 0; j <= b.size(); ++j) d[0][j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t change = a[i - 1] == b[j - 1] ? 0 : 1;
            d[i][j] = std::min({d[i - 1][j] + 1, d[i][j - 1] + 1, d[i - 1][j - 1] + change});
            const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
            if (swapped) d[i][j] = std::min(d[i][j], d[i - 2][j - 2] + 1);
        }
    }
    return d[a.size()][b.size()];
}

}  // namespace

std::optional<std::string_view> nearestWord(std::string_view word,
                                            std::span<const std::string_view> known) {
    constexpr std::size_t kLongestGuessed = 40;
    if (word.size() > kLongestGuessed) return std::nullopt;
    std::optional<std::string_view> nearest;
    // Two slips in a word of three letters leave next to nothing of it.
    constexpr std::size_t kShort = 3;
    std::size_t least = (word.size() <= kShort ? 1 : std::max<std::size_t>(2, word.size() / 3)) + 1;
    for (const std::string_view candidate : known) {
        const std::size_t slips = slipsBetween(word, candidate);
        if (slips < least) {
            least = slips;
            nearest = candidate;
        }
    }
    return nearest;
}

std::string didYouMean(std::string_view word, std::span<const std::string_view> known,
                       std::string_view otherwise) {
    const auto nearest = nearestWord(word, known);
    return nearest ? "did you mean " + std::string(*nearest) + "?" : std::string(otherwise);
}

}  // namespace pantile::core
