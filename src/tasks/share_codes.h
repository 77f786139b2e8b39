#pragma once

// Share: textures of the library as codes, and codes in a text as textures.

#include <string>
#include <string_view>
#include <vector>

#include "catalogue/library.h"
#include "codec/text_code.h"
#include "core/ids.h"
#include "core/progress.h"
#include "core/result.h"
#include "tasks/code_posts.h"

namespace pantile::tasks {

struct ShareOptions {
    codec::EncodeOptions code;
    PostOptions posts;
};

struct SharedCode {
    std::vector<core::TextureId> ids;  ///< What it holds: one texture, or those of a set.
    Credit credit;
    codec::TextCode code;
    std::vector<std::string> posts;  ///< What to paste; the code alone if nothing else was asked.
};

/// Errors: NotFound; Corrupt if a stored texture is damaged; as codec::encodeTextCode and
/// codePosts; Cancelled.
core::Result<std::vector<SharedCode>> makeCodes(const catalogue::Library& library,
                                                const std::vector<core::TextureId>& ids,
                                                const ShareOptions& options,
                                                const core::Progress& progress = {});

/// One code for all of `ids`; its words name what is the same in all of them. Errors: as makeCodes
/// and codec::encodeSetCode.
core::Result<SharedCode> makeSetCode(const catalogue::Library& library,
                                     const std::vector<core::TextureId>& ids,
                                     const ShareOptions& options);

/// Finds palettes that the library knows, for codes that carry only a palette's fingerprint.
/// Ownership: `library` must outlive the function.
codec::PaletteLookup paletteLookup(const catalogue::Library& library);

}  // namespace pantile::tasks
