#pragma once

#include <cstdint>
#include <string_view>

#include "cli/command.h"

namespace pantile::cli {

/// How many were changed, as JSON, or the sentence (without its full stop) for people.
Outcome answerChanged(Session& session, std::int64_t changed, std::string_view sentence);

}  // namespace pantile::cli
