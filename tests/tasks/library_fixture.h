#pragma once

// A new library in a folder of the test's own, and small textures to put into it.

#include <string>
#include <vector>

#include "catalogue/reader.h"
#include "catalogue/writer.h"
#include "support/matchers.h"
#include "support/random.h"
#include "support/temporary_folder.h"
#include "tasks/files.h"
#include "tasks/library_place.h"

namespace pantile::tests {

class LibraryFixture : public ::testing::Test {
protected:
    LibraryFixture() : m_library(*tasks::openLibrary(path("library.db"), tasks::Purpose::Change)) {}

    std::string path(const std::string& name) const { return (m_folder.path() / name).string(); }

    std::string write(const std::string& name, std::string_view text) const {
        EXPECT_THAT(tasks::makeFolder((m_folder.path() / name).parent_path()), isOk());
        EXPECT_THAT(tasks::writeFile(path(name), text, tasks::IfExists::Refuse), isOk());
        return path(name);
    }

    /// `side` x `side` cells of four colours, as `seed` says.
    static core::Texture texture(int seed, int side = 8) {
        Random random(static_cast<std::uint64_t>(seed));
        std::vector<core::PaletteIndex> cells(static_cast<std::size_t>(side * side));
        for (core::PaletteIndex& cell : cells)
            cell = static_cast<core::PaletteIndex>(random.between(0, 3));
        core::TextureText text;
        text.title = "Tile " + std::to_string(seed);
        text.author = "Mara Quill";
        text.licence = "CC0-1.0";
        text.tags = {"tile"};
        return *core::Texture::create(
            *core::Grid::create(side, side, std::move(cells)),
            *core::Palette::create({{27, 38, 49}, {242, 239, 228}, {181, 83, 45}, {79, 111, 82}}),
            text);
    }

    core::TextureId add(const core::Texture& texture) {
        const auto added = catalogue::addTexture(m_library, texture);
        EXPECT_THAT(added, isOk());
        return added->id;
    }

    std::int64_t textureCount() const { return catalogue::findTextures(m_library, {})->total; }

    TemporaryFolder m_folder;
    catalogue::Library m_library;
};

}  // namespace pantile::tests
