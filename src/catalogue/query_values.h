#pragma once

// The values that stand behind a key in a query: numbers, sizes, times to draw, colours, dates.

#include <cstdint>
#include <optional>
#include <string_view>

#include "core/colour.h"
#include "core/geometry.h"

namespace pantile::catalogue {

/// Digits alone, up to 10^15.
std::optional<std::int64_t> parseCount(std::string_view text);

/// "32x16".
std::optional<core::Size> parseSize(std::string_view text);

/// "90", "90s", "1.5m", "1m30s", "1h"; up to three decimals. Units: the result is in milliseconds.
std::optional<std::int64_t> parseDuration(std::string_view text);

/// "#3a6b4c" or "#3a6b4c~10", the distance with up to three decimals and 0 where there is none.
/// Units: thousandths of CIEDE2000.
struct NearColour {
    core::Rgb8 colour;
    std::int64_t thousandths = 0;
};

std::optional<NearColour> parseNearColour(std::string_view text);

/// "17" or "17~10", the distance from 0 to 100.
struct LikeValue {
    std::int64_t id = 0;
    std::optional<int> within;
};

std::optional<LikeValue> parseLike(std::string_view text);

/// Unix seconds in UTC, from the first of the period up to, not with, the first after it.
struct Period {
    std::int64_t begin = 0;
    std::int64_t end = 0;
};

/// A year, month or day: "2026", "2026-01", "2026-01-31".
std::optional<Period> parsePeriod(std::string_view text);

}  // namespace pantile::catalogue
