// Reads PNG files that others made and writes them again; readers that are not ours say whether
// they are the same pictures. The files: Debian's package minetest-data (open tile art), and what
// Pillow and ImageMagick write.

#include <algorithm>
#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <set>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include "image_files/read_image.h"
#include "image_files/write_png.h"
#include "outside/run_program.h"
#include "picture/convert.h"
#include "support/matchers.h"
#include "support/temporary_folder.h"

namespace pantile {
namespace {

namespace fs = std::filesystem;

using Bytes = std::vector<std::uint8_t>;
using tests::inQuotes;
using tests::isOk;
using tests::Outcome;
using tests::pythonWithPillow;
using tests::run;
using tests::script;

std::vector<fs::path> pngsUnder(const fs::path& folder) {
    std::vector<fs::path> paths;
    if (!fs::exists(folder)) return paths;
    for (const fs::directory_entry& entry : fs::recursive_directory_iterator(folder)) {
        if (entry.path().extension() == ".png" && entry.is_regular_file())
            paths.push_back(entry.path());
    }
    std::sort(paths.begin(), paths.end());
    return paths;
}

// Our versions of other people's files, and the list that the comparing script reads.
class Versions {
public:
    void add(const std::string& kind, const fs::path& original, const core::Result<Bytes>& ours) {
        ASSERT_THAT(ours, isOk()) << original;
        const fs::path path = m_folder.path() / (std::to_string(m_count++) + ".png");
        std::ofstream(path, std::ios::binary)
            .write(reinterpret_cast<const char*>(ours->data()),
                   static_cast<std::streamsize>(ours->size()));
        m_list << kind << '\t' << original.string() << '\t' << path.string() << '\n';
    }

    Outcome compared(const std::string& python) {
        m_list.close();
        return run(python + " " + script("compare_pngs.py") + " " + inQuotes(listPath().string()));
    }

private:
    fs::path listPath() const { return m_folder.path() / "list"; }

    tests::TemporaryFolder m_folder;
    std::ofstream m_list{listPath()};
    int m_count = 0;
};

// True if a palette of at most 256 entries says all that the picture shows.
bool isTextureLike(const core::Pixels& pixels) {
    std::set<core::Rgb8> colours;
    bool hasTransparent = false;
    for (const core::Rgba8& pixel : pixels.pixels) {
        if (pixel.a != 0 && pixel.a != 255) return false;
        if (pixel.a == 0)
            hasTransparent = true;
        else
            colours.insert(pixel.rgb());
    }
    return pixels.size.width <= core::kMaxGridSide && pixels.size.height <= core::kMaxGridSide &&
           colours.size() + (hasTransparent ? 1 : 0) <= core::kMaxPaletteColours;
}

struct Counts {
    int pictures = 0;
    int indexed = 0;
    int cells = 0;
};

// `kind` is how the pixels are to be compared.
void addVersions(const std::string& kind, const fs::path& path, Versions& versions,
                 Counts& counts) {
    SCOPED_TRACE(path.string());
    const auto picture = image_files::readImageFile(path);
    ASSERT_THAT(picture, isOk());
    ++counts.pictures;
    versions.add(kind, path, image_files::encodePng(picture->pixels));
    if (!isTextureLike(picture->pixels)) return;

    picture::ConvertOptions options;
    options.fit = picture::Fit::Exact;
    options.colours = 0;
    const auto converted = picture::convertPicture(*picture, options);
    ASSERT_THAT(converted, isOk());
    const bool kept =
        picture::keptIndexed(*picture).has_value() && picture->indexed->table.size() > 1;
    versions.add(kept ? "indexed" : "cells", path,
                 image_files::encodePng(converted->grid, converted->palette));
    ++(kept ? counts.indexed : counts.cells);
}

TEST(PngRoundTrip, OfOpenTileArtIsTheSamePictureToPillow) {
    const std::vector<fs::path> paths = pngsUnder("/usr/share/games/minetest");
    if (paths.empty()) GTEST_SKIP() << "Debian's package minetest-data is not installed";
    const std::string python = pythonWithPillow();
    if (python.empty()) GTEST_SKIP() << "Debian's package python3-pil is not installed";
    Versions versions;
    Counts counts;
    for (const fs::path& path : paths) addVersions("pixels", path, versions, counts);
    EXPECT_GE(counts.pictures, 100);
    EXPECT_GE(counts.indexed, 50);
    EXPECT_GE(counts.cells, 50);
    const Outcome comparison = versions.compared(python);
    EXPECT_EQ(comparison.status, 0) << comparison.output;
    std::printf("%d pictures, %d with palette and indices, %d by their cells\n", counts.pictures,
                counts.indexed, counts.cells);
}

TEST(PngRoundTrip, OfPillowsOwnFilesIsTheSamePictureToPillow) {
    const std::string python = pythonWithPillow();
    if (python.empty()) GTEST_SKIP() << "Debian's package python3-pil is not installed";
    const tests::TemporaryFolder folder;
    const Outcome making =
        run(python + " " + script("make_pngs.py") + " " + inQuotes(folder.path().string()));
    ASSERT_EQ(making.status, 0) << making.output;
    Versions versions;
    Counts counts;
    // What colour an invisible pixel has is up to the reader if the file names one grey as
    // invisible.
    for (const fs::path& path : pngsUnder(folder.path()))
        addVersions("cells", path, versions, counts);
    EXPECT_EQ(counts.pictures, 28);
    // Seven without alphas, seven with one transparent colour, and two colours with alphas 0 and
    // 255.
    EXPECT_EQ(counts.indexed, 15);
    const Outcome comparison = versions.compared(python);
    EXPECT_EQ(comparison.status, 0) << comparison.output;
}

struct MagickCase {
    std::string name;
    std::string options;  // how the picture is written
    int tolerance = 0;    // 16 bits become 8 by rules that differ by one step
};

const std::vector<MagickCase>& magickCases() {
    static const std::vector<MagickCase> kCases{
        {"rgb", "PNG24:"},
        {"rgb-interlaced", "-interlace PNG PNG24:"},
        {"rgba", "-alpha set -channel A -fx 'i/w' +channel PNG32:"},
        {"rgb-16", "PNG48:", 1},
        {"rgba-16", "-alpha set -channel A -fx 'j/h' +channel PNG64:", 1},
        {"indexed", "-colors 100 PNG8:"},
        {"indexed-interlaced", "-colors 11 -interlace PNG PNG8:"},
        {"grey-8", "-colorspace Gray -define png:color-type=0 -define png:bit-depth=8 PNG:"},
        {"grey-4",
         "-colorspace Gray -depth 4 -define png:color-type=0 -define png:bit-depth=4 PNG:"},
        {"grey-2",
         "-colorspace Gray -depth 2 -define png:color-type=0 -define png:bit-depth=2 PNG:"},
        {"grey-1",
         "-colorspace Gray -threshold 50% -define png:color-type=0 -define png:bit-depth=1 PNG:"},
        {"grey-alpha",
         "-colorspace Gray -alpha set -channel A -fx 'i/w' +channel "
         "-depth 8 -define png:color-type=4 -define png:bit-depth=8 PNG:"},
    };
    return kCases;
}

TEST(PngReading, OfImageMagicksFilesGivesThePixelsThatImageMagickSees) {
    if (run("convert -version 2>/dev/null").status != 0)
        GTEST_SKIP() << "Debian's package imagemagick is not installed";
    const tests::TemporaryFolder folder;
    for (const MagickCase& made : magickCases()) {
        SCOPED_TRACE(made.name);
        const std::string path = (folder.path() / (made.name + ".png")).string();
        const Outcome making = run("convert -size 37x23 -seed 7 plasma:red-blue " + made.options +
                                   inQuotes(path) + " 2>&1");
        ASSERT_EQ(making.status, 0) << making.output;
        const Outcome seen = run("convert " + inQuotes(path) + " -depth 8 RGBA:-");
        const auto picture = image_files::readImageFile(path);
        ASSERT_THAT(picture, isOk());
        ASSERT_EQ(seen.output.size(), picture->pixels.pixels.size() * 4);
        int most = 0;
        for (std::size_t i = 0; i < seen.output.size(); ++i) {
            const core::Rgba8& pixel = picture->pixels.pixels[i / 4];
            const std::array<int, 4> ours{pixel.r, pixel.g, pixel.b, pixel.a};
            const int theirs = static_cast<std::uint8_t>(seen.output[i]);
            most = std::max(most, std::abs(ours.at(i % 4) - theirs));
        }
        EXPECT_LE(most, made.tolerance);
    }
}

}  // namespace
}  // namespace pantile
