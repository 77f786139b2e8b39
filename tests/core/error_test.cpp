#include "core/error.h"

#include <memory>
#include <string>
#include <string_view>
#include <utility>

#include "core/result.h"
#include "support/matchers.h"

namespace pantile::core {
namespace {

Result<int> half(int value) {
    if (value % 2 == 0) return value / 2;
    return Error{ErrorKind::InvalidInput, std::to_string(value) + " is odd", "give an even number"};
}

Result<int> quarter(int value) {
    PANTILE_ASSIGN_OR_RETURN(const int once, half(value));
    return half(once);
}

Result<void> checkQuarter(int value) {
    PANTILE_RETURN_IF_ERROR(quarter(value));
    return {};
}

// docs/command-line.md promises these words to scripts.
TEST(ErrorKind, HasTheWordThatScriptsRelyOn) {
    const std::pair<ErrorKind, std::string_view> words[] = {
        {ErrorKind::Usage, "usage"},
        {ErrorKind::InvalidInput, "invalid-input"},
        {ErrorKind::Corrupt, "corrupt"},
        {ErrorKind::ChecksumMismatch, "checksum-mismatch"},
        {ErrorKind::Unsupported, "unsupported"},
        {ErrorKind::NotFound, "not-found"},
        {ErrorKind::AlreadyExists, "already-exists"},
        {ErrorKind::TooLarge, "too-large"},
        {ErrorKind::DoesNotFit, "does-not-fit"},
        {ErrorKind::Busy, "busy"},
        {ErrorKind::Cancelled, "cancelled"},
        {ErrorKind::Io, "io"},
        {ErrorKind::Internal, "internal"}};
    for (const auto& [kind, word] : words) EXPECT_EQ(errorKindName(kind), word);
}

TEST(Result, HandsValuesAndErrorsUp) {
    EXPECT_EQ(*quarter(12), 3);
    EXPECT_EQ(quarter(6).error().message, "3 is odd");
    EXPECT_TRUE(checkQuarter(4));
    EXPECT_EQ(checkQuarter(5).error().hint, "give an even number");
}

TEST(Result, CarriesMoveOnlyValues) {
    Result<std::unique_ptr<int>> result = std::make_unique<int>(7);
    const std::unique_ptr<int> taken = *std::move(result);
    EXPECT_EQ(*taken, 7);
}

TEST(Error, PlaceLeadsTheMessage) {
    const Error error{ErrorKind::Corrupt, "it ends early", "copy it again"};
    EXPECT_EQ(error.at("kelp.png"),
              (Error{ErrorKind::Corrupt, "kelp.png: it ends early", "copy it again"}));
}

TEST(Error, KindsHaveStableWords) {
    EXPECT_EQ(errorKindName(ErrorKind::NotFound), "not-found");
    EXPECT_EQ(errorKindName(ErrorKind::DoesNotFit), "does-not-fit");
}

}  // namespace
}  // namespace pantile::core
