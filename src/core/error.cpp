#include "core/error.h"

namespace pantile::core {

std::string_view errorKindName(ErrorKind kind) {
    switch (kind) {
        case ErrorKind::Usage:
            return "usage";
        case ErrorKind::InvalidInput:
            return "invalid-input";
        case ErrorKind::Corrupt:
            return "corrupt";
        case ErrorKind::ChecksumMismatch:
            return "checksum-mismatch";
        case ErrorKind::Unsupported:
            return "unsupported";
        case ErrorKind::NotFound:
            return "not-found";
        case ErrorKind::AlreadyExists:
            return "already-exists";
        case ErrorKind::TooLarge:
            return "too-large";
        case ErrorKind::DoesNotFit:
            return "does-not-fit";
        case ErrorKind::Busy:
            return "busy";
        case ErrorKind::Cancelled:
            return "cancelled";
        case ErrorKind::Io:
            return "io";
        case ErrorKind::Internal:
            return "internal";
    }
    return "internal";
}

Error Error::at(std::string_view place) const {
    return {kind, std::string(place) + ": " + message, hint};
}

}  // namespace pantile::core
