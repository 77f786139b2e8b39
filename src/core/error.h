#pragma once

// The one error type of the project: what went wrong, in a kind that a caller can act on, a
// sentence for the user, and a hint that says what to do about it.

#include <string>
#include <string_view>

namespace pantile::core {

enum class ErrorKind {
    Usage,         ///< The command or the setting itself was used wrongly.
    InvalidInput,  ///< What was given to work on is not right.
    Corrupt,
    ChecksumMismatch,
    Unsupported,
    NotFound,
    AlreadyExists,
    TooLarge,
    DoesNotFit,
    Busy,
    Cancelled,
    Io,
    Internal,
};

/// The kind as a stable word for scripts, such as "not-found".
std::string_view errorKindName(ErrorKind kind);

struct Error {
    ErrorKind kind = ErrorKind::Internal;
    std::string message;  ///< One sentence with the offending value and its place.
    std::string hint;     ///< What the user can do; may be empty.

    /// The same error, its message led by where it happened: "kelp.png: …".
    Error at(std::string_view place) const;

    bool operator==(const Error&) const = default;
};

}  // namespace pantile::core
