#pragma once

// The history of a texture: what was changed when, and the way back.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue/library.h"
#include "core/ids.h"
#include "core/result.h"

namespace pantile::catalogue {

/// Stored in libraries: never renumber.
enum class RevisionKind : unsigned char {
    Added = 1,
    Text = 2,
    Tags = 3,
    Removed = 4,
    Recovered = 5,
    Reverted = 6,
    Content = 7,
};

/// "added", "text", "tags", "removed", "recovered", "reverted", "content".
std::string_view revisionKindName(RevisionKind kind);

/// What the changed fields held before; those that the change left alone are unset.
struct RevisionBefore {
    std::optional<std::string> title;
    std::optional<std::string> author;
    std::optional<std::string> licence;
    std::optional<std::string> source;
    std::optional<std::string> note;
    std::optional<std::vector<std::string>> tags;
    std::optional<int> stars;
    std::optional<bool> removed;
    std::optional<std::int64_t> contentId;  ///< The library's own number of the picture.

    bool operator==(const RevisionBefore&) const = default;
};

struct Revision {
    int number = 0;  ///< From 1, which is the adding.
    std::int64_t at = 0;
    RevisionKind kind = RevisionKind::Added;
    RevisionBefore before;
};

/// Oldest first. Errors: NotFound.
core::Result<std::vector<Revision>> history(const Library& library, core::TextureId id);

/// Makes the texture what it was after `revision`, words, tags, picture, removed or not; that is a
/// new revision itself. Shelves are no part of it. Gives 1, or 0 if it was so already.
/// Errors: NotFound; AlreadyExists if another texture has that picture now.
core::Result<std::int64_t> revertTexture(Library& library, core::TextureId id, int revision);

}  // namespace pantile::catalogue
