#pragma once

// The pictures that open_art.py makes, as textures.

#include <algorithm>
#include <cstdint>
#include <filesystem>
#include <iostream>
#include <vector>

#include "core/texture.h"
#include "image_files/read_image.h"
#include "picture/exact_indexed.h"

namespace pantile::bench {

/// The folders in `folder`, in the order of their names: one for each class of art.
inline std::vector<std::filesystem::path> foldersIn(const std::filesystem::path& folder) {
    std::vector<std::filesystem::path> folders;
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        if (entry.is_directory()) {
            folders.push_back(entry.path());
        } else {
            std::cerr << entry.path().string() << " is no folder, and left out\n";
        }
    }
    std::sort(folders.begin(), folders.end());
    return folders;
}

/// Every indexed picture of `folder`, in the order of the names.
inline std::vector<core::Texture> texturesIn(const std::filesystem::path& folder) {
    std::vector<std::filesystem::path> paths;
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        paths.push_back(entry.path());
    }
    std::sort(paths.begin(), paths.end());
    std::vector<core::Texture> textures;
    for (const std::filesystem::path& path : paths) {
        const auto picture = image_files::readImageFile(path);
        const auto kept = picture ? picture::keptIndexed(*picture) : std::nullopt;
        auto texture = kept ? core::Texture::create(kept->grid, kept->palette)
                            : core::Error{core::ErrorKind::InvalidInput, "no indexed picture", ""};
        if (texture) {
            textures.push_back(std::move(*texture));
        } else {
            std::cerr << path.string() << " is left out\n";
        }
    }
    return textures;
}

/// At most `most` of them, spread over the names, which often stand in families.
inline std::vector<core::Texture> spread(const std::vector<core::Texture>& textures,
                                         std::size_t most) {
    const std::size_t step = std::max<std::size_t>(1, textures.size() / most);
    std::vector<core::Texture> chosen;
    for (std::size_t i = 0; i < textures.size() && chosen.size() < most; i += step) {
        chosen.push_back(textures[i]);
    }
    return chosen;
}

}  // namespace pantile::bench
