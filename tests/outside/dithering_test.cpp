// Dithers compared with those of Pillow and ImageMagick, by what an eye at a distance sees.

#include <filesystem>
#include <fstream>
#include <optional>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include "image_files/read_image.h"
#include "image_files/write_png.h"
#include "outside/run_program.h"
#include "picture/convert.h"
#include "picture/picture_difference.h"
#include "picture/pictures.h"
#include "picture/resample.h"
#include "support/matchers.h"
#include "support/temporary_folder.h"

namespace pantile {
namespace {

namespace fs = std::filesystem;

using core::Palette;
using picture::Dither;
using tests::isOk;

constexpr int kSide = 32;

core::Picture readPicture(const fs::path& path) {
    auto picture = image_files::readImageFile(path);
    EXPECT_THAT(picture, isOk()) << path;
    return {picture->pixels, std::nullopt};
}

core::Pixels reduced(const core::Picture& picture) {
    const auto cells = picture::resample(
        picture.pixels, picture::frame(picture.pixels.size, {kSide, kSide}, picture::Fit::Cover),
        picture::Scale::Area);
    EXPECT_THAT(cells, isOk());
    core::Pixels pixels{cells->size, {}};
    for (const picture::LinearPixel& cell : cells->pixels) {
        const core::Rgb8 colour = core::toRgb8(cell.colour);
        pixels.pixels.push_back({colour.r, colour.g, colour.b, 255});
    }
    return pixels;
}

double seenOf(const core::Picture& wanted, const core::Picture& shown) {
    return picture::meanPerceivedDifference(picture::cellsOf(wanted.pixels),
                                            picture::cellsOf(shown.pixels));
}

double seenOf(const core::Picture& wanted, Dither dither, const std::optional<Palette>& palette) {
    picture::ConvertOptions options;
    options.fit = picture::Fit::Exact;
    options.dither = dither;
    options.palette = palette;
    const auto made = picture::convertPicture(wanted, options);
    EXPECT_THAT(made, isOk());
    return picture::meanPerceivedDifference(picture::cellsOf(wanted.pixels),
                                            picture::coloursShown(made->grid, made->palette));
}

class Dithering : public testing::Test {
protected:
    void SetUp() override {
        fs::create_directories(m_folder.path() / "wanted" / "sea");
        const fs::path samples = fs::path(PANTILE_SOURCE_DIR) / "sample_library" / "pictures";
        for (const auto& entry : fs::directory_iterator(samples)) {
            const auto png = image_files::encodePng(reduced(readPicture(entry.path())));
            ASSERT_THAT(png, isOk());
            m_names.push_back(entry.path().filename().string());
            std::ofstream(file("wanted", m_names.back()), std::ios::binary)
                .write(reinterpret_cast<const char*>(png->data()),
                       static_cast<std::streamsize>(png->size()));
        }
        ASSERT_GE(m_names.size(), 4U);
    }

    fs::path file(const std::string& by, const std::string& name) const {
        return m_folder.path() / by / "sea" / name;
    }

    std::string quoted(const std::string& by) const {
        return tests::inQuotes((m_folder.path() / by).string());
    }

    tests::TemporaryFolder m_folder;
    std::vector<std::string> m_names;
};

TEST_F(Dithering, OfFixedColoursLooksFarBetterThanPillows) {
    const std::string python = tests::pythonWithPillow();
    if (python.empty()) GTEST_SKIP() << "Debian's package python3-pil is not installed";
    const auto made = tests::run(python + " " + tests::script("../bench/pillow_remap.py") + " " +
                                 quoted("wanted") + " " + quoted("pillow"));
    ASSERT_EQ(made.status, 0) << made.output;
    const Palette css = *Palette::create(picture::cssColours());
    double theirs = 0;
    double diffused = 0;
    double searched = 0;
    for (const std::string& name : m_names) {
        const core::Picture wanted = readPicture(file("wanted", name));
        theirs += seenOf(wanted, readPicture(file("pillow", name)));
        diffused += seenOf(wanted, Dither::FloydSteinberg, css);
        searched += seenOf(wanted, Dither::Optimal, css);
    }
    EXPECT_LE(diffused, 0.58 * theirs);
    EXPECT_LE(searched, 0.33 * theirs);
}

TEST_F(Dithering, OfFreeColoursLooksBetterThanImageMagicks) {
    if (tests::run("convert -version 2>/dev/null").status != 0)
        GTEST_SKIP() << "Debian's package imagemagick is not installed";
    double theirs = 0;
    double searched = 0;
    for (const std::string& name : m_names) {
        const auto made = tests::run("convert " + quoted("wanted/sea/" + name) +
                                     " -dither FloydSteinberg -colors 16 " + quoted(name));
        ASSERT_EQ(made.status, 0) << made.output;
        const core::Picture wanted = readPicture(file("wanted", name));
        theirs += seenOf(wanted, readPicture(m_folder.path() / name));
        searched += seenOf(wanted, Dither::Optimal, std::nullopt);
    }
    EXPECT_LE(searched, 0.85 * theirs);
}

}  // namespace
}  // namespace pantile
