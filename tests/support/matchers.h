#pragma once

// Matchers for Result: EXPECT_THAT(result, isOk()), EXPECT_THAT(result, failsWith(kind, "words of
// it")).

#include <ostream>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/error.h"

namespace pantile::core {

inline void PrintTo(const Error& error, std::ostream* out) {
    *out << errorKindName(error.kind) << ": " << error.message << " (" << error.hint << ")";
}

}  // namespace pantile::core

namespace pantile::tests {

MATCHER(isOk, "is a value") {
    if (arg.has_value()) return true;
    *result_listener << "it is the error " << ::testing::PrintToString(arg.error());
    return false;
}

MATCHER_P2(failsWith, kind, words, "is an error of the kind, with the words in its message") {
    if (arg.has_value()) {
        *result_listener << "it is a value";
        return false;
    }
    *result_listener << "it is the error " << ::testing::PrintToString(arg.error());
    return arg.error().kind == kind &&
           arg.error().message.find(std::string(words)) != std::string::npos;
}

}  // namespace pantile::tests
