#pragma once

// `canvas calibrate`: writes what a board draws, and takes what was read off.

#include <string>

#include "cli/command.h"
#include "core/canvas.h"

namespace pantile::cli {

/// Two numbers with a comma between, such as 100,60, put into `field` if the option stands there.
/// Errors: Usage.
core::Result<void> readPlace(const Arguments& arguments, std::string_view option,
                             core::Point& field);

/// Writes the load for --board into --into, and answers.
core::Result<Outcome> writeCalibration(Session& session, const Arguments& arguments,
                                       const std::string& canvas);

/// The canvas as it stands after --near, --far and the pairs were taken; says what was found.
core::Result<core::Canvas> takeCalibration(Session& session, const Arguments& arguments,
                                           const std::string& canvas);

}  // namespace pantile::cli
