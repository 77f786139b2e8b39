#include "image_files/exif_orientation.h"

#include <array>
#include <string>

#include <gtest/gtest.h>

#include "image_files/qt_pictures.h"
#include "image_files/read_image.h"
#include "support/matchers.h"
#include "support/png_bytes.h"
#include "support/random.h"

namespace pantile::image_files {
namespace {

using tests::Bytes;

// Exif 2.32, section 4.6.4: the stored rows "abc" and "def" as each orientation shows them.
constexpr std::array<std::string_view, 9> kShown{
    "", "abc/def", "cba/fed", "fed/cba", "def/abc", "ad/be/cf", "da/eb/fc", "fc/eb/da", "cf/be/ad"};

void append(Bytes& to, const Bytes& bytes) {
    to.insert(to.end(), bytes.begin(), bytes.end());
}

enum class Order { BigEndian, LittleEndian };

// Another entry stands before the orientation.
Bytes exifOf(int orientation, Order order) {
    const auto number = static_cast<std::uint8_t>(orientation);
    if (order == Order::BigEndian)
        return {'M', 'M', 0, 42, 0,    0, 0, 8, 0, 2, 1, 0x0F, 0,      2, 0, 0, 0, 1, 0,
                0,   0,   0, 1,  0x12, 0, 3, 0, 0, 0, 1, 0,    number, 0, 0, 0, 0, 0, 0};
    return {'I', 'I', 42, 0,    8, 0, 0, 0, 2, 0, 0x0F, 1,      2, 0, 1, 0, 0, 0, 0,
            0,   0,   0,  0x12, 1, 3, 0, 1, 0, 0, 0,    number, 0, 0, 0, 0, 0, 0, 0};
}

// The stored letters as indices 0 to 5.
Bytes pngWith(const Bytes& exif) {
    Bytes palette;
    for (std::uint8_t i = 0; i < 6; ++i) append(palette, {i, 40, 90});
    Bytes png = tests::pngOf({3, 2, 8, 3, palette, {}, {0, 0, 1, 2, 0, 3, 4, 5}});
    constexpr std::ptrdiff_t kBehindHeader = 33;
    const Bytes chunk = tests::pngChunk("eXIf", exif);
    png.insert(png.begin() + kBehindHeader, chunk.begin(), chunk.end());
    return png;
}

Bytes littleEndian(std::size_t value, int bytes) {
    Bytes out;
    for (int i = 0; i < bytes; ++i) out.push_back(static_cast<std::uint8_t>(value >> (8 * i)));
    return out;
}

Bytes riffChunk(std::string_view name, const Bytes& data) {
    Bytes chunk(name.begin(), name.end());
    append(chunk, littleEndian(data.size(), 4));
    append(chunk, data);
    if (data.size() % 2 != 0) chunk.push_back(0);
    return chunk;
}

// The stored letters by their red, 40 apart; empty if Qt cannot write WebP here. WebP container
// specification: the extended form, with the picture's own chunk as Qt wrote it.
Bytes webPWith(const Bytes& exif) {
    QImage image(3, 2, QImage::Format_RGB32);
    for (int i = 0; i < 6; ++i) image.setPixel(i % 3, i / 3, qRgb(40 * i, 90, 160));
    const Bytes plain = writtenByQt(image, "webp", 100);
    if (plain.empty()) return {};
    constexpr std::uint8_t kHasExif = 8;
    Bytes extended{kHasExif, 0, 0, 0};
    append(extended, littleEndian(3 - 1, 3));
    append(extended, littleEndian(2 - 1, 3));
    Bytes body{'W', 'E', 'B', 'P'};
    append(body, riffChunk("VP8X", extended));
    body.insert(body.end(), plain.begin() + 12, plain.end());
    append(body, riffChunk("EXIF", exif));
    Bytes file{'R', 'I', 'F', 'F'};
    append(file, littleEndian(body.size(), 4));
    append(file, body);
    return file;
}

std::string lettersOf(const core::Picture& picture, int redsApart) {
    std::string shown;
    for (int y = 0; y < picture.pixels.size.height; ++y) {
        if (y > 0) shown += '/';
        for (int x = 0; x < picture.pixels.size.width; ++x) {
            const int red = picture.pixels.at(x, y).r;
            shown += static_cast<char>('a' + (red + redsApart / 2) / redsApart);
        }
    }
    return shown;
}

TEST(ExifOrientation, TurnsAnIndexedPngWithItsIndices) {
    for (int orientation = 1; orientation <= 8; ++orientation) {
        SCOPED_TRACE(orientation);
        const Bytes png = pngWith(exifOf(orientation, Order::BigEndian));
        const auto picture = readImageBytes(png, "buoys.png");
        ASSERT_THAT(picture, tests::isOk());
        EXPECT_EQ(lettersOf(*picture, 1), kShown.at(static_cast<std::size_t>(orientation)));
        ASSERT_TRUE(picture->indexed);
        for (std::size_t i = 0; i < picture->pixels.pixels.size(); ++i)
            EXPECT_EQ(picture->indexed->indices[i], picture->pixels.pixels[i].r);
    }
}

TEST(ExifOrientation, TurnsAWebP) {
    if (webPWith({}).empty())
        GTEST_SKIP() << "Debian's package qt6-image-formats-plugins is not installed";
    for (int orientation = 1; orientation <= 8; ++orientation) {
        SCOPED_TRACE(orientation);
        Bytes exif = exifOf(orientation, Order::LittleEndian);
        if (orientation % 2 == 0) exif.insert(exif.begin(), {'E', 'x', 'i', 'f', 0, 0});
        const auto picture = readImageBytes(webPWith(exif), "buoys.webp");
        ASSERT_THAT(picture, tests::isOk());
        EXPECT_EQ(lettersOf(*picture, 40), kShown.at(static_cast<std::size_t>(orientation)));
    }
}

TEST(ExifOrientation, IsOneWhereNothingSensibleIsSaid) {
    const auto inPng = [](const Bytes& exif) {
        return exifOrientation(ImageKind::Png, pngWith(exif));
    };
    EXPECT_EQ(inPng(exifOf(6, Order::BigEndian)), 6);
    EXPECT_EQ(inPng(exifOf(0, Order::BigEndian)), 1);
    EXPECT_EQ(inPng(exifOf(9, Order::LittleEndian)), 1);
    Bytes asLong = exifOf(6, Order::BigEndian);
    asLong[25] = 4;
    EXPECT_EQ(inPng(asLong), 1);
    const Bytes whole = exifOf(6, Order::BigEndian);
    for (std::size_t size = 0; size < 32; ++size)
        EXPECT_EQ(inPng({whole.begin(), whole.begin() + static_cast<std::ptrdiff_t>(size)}), 1)
            << size;
    EXPECT_EQ(exifOrientation(ImageKind::Png, {}), 1);
    EXPECT_EQ(exifOrientation(ImageKind::WebP, {}), 1);
    EXPECT_EQ(exifOrientation(ImageKind::Gif, pngWith(whole)), 1);
}

TEST(ExifOrientation, SurvivesDamage) {
    tests::Random random(11);
    const Bytes exif = exifOf(8, Order::LittleEndian);
    Bytes webP{'R', 'I', 'F', 'F', 0, 0, 0, 0, 'W', 'E', 'B', 'P'};
    append(webP, riffChunk("VP8L", {1, 2, 3}));
    append(webP, riffChunk("EXIF", exif));
    EXPECT_EQ(exifOrientation(ImageKind::WebP, webP), 8);
    for (const auto& [kind, whole] :
         {std::pair(ImageKind::Png, pngWith(exif)), {ImageKind::WebP, webP}}) {
        for (int i = 0; i < 2000; ++i) {
            Bytes bytes = whole;
            for (int changes = random.between(1, 3); changes > 0; --changes)
                bytes[static_cast<std::size_t>(
                    random.between(0, static_cast<int>(bytes.size()) - 1))] =
                    static_cast<std::uint8_t>(random.between(0, 255));
            bytes.resize(bytes.size() - static_cast<std::size_t>(random.between(0, 8)));
            const int orientation = exifOrientation(kind, bytes);
            EXPECT_GE(orientation, 1);
            EXPECT_LE(orientation, 8);
        }
    }
}

}  // namespace
}  // namespace pantile::image_files
