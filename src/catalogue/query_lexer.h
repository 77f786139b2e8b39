#pragma once

// Splits a query into brackets, bars, minus signs, words, phrases and filters.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "core/result.h"

namespace pantile::catalogue {

struct QueryToken {
    enum class Kind { Text, KeyAndValue, Minus, Bar, Open, Close };
    Kind kind = Kind::Text;
    std::size_t place = 0;  ///< Offset of its first byte in the query.
    std::string key;        ///< Of KeyAndValue: "tag".
    std::string sign;       ///< Of KeyAndValue: ":", "<", "<=", "=", ">=" or ">".
    std::size_t valuePlace = 0;
    std::string value;    ///< The text searched for, or what follows the sign; quotes taken off.
    bool quoted = false;  ///< Whether the value stood in quotes.
};

/// Errors: InvalidInput for a quote without its end, and as core::checkText.
core::Result<std::vector<QueryToken>> lexQuery(std::string_view query);

/// An error at a place of a query: its column in the message; line, caret and advice in the hint.
core::Error queryError(std::string_view query, std::size_t place, const std::string& message,
                       const std::string& advice);

}  // namespace pantile::catalogue
