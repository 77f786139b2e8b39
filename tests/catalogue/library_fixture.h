#pragma once

// A library in a folder of its own, with a clock that the test sets, and small textures to put in.

#include <cstdint>
#include <fstream>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include <gtest/gtest.h>

#include "catalogue/edit.h"
#include "catalogue/library.h"
#include "catalogue/writer.h"
#include "core/texture.h"
#include "support/matchers.h"
#include "support/random.h"
#include "support/temporary_folder.h"
#include "tasks/text_folding.h"

namespace pantile::tests {

/// For libraries that a test opens itself.
inline catalogue::OpenOptions plainOptions() {
    catalogue::OpenOptions options;
    options.folding = tasks::unicodeFolding();
    return options;
}

/// Noon of 1 January 2026, UTC.
inline constexpr std::int64_t kFirstNow = 1767268800;

inline core::Palette paletteOf(int colours, int shade = 0,
                               std::optional<core::PaletteIndex> transparent = std::nullopt) {
    std::vector<core::Rgb8> list;
    for (int i = 0; i < colours; ++i) {
        list.push_back({static_cast<std::uint8_t>(i), static_cast<std::uint8_t>(shade),
                        static_cast<std::uint8_t>(255 - i)});
    }
    return core::Palette::create(std::move(list), transparent).value();
}

/// A texture of random cells: with another seed, another picture.
inline core::Texture textureOf(std::uint64_t seed, core::TextureText text = {},
                               core::Size size = {16, 16}, int colours = 8) {
    Random random(seed);
    std::vector<core::PaletteIndex> cells;
    for (int i = 0; i < size.width * size.height; ++i) {
        cells.push_back(static_cast<core::PaletteIndex>(random.between(0, colours - 1)));
    }
    core::Grid grid = core::Grid::create(size.width, size.height, std::move(cells)).value();
    return core::Texture::create(std::move(grid), paletteOf(colours), std::move(text)).value();
}

inline core::TextureText titled(std::string title, std::vector<std::string> tags = {}) {
    core::TextureText text;
    text.title = std::move(title);
    text.tags = std::move(tags);
    return text;
}

inline catalogue::TextPatch withTitle(const std::string& title) {
    catalogue::TextPatch patch;
    patch.title = title;
    return patch;
}

inline std::string readBytes(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

inline void writeBytes(const std::filesystem::path& path, const std::string& bytes) {
    std::ofstream file(path, std::ios::binary | std::ios::trunc);
    file << bytes;
}

class LibraryTest : public ::testing::Test {
protected:
    LibraryTest() { open(); }

    /// Closes the library and opens it again.
    void open() {
        close();
        auto opened = catalogue::Library::open(path(), options());
        ASSERT_THAT(opened, isOk());
        m_library = std::make_unique<catalogue::Library>(*std::move(opened));
    }

    void close() { m_library.reset(); }

    catalogue::OpenOptions options() const {
        catalogue::OpenOptions options = plainOptions();
        options.now = [this] { return now; };
        options.busyTimeout = std::chrono::milliseconds(0);
        return options;
    }

    std::filesystem::path path() const { return m_folder.path() / "library.db"; }

    std::filesystem::path folder() const { return m_folder.path(); }

    catalogue::Library& library() { return *m_library; }

    core::TextureId add(const core::Texture& texture) {
        const auto added = catalogue::addTexture(library(), texture);
        EXPECT_THAT(added, isOk());
        return added ? added->id : core::TextureId{};
    }

    /// Runs SQL past the library's functions, as a forger would.
    void forge(const std::string& sql) {
        EXPECT_THAT(library().connection().execute(sql), isOk()) << sql;
    }

    std::int64_t now = kFirstNow;

private:
    TemporaryFolder m_folder;
    std::unique_ptr<catalogue::Library> m_library;
};

}  // namespace pantile::tests
