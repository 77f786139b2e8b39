#pragma once

// A library in a folder of the test's own, with small textures that differ, and waiting.

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include <QTest>

#include <gtest/gtest.h>

#include "catalogue/writer.h"
#include "support/temporary_folder.h"
#include "tasks/library_place.h"

namespace pantile::tests {

/// Shape: side x side cells; `seed` tells its cells apart from those of others.
inline core::Texture smallTexture(const std::string& title, int seed, int side = 8) {
    std::vector<core::PaletteIndex> cells(static_cast<std::size_t>(side) *
                                          static_cast<std::size_t>(side));
    for (std::size_t i = 0; i < cells.size(); ++i) {
        const std::size_t bits = static_cast<std::size_t>(seed) >> (i % 16U);
        cells[i] = static_cast<core::PaletteIndex>(bits % 3U);
    }
    core::TextureText text;
    text.title = title;
    text.author = "Tidewrack studio";
    return *core::Texture::create(
        *core::Grid::create(side, side, std::move(cells)),
        *core::Palette::create({{27, 38, 49}, {184, 170, 120}, {90, 120, 80}}), std::move(text));
}

class LibraryFolder {
public:
    LibraryFolder() : m_library(open()) {}

    std::string path() const { return (m_folder.path() / "library.db").string(); }

    std::string path(const std::string& name) const { return (m_folder.path() / name).string(); }

    /// A connection of the test's own, as another program would have.
    catalogue::Library& library() { return m_library; }

    catalogue::Library open() const {
        auto opened = tasks::openLibrary(path(), tasks::Purpose::Change);
        if (!opened) throw std::runtime_error(opened.error().message);
        return *std::move(opened);
    }

    core::TextureId add(const core::Texture& texture) {
        const auto added = catalogue::addTexture(m_library, texture);
        EXPECT_TRUE(added.has_value());
        return added ? added->id : core::TextureId{};
    }

    /// As one change: hundreds of syncs to the disk would take long.
    std::vector<core::TextureId> addMany(int count) {
        auto change = m_library.begin();
        EXPECT_TRUE(change.has_value());
        std::vector<core::TextureId> ids;
        for (int i = 0; i < count; ++i)
            ids.push_back(add(smallTexture("shingle " + std::to_string(i), i)));
        EXPECT_TRUE(change->commit().has_value());
        return ids;
    }

private:
    TemporaryFolder m_folder;
    catalogue::Library m_library;
};

/// Lets the window work until `condition` holds; false if it does not within a minute.
inline bool comes(const std::function<bool()>& condition) {
    constexpr int kLongestMs = 60000;  // sanitizers on a busy machine take their time
    return QTest::qWaitFor(condition, kLongestMs);
}

}  // namespace pantile::tests
