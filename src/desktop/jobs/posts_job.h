#pragma once

// The posts of what is chosen, as they will be pasted.

#include <cstdint>
#include <filesystem>
#include <vector>

#include <QString>

#include "core/ids.h"
#include "core/progress.h"
#include "core/result.h"
#include "tasks/share_codes.h"

namespace pantile::desktop {

struct PostsRequest {
    std::filesystem::path libraryPath;
    std::vector<core::TextureId> ids;
    tasks::ShareOptions options;
    bool asSet = false;  ///< All in one code, if there are several.
};

struct Post {
    QString words;  ///< "kelp, part 1 of 3 · 1990 characters"; fit to be shown.
    QString text;
};

struct Posts {
    std::vector<Post> posts;
    std::int64_t bytes = 0;       ///< Of all codes, before they became text.
    std::int64_t characters = 0;  ///< Of all posts.
};

/// Errors: as tasks::makeCodes and tasks::makeSetCode.
core::Result<Posts> makePosts(const PostsRequest& request, const core::Progress& progress);

}  // namespace pantile::desktop
