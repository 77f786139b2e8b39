#pragma once

#include <string>
#include <utility>

#include "core/result.h"

namespace pantile::codec {

/// What is told of a code that is not as its page says.
inline core::Error corruptCode(std::string message) {
    return {core::ErrorKind::Corrupt, std::move(message), "ask for the code again"};
}

}  // namespace pantile::codec
