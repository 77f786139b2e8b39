#pragma once

// What is kept of pictures so that those that look alike are found without reading them all. The
// meaning of the figures is not known here: docs/look-alikes.md.

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "catalogue/library.h"
#include "core/geometry.h"
#include "core/ids.h"
#include "core/result.h"

namespace pantile::catalogue {

struct LookFigures {
    std::uint32_t shape = 0;
    std::array<std::uint8_t, 4> means{};
    std::array<std::uint8_t, 16> lights{};

    bool operator==(const LookFigures&) const = default;
};

/// A texture whose present picture has no look.
struct MissingLook {
    std::int64_t contentId = 0;
    core::TextureId id;

    bool operator==(const MissingLook&) const = default;
};

/// Those with a content beyond `afterContent`, ascending by content, at most `most`. Cost: quick
/// where all have one.
core::Result<std::vector<MissingLook>> missingLooks(const Library& library,
                                                    std::int64_t afterContent, std::int64_t most);

/// Keeps it with the texture's present picture. Errors: NotFound.
core::Result<void> storeLook(Library& library, core::TextureId id, const LookFigures& look);

/// The texture's own, if it has one, removed or not.
core::Result<std::optional<LookFigures>> readLook(const Library& library, core::TextureId id);

/// Those not removed, ascending by id.
core::Result<std::vector<core::TextureId>> texturesOfShape(const Library& library,
                                                           std::uint32_t shape);

/// From the first to the last of each of the means, both included.
struct MeanRanges {
    std::array<std::uint8_t, 4> least{};
    std::array<std::uint8_t, 4> most{255, 255, 255, 255};
};

/// The look of a content, which need not be that of a texture now.
struct ContentLook {
    std::int64_t contentId = 0;
    LookFigures look;

    bool operator==(const ContentLook&) const = default;
};

/// Ascending by content. Cost: passes through all looks.
core::Result<std::vector<ContentLook>> looksWithin(const Library& library,
                                                   const MeanRanges& ranges);

struct PresentTexture {
    core::TextureId id;
    core::Size size;

    bool operator==(const PresentTexture&) const = default;
};

/// The texture that has the content now and is not removed, if there is one.
core::Result<std::optional<PresentTexture>> textureOfContent(const Library& library,
                                                             std::int64_t contentId);

/// Textures not removed that share their shape with another, ascending; each list has at least two,
/// and the lists ascend by their first.
core::Result<std::vector<std::vector<core::TextureId>>> sharedShapes(const Library& library);

}  // namespace pantile::catalogue
