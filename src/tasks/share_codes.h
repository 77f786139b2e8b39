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

namespace pantile::tasks {

struct SharedCode {
    core::TextureId id;
    std::string title;
    std::string author;
    std::string licence;
    codec::TextCode code;
};

/// Errors: NotFound; Corrupt if a stored texture is damaged; as codec::encodeTextCode; Cancelled.
core::Result<std::vector<SharedCode>> makeCodes(const catalogue::Library& library,
                                                const std::vector<core::TextureId>& ids,
                                                const codec::EncodeOptions& options,
                                                const core::Progress& progress = {});

/// Finds palettes that the library knows, for codes that carry only a palette's fingerprint.
/// Ownership: `library` must outlive the function.
codec::PaletteLookup paletteLookup(const catalogue::Library& library);

}  // namespace pantile::tasks
