#include "catalogue/query_values.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <chrono>

namespace pantile::catalogue {
namespace {

constexpr std::size_t kMaxDigits = 15;

/// Takes digits off the front of `text`.
std::optional<std::int64_t> takeDigits(std::string_view& text, std::size_t mostDigits) {
    std::size_t count = 0;
    while (count < text.size() && text[count] >= '0' && text[count] <= '9') ++count;
    if (count == 0 || count > mostDigits) return std::nullopt;
    std::int64_t value = 0;
    std::from_chars(text.data(), text.data() + count, value);
    text.remove_prefix(count);
    return value;
}

/// Takes "90" or "1.25" off the front; in thousandths.
std::optional<std::int64_t> takeDecimal(std::string_view& text) {
    constexpr std::size_t kMostWholeDigits = 9;
    constexpr std::size_t kDecimals = 3;
    const auto whole = takeDigits(text, kMostWholeDigits);
    if (!whole) return std::nullopt;
    if (!text.starts_with('.')) return *whole * 1000;
    text.remove_prefix(1);
    const std::size_t before = text.size();
    auto fraction = takeDigits(text, kDecimals);
    if (!fraction) return std::nullopt;
    for (std::size_t digits = before - text.size(); digits < kDecimals; ++digits) *fraction *= 10;
    return *whole * 1000 + *fraction;
}

std::int64_t secondsAt(std::chrono::year_month_day day) {
    return std::chrono::sys_seconds(std::chrono::sys_days(day)).time_since_epoch().count();
}

}  // namespace

std::optional<std::int64_t> parseCount(std::string_view text) {
    const auto value = takeDigits(text, kMaxDigits);
    if (!text.empty()) return std::nullopt;
    return value;
}

std::optional<core::Size> parseSize(std::string_view text) {
    constexpr std::size_t kMostDigits = 6;
    const auto width = takeDigits(text, kMostDigits);
    if (!width || !(text.starts_with('x') || text.starts_with('X'))) return std::nullopt;
    text.remove_prefix(1);
    const auto height = takeDigits(text, kMostDigits);
    if (!height || !text.empty()) return std::nullopt;
    return core::Size{static_cast<int>(*width), static_cast<int>(*height)};
}

std::optional<std::int64_t> parseDuration(std::string_view text) {
    struct Unit {
        char letter;
        std::int64_t seconds;
    };

    constexpr std::array<Unit, 3> kUnits = {{{'h', 3600}, {'m', 60}, {'s', 1}}};
    std::int64_t milliseconds = 0;
    std::size_t next = 0;  // The largest unit that may still follow.
    do {
        const auto number = takeDecimal(text);
        if (!number) return std::nullopt;
        // Seconds need no letter, alone or behind minutes.
        const bool bare = text.empty() && next != 1;
        const char letter = bare ? 's' : text.empty() ? '\0' : text.front();
        const auto* const unit =
            std::find_if(kUnits.begin() + static_cast<std::ptrdiff_t>(next), kUnits.end(),
                         [letter](const Unit& each) { return each.letter == letter; });
        if (unit == kUnits.end()) return std::nullopt;
        if (!bare) text.remove_prefix(1);
        milliseconds += *number * unit->seconds;
        next = static_cast<std::size_t>(unit - kUnits.begin()) + 1;
    } while (!text.empty());
    return milliseconds;
}

std::optional<NearColour> parseNearColour(std::string_view text) {
    const std::size_t tilde = std::min(text.find('~'), text.size());
    const auto colour = core::parseHexColour(text.substr(0, tilde));
    if (!colour) return std::nullopt;
    if (tilde == text.size()) return NearColour{*colour, 0};
    text.remove_prefix(tilde + 1);
    const auto distance = takeDecimal(text);
    if (!distance || !text.empty()) return std::nullopt;
    return NearColour{*colour, *distance};
}

std::optional<LikeValue> parseLike(std::string_view text) {
    constexpr std::int64_t kFarthest = 100;
    const std::size_t tilde = std::min(text.find('~'), text.size());
    const auto id = parseCount(text.substr(0, tilde));
    if (!id) return std::nullopt;
    if (tilde == text.size()) return LikeValue{*id, std::nullopt};
    const auto within = parseCount(text.substr(tilde + 1));
    if (!within || *within > kFarthest) return std::nullopt;
    return LikeValue{*id, static_cast<int>(*within)};
}

std::optional<Period> parsePeriod(std::string_view text) {
    namespace chrono = std::chrono;
    constexpr std::size_t kYearDigits = 4;
    constexpr std::size_t kOtherDigits = 2;
    const auto yearNumber = takeDigits(text, kYearDigits);
    if (!yearNumber || *yearNumber < 1) return std::nullopt;
    const chrono::year year(static_cast<int>(*yearNumber));
    if (text.empty()) {
        return Period{secondsAt(year / chrono::January / 1),
                      secondsAt((year + chrono::years(1)) / chrono::January / 1)};
    }
    if (!text.starts_with('-')) return std::nullopt;
    text.remove_prefix(1);
    const auto monthNumber = takeDigits(text, kOtherDigits);
    if (!monthNumber) return std::nullopt;
    const chrono::year_month month = year / chrono::month(static_cast<unsigned>(*monthNumber));
    if (!month.ok()) return std::nullopt;
    if (text.empty()) {
        return Period{secondsAt(month / 1), secondsAt((month + chrono::months(1)) / 1)};
    }
    if (!text.starts_with('-')) return std::nullopt;
    text.remove_prefix(1);
    const auto dayNumber = takeDigits(text, kOtherDigits);
    if (!dayNumber || !text.empty()) return std::nullopt;
    const chrono::year_month_day day = month / chrono::day(static_cast<unsigned>(*dayNumber));
    if (!day.ok()) return std::nullopt;
    constexpr std::int64_t kSecondsPerDay = 86400;
    return Period{secondsAt(day), secondsAt(day) + kSecondsPerDay};
}

}  // namespace pantile::catalogue
