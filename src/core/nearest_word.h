#pragma once

// Guesses what a mistyped word was meant to be.

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace pantile::core {

/// The word of `known` that is nearest to `word` by single-letter slips (change, loss, addition,
/// swap of neighbours), if one is near enough to be a slip of the keys.
std::optional<std::string_view> nearestWord(std::string_view word,
                                            std::span<const std::string_view> known);

/// "did you mean --canvas?" or, where nothing is near, `otherwise`.
std::string didYouMean(std::string_view word, std::span<const std::string_view> known,
                       std::string_view otherwise);

}  // namespace pantile::core
