// How often art of 16x16 cells, enlarged 2 to 16 times, is taken back to its cells: as it is, and
// after JPEG at quality 85 as Qt writes it (chroma at half resolution), on white where see-through.
//
// usage: pixel_scale FOLDER-OF-16X16-PNGS [FACTOR...]    as open_art.py makes (art-16)
//        pixel_scale --none FOLDER                       as no_enlarged_art.py makes
//
// The second counts pictures that are taken for enlarged art, and names them.
//
// A cell is right if, of the original's colours, the one nearest to the cell's (in 8-bit sRGB) is
// that cell's own, or differs from it by no more than the given levels in any channel; a picture is
// right if all its cells are. Level 0 is the strict count: the grid of indices is the original's.
// 'One to one' says further that no two of the original's colours became one and none became two.

#include "picture/pixel_scale.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <filesystem>
#include <iomanip>
#include <iostream>
#include <limits>
#include <set>
#include <string>

#include <QBuffer>
#include <QImage>

#include "image_files/read_image.h"

namespace pantile::bench {
namespace {

constexpr std::array kLevels{0, 4, 8, 16};

core::Pixels onWhite(core::Pixels pixels) {
    for (core::Rgba8& pixel : pixels.pixels) {
        const auto mixed = [&pixel](std::uint8_t value) {
            return static_cast<std::uint8_t>((value * pixel.a + 255 * (255 - pixel.a) + 127) / 255);
        };
        pixel = {mixed(pixel.r), mixed(pixel.g), mixed(pixel.b), 255};
    }
    return pixels;
}

core::Pixels enlarged(const core::Pixels& small, int factor) {
    core::Pixels large{{small.size.width * factor, small.size.height * factor}, {}};
    for (int y = 0; y < large.size.height; ++y) {
        for (int x = 0; x < large.size.width; ++x)
            large.pixels.push_back(small.at(x / factor, y / factor));
    }
    return large;
}

core::Picture throughJpeg(const core::Pixels& pixels) {
    constexpr int kQuality = 85;
    QImage image(pixels.size.width, pixels.size.height, QImage::Format_RGB32);
    for (int y = 0; y < pixels.size.height; ++y) {
        for (int x = 0; x < pixels.size.width; ++x) {
            const core::Rgba8& pixel = pixels.at(x, y);
            image.setPixel(x, y, qRgb(pixel.r, pixel.g, pixel.b));
        }
    }
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, "JPEG", kQuality);
    const auto* begin = reinterpret_cast<const std::uint8_t*>(bytes.constData());
    return *image_files::readImageBytes({begin, static_cast<std::size_t>(bytes.size())}, "JPEG");
}

int largestStep(core::Rgba8 p, core::Rgba8 q) {
    return std::max({std::abs(p.r - q.r), std::abs(p.g - q.g), std::abs(p.b - q.b)});
}

core::Rgba8 nearest(const std::set<core::Rgba8>& colours, core::Rgba8 wanted) {
    core::Rgba8 best;
    int least = std::numeric_limits<int>::max();
    for (const core::Rgba8& colour : colours) {
        const int dr = colour.r - wanted.r;
        const int dg = colour.g - wanted.g;
        const int db = colour.b - wanted.b;
        if (dr * dr + dg * dg + db * db < least) {
            least = dr * dr + dg * dg + db * db;
            best = colour;
        }
    }
    return best;
}

struct Counts {
    int pictures = 0;
    int found = 0;
    int same = 0;
    int oneToOne = 0;
    std::array<int, kLevels.size()> right{};

    void add(const core::Pixels& original, const std::optional<picture::EnlargedArt>& art) {
        ++pictures;
        if (!art || art->small.pixels.size != original.size) return;
        ++found;
        const std::vector<core::Rgba8>& cells = art->small.pixels.pixels;
        const std::set<core::Rgba8> colours(original.pixels.begin(), original.pixels.end());
        const std::set<core::Rgba8> clusters(cells.begin(), cells.end());
        std::set<std::pair<core::Rgba8, core::Rgba8>> pairs;
        int worst = 0;
        bool allSame = true;
        for (std::size_t i = 0; i < cells.size(); ++i) {
            const core::Rgba8& wanted = original.pixels[i];
            worst = std::max(worst, largestStep(nearest(colours, cells[i]), wanted));
            pairs.insert({wanted, cells[i]});
            if (wanted != cells[i] && wanted.a + cells[i].a > 0) allSame = false;
        }
        if (allSame) ++same;
        if (pairs.size() == colours.size() && clusters.size() == colours.size()) ++oneToOne;
        for (std::size_t i = 0; i < kLevels.size(); ++i) {
            if (worst <= kLevels.at(i)) ++right.at(i);
        }
    }

    void print(std::string_view name) const {
        std::cout << std::left << std::setw(9) << name << std::right << std::setw(9) << pictures
                  << std::setw(7) << found << std::setw(7) << same << std::setw(10) << oneToOne;
        for (const int count : right) std::cout << std::setw(7) << count;
        std::cout << std::endl;
    }
};

void measure(const std::vector<core::Picture>& originals, const std::vector<int>& factors) {
    std::cout << "         pictures  found   same    1 to 1   <=0     <=4    <=8   <=16 levels\n";
    for (const int factor : factors) {
        Counts plain;
        Counts lossy;
        for (const core::Picture& original : originals) {
            const core::Picture large{enlarged(original.pixels, factor), std::nullopt};
            plain.add(original.pixels, picture::findEnlargedArt(large));
            const core::Pixels flat = onWhite(original.pixels);
            lossy.add(flat, picture::findEnlargedArt(throughJpeg(enlarged(flat, factor))));
        }
        plain.print(std::to_string(factor) + "x plain");
        lossy.print(std::to_string(factor) + "x JPEG");
    }
}

std::vector<std::filesystem::path> filesIn(const std::filesystem::path& folder) {
    std::vector<std::filesystem::path> paths;
    for (const auto& entry : std::filesystem::directory_iterator(folder))
        paths.push_back(entry.path());
    std::sort(paths.begin(), paths.end());
    return paths;
}

int countFalseAlarms(const std::filesystem::path& folder) {
    int pictures = 0;
    int taken = 0;
    for (const std::filesystem::path& path : filesIn(folder)) {
        const auto picture = image_files::readImageFile(path);
        if (!picture) continue;
        ++pictures;
        const auto art = picture::findEnlargedArt(*picture);
        if (!art) continue;
        ++taken;
        std::cout << path.filename().string() << " as " << art->small.pixels.size.width << "x"
                  << art->small.pixels.size.height << " cells of " << art->factor() << " pixels"
                  << std::endl;
    }
    std::cout << taken << " of " << pictures << " are taken for enlarged art\n";
    return 0;
}

int run(const std::filesystem::path& folder, const std::vector<int>& factors) {
    std::vector<core::Picture> originals;
    for (const std::filesystem::path& path : filesIn(folder)) {
        auto picture = image_files::readImageFile(path);
        if (picture && picture->pixels.size == core::Size{16, 16})
            originals.push_back(*std::move(picture));
        else
            std::cerr << path.string() << " is left out\n";
    }
    measure(originals, factors);
    return 0;
}

}  // namespace
}  // namespace pantile::bench

int main(int argc, char** argv) {
    const std::vector<std::string> words(argv + 1, argv + argc);
    if (words.size() == 2 && words[0] == "--none")
        return pantile::bench::countFalseAlarms(words[1]);
    if (words.empty()) {
        std::cerr << "usage: pixel_scale FOLDER-OF-16X16-PNGS [FACTOR...]\n"
                     "       pixel_scale --none FOLDER\n";
        return 2;
    }
    std::vector<int> factors;
    for (std::size_t i = 1; i < words.size(); ++i) factors.push_back(std::stoi(words[i]));
    if (factors.empty()) factors = {2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16};
    return pantile::bench::run(words[0], factors);
}
