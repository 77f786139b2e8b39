#pragma once

// What a library knows of a texture.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/geometry.h"
#include "core/ids.h"
#include "core/texture.h"

namespace pantile::catalogue {

inline constexpr std::size_t kMaxProfileKeyCharacters = 200;

/// What drawing and loading a texture would take.
struct Estimate {
    std::int64_t drawMs = 0;
    std::int64_t loadBytes = 0;
    std::string profileKey;  ///< Names the settings it holds for; the caller's words.

    bool operator==(const Estimate&) const = default;
};

inline constexpr int kMostStars = 5;

struct TextureRow {
    core::TextureId id;
    std::string title;
    std::string author;
    std::string licence;
    std::string source;
    std::string note;
    core::Size size;
    int colours = 0;  ///< Palette entries that occur, the transparent one not counted.
    int stars = 0;    ///< 1 to 5 as its owner likes it, 0 for none given.
    std::vector<std::string> tags;     ///< Sorted.
    std::vector<std::string> shelves;  ///< In the order of the shelves.
    std::int64_t addedAt = 0;          ///< Unix seconds, as all times.
    std::int64_t changedAt = 0;
    bool removed = false;
    int revision = 1;  ///< The number of the latest one.
    std::optional<Estimate> estimate;

    bool operator==(const TextureRow&) const = default;
};

struct TextureRecord {
    TextureRow row;
    core::Texture texture;
};

}  // namespace pantile::catalogue
