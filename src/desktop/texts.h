#pragma once

// Words and figures as the window shows them.

#include <cstdint>
#include <optional>
#include <string_view>

#include <QString>

#include "catalogue/texture_row.h"
#include "core/error.h"

namespace pantile::desktop {

/// For our own texts, known to be good.
QString fromUtf8(std::string_view text);

/// Text that came from outside, with control, escape and direction characters made visible.
QString shownText(std::string_view text);

/// The same where line breaks are wanted.
QString shownLines(std::string_view text);

/// The title, or words that say that there is none.
QString shownTitle(std::string_view title);

/// `words` for a tool tip, which takes text for HTML if it looks like it; line breaks stay.
QString shownToolTip(const QString& words);

/// "4.8 s", "1 min 12 s", rounded as core::roundedDuration says. Units: milliseconds.
QString shownDuration(std::int64_t milliseconds);

/// "412 bytes", "1.2 KiB".
QString shownBytes(std::int64_t bytes);

/// "1 min 12 s · 412 bytes", or words that say that it is not known.
QString shownCost(const std::optional<catalogue::Estimate>& estimate);

/// "★★★☆☆", or words for none.
QString shownStars(int stars);

/// Day and time in the account's own time zone and form. Units: unix seconds.
QString shownTime(std::int64_t unixSeconds);

/// "32 × 16"
QString shownSize(core::Size size);

/// `one` or `many` by `number`, which takes the place of %1 in it. Both are translated in
/// `context`.
QString counted(const char* context, const char* one, const char* many, std::int64_t number);

/// What happened and what to do, each a sentence of its own, as plain text.
QString shownError(const core::Error& error);

}  // namespace pantile::desktop
