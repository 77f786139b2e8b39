#include "image_files/read_image.h"

#include <fstream>
#include <string>
#include <sys/stat.h>

#include <gtest/gtest.h>

#include "image_files/qt_pictures.h"
#include "support/matchers.h"
#include "support/png_bytes.h"
#include "support/random.h"
#include "support/temporary_folder.h"

namespace pantile::image_files {
namespace {

using core::ErrorKind;
using core::Picture;
using core::Result;
using core::Rgba8;
using tests::Bytes;
using tests::failsWith;
using tests::isOk;
using tests::pngOf;
using tests::PngParts;

// Four cells in a row, indices 3 0 2 1, two bits each: 11 00 10 01.
PngParts fourIndices() {
    return {4, 1, 2, 3, {10, 0, 0, 0, 20, 0, 0, 0, 30, 40, 40, 40}, {}, {0, 0b11001001}};
}

void writeFile(const std::filesystem::path& path, const Bytes& bytes) {
    std::ofstream file(path, std::ios::binary);
    file.write(reinterpret_cast<const char*>(bytes.data()),
               static_cast<std::streamsize>(bytes.size()));
}

void overwriteBigEndian16(Bytes& bytes, std::size_t at, std::uint16_t value) {
    bytes[at] = static_cast<std::uint8_t>(value >> 8U);
    bytes[at + 1] = static_cast<std::uint8_t>(value & 0xFFU);
}

std::size_t positionOf(const Bytes& bytes, std::uint8_t first, std::uint8_t second) {
    std::size_t at = 0;
    while (at + 1 < bytes.size() && (bytes[at] != first || bytes[at + 1] != second)) ++at;
    return at;
}

TEST(ReadImage, GivesAnIndexedPngsTableAndIndicesInOrder) {
    PngParts parts = fourIndices();
    parts.alphas = {255, 0, 128};
    const Result<Picture> picture = readImageBytes(pngOf(parts), "four.png");
    ASSERT_THAT(picture, isOk());
    ASSERT_TRUE(picture->indexed);
    const std::vector<Rgba8> table{
        {10, 0, 0, 255}, {0, 20, 0, 0}, {0, 0, 30, 128}, {40, 40, 40, 255}};
    EXPECT_EQ(picture->indexed->table, table);
    EXPECT_EQ(picture->indexed->indices, (std::vector<std::uint8_t>{3, 0, 2, 1}));
    EXPECT_EQ(picture->pixels.size, (core::Size{4, 1}));
    EXPECT_EQ(picture->pixels.pixels, (std::vector<Rgba8>{table[3], table[0], table[2], table[1]}));
}

TEST(ReadImage, KeepsOneBitIndicesWhicheverColourIsDarker) {
    for (const Bytes& palette : {Bytes{0, 0, 0, 255, 255, 255}, Bytes{255, 255, 255, 0, 0, 0}}) {
        // Nine cells, so that a row takes more than a byte: 101100101.
        const PngParts parts{9, 1, 1, 3, palette, {}, {0, 0b10110010, 0b10000000}};
        const Result<Picture> picture = readImageBytes(pngOf(parts), "bits.png");
        ASSERT_THAT(picture, isOk());
        ASSERT_TRUE(picture->indexed);
        EXPECT_EQ(picture->indexed->table.size(), 2U);
        EXPECT_EQ(picture->indexed->table[0].r, palette[0]);
        EXPECT_EQ(picture->indexed->indices,
                  (std::vector<std::uint8_t>{1, 0, 1, 1, 0, 0, 1, 0, 1}));
    }
}

TEST(ReadImage, KeepsATableOfOneColour) {
    const PngParts parts{2, 1, 1, 3, {7, 8, 9}, {}, {0, 0}};
    const Result<Picture> picture = readImageBytes(pngOf(parts), "one.png");
    ASSERT_THAT(picture, isOk());
    ASSERT_TRUE(picture->indexed);
    EXPECT_EQ(picture->indexed->table, (std::vector<Rgba8>{{7, 8, 9, 255}}));
}

TEST(ReadImage, ShowsAnIndexBeyondTheTableAsTheFirstColour) {
    PngParts twoBits = fourIndices();
    twoBits.palette.resize(6);
    const PngParts oneBit{4, 1, 1, 3, {7, 8, 9}, {}, {0, 0b10110000}};
    for (const PngParts& parts : {twoBits, oneBit}) {
        const Result<Picture> picture = readImageBytes(pngOf(parts), "short.png");
        ASSERT_THAT(picture, isOk());
        ASSERT_TRUE(picture->indexed);
        EXPECT_EQ(picture->indexed->table.size(), parts.palette.size() / 3);
        EXPECT_EQ(picture->indexed->indices[0], 0);
        EXPECT_EQ(picture->pixels.at(0, 0), picture->indexed->table[0]);
    }
}

TEST(ReadImage, TakesGreyPngsAsPicturesWithoutATable) {
    const PngParts oneBit{8, 1, 1, 0, {}, {}, {0, 0b10000000}};
    const Result<Picture> bits = readImageBytes(pngOf(oneBit), "grey1.png");
    ASSERT_THAT(bits, isOk());
    EXPECT_FALSE(bits->indexed);
    EXPECT_EQ(bits->pixels.at(0, 0), (Rgba8{255, 255, 255, 255}));
    EXPECT_EQ(bits->pixels.at(1, 0), (Rgba8{0, 0, 0, 255}));

    const PngParts eightBit{2, 1, 8, 0, {}, {0, 200}, {0, 100, 200}};  // shade 200 is transparent
    const Result<Picture> grey = readImageBytes(pngOf(eightBit), "grey8.png");
    ASSERT_THAT(grey, isOk());
    EXPECT_FALSE(grey->indexed);
    EXPECT_EQ(grey->pixels.at(0, 0), (Rgba8{100, 100, 100, 255}));
    EXPECT_EQ(grey->pixels.at(1, 0).a, 0);
}

TEST(ReadImage, DoesNotMultiplyAlphaIn) {
    const PngParts parts{2, 1, 8, 6, {}, {}, {0, 200, 100, 50, 1, 9, 8, 7, 0}};
    const Result<Picture> picture = readImageBytes(pngOf(parts), "alpha.png");
    ASSERT_THAT(picture, isOk());
    EXPECT_EQ(picture->pixels.at(0, 0), (Rgba8{200, 100, 50, 1}));
    EXPECT_EQ(picture->pixels.at(1, 0), (Rgba8{9, 8, 7, 0}));
}

TEST(ReadImage, ReadsSixteenBitsAsEight) {
    // 0x8080 and 0xFFFF are 128 and 255 times 257.
    const PngParts parts{1, 1, 16, 2, {}, {}, {0, 0x80, 0x80, 0xFF, 0xFF, 0, 0}};
    const Result<Picture> picture = readImageBytes(pngOf(parts), "deep.png");
    ASSERT_THAT(picture, isOk());
    EXPECT_EQ(picture->pixels.at(0, 0), (Rgba8{128, 255, 0, 255}));
}

TEST(ReadImage, GivesABitmapsTableAndIndices) {
    QImage image(3, 1, QImage::Format_Indexed8);
    image.setColorTable({qRgb(1, 2, 3), qRgb(4, 5, 6), qRgb(7, 8, 9)});
    for (int x = 0; x < 3; ++x) image.setPixel(x, 0, static_cast<unsigned>(2 - x));
    const Result<Picture> picture = readImageBytes(writtenByQt(image, "bmp"), "three.bmp");
    ASSERT_THAT(picture, isOk());
    ASSERT_TRUE(picture->indexed);
    EXPECT_EQ(picture->indexed->indices, (std::vector<std::uint8_t>{2, 1, 0}));
    EXPECT_EQ(picture->indexed->table[1], (Rgba8{4, 5, 6, 255}));
}

TEST(ReadImage, TurnsAPhotographAsItsExifSays) {
    Bytes bytes = writtenByQt(redAboveBlue(32, 16), "jpeg");
    ASSERT_FALSE(bytes.empty());
    // EXIF 2.32, section 4.6.4: tag 0x0112, orientation 6: turn by 90 degrees clockwise.
    const Bytes exif{0xFF, 0xE1, 0,    34,   'E', 'x', 'i', 'f', 0, 0, 'M', 'M', 0, 42, 0, 0, 0, 8,
                     0,    1,    0x01, 0x12, 0,   3,   0,   0,   0, 1, 0,   6,   0, 0,  0, 0, 0, 0};
    bytes.insert(bytes.begin() + 2, exif.begin(), exif.end());
    const Result<Picture> picture = readImageBytes(bytes, "turned.jpg");
    ASSERT_THAT(picture, isOk());
    EXPECT_EQ(picture->pixels.size, (core::Size{16, 32}));
    EXPECT_GT(picture->pixels.at(14, 16).r, 200) << "the top, red, goes to the right";
    EXPECT_GT(picture->pixels.at(1, 16).b, 200);
}

TEST(ReadImage, GoesByContentNotByName) {
    const tests::TemporaryFolder folder;
    writeFile(folder.path() / "kelp.jpg", pngOf(fourIndices()));
    EXPECT_THAT(readImageFile(folder.path() / "kelp.jpg"), isOk());
}

TEST(ReadImage, RefusesWhatIsNoPicture) {
    const tests::TemporaryFolder folder;
    writeFile(folder.path() / "notes.png", {'k', 'e', 'l', 'p'});
    const Result<Picture> picture = readImageFile(folder.path() / "notes.png");
    ASSERT_THAT(picture, failsWith(ErrorKind::Unsupported, "not a picture"));
    EXPECT_NE(picture.error().hint.find("PNG"), std::string::npos);
}

TEST(ReadImage, RefusesMissingFilesFoldersAndPipes) {
    const tests::TemporaryFolder folder;
    EXPECT_THAT(readImageFile(folder.path() / "no.png"), failsWith(ErrorKind::NotFound, "no.png"));
    EXPECT_THAT(readImageFile(folder.path()), failsWith(ErrorKind::Unsupported, "folder"));
    const std::filesystem::path pipe = folder.path() / "pipe.png";
    ASSERT_EQ(mkfifo(pipe.c_str(), 0600), 0);
    EXPECT_THAT(readImageFile(pipe), failsWith(ErrorKind::Unsupported, "not a picture"));
}

TEST(ReadImage, SaysSoIfAFileCannotBeRead) {
    // A regular file whose first page no process may read, whoever runs the test.
    const std::filesystem::path unreadable = "/proc/self/mem";
    if (!std::filesystem::exists(unreadable)) GTEST_SKIP() << "no such file here";
    EXPECT_THAT(readImageFile(unreadable), failsWith(ErrorKind::Io, "cannot be read"));
}

TEST(ReadImage, RefusesAnEmptyFile) {
    const tests::TemporaryFolder folder;
    writeFile(folder.path() / "empty.png", {});
    EXPECT_THAT(readImageFile(folder.path() / "empty.png"), failsWith(ErrorKind::Corrupt, "empty"));
}

TEST(ReadImage, RefusesAFileBeyondTheLimitWithoutReadingIt) {
    const tests::TemporaryFolder folder;
    const std::filesystem::path path = folder.path() / "huge.png";
    writeFile(path, pngOf(fourIndices()));
    std::filesystem::resize_file(path, kMaxImageFileBytes + 1);  // sparse: takes no room
    EXPECT_THAT(readImageFile(path), failsWith(ErrorKind::TooLarge, "256 MiB"));
}

TEST(ReadImage, RefusesForgedSizesBeforeDecoding) {
    PngParts png = fourIndices();
    png.width = png.height = 60000;
    EXPECT_THAT(readImageBytes(pngOf(png), "forged.png"),
                failsWith(ErrorKind::TooLarge, "60000x60000"));
    png.width = 16384;
    png.height = 4097;  // each side is allowed, together they are too many
    EXPECT_THAT(readImageBytes(pngOf(png), "forged.png"),
                failsWith(ErrorKind::TooLarge, "16384x4097"));

    Bytes jpeg = writtenByQt(redAboveBlue(16, 16), "jpeg");
    const std::size_t frame = positionOf(jpeg, 0xFF, 0xC0);  // ITU-T T.81, B.2.2
    ASSERT_LT(frame + 9, jpeg.size());
    overwriteBigEndian16(jpeg, frame + 5, 60000);
    overwriteBigEndian16(jpeg, frame + 7, 60000);
    EXPECT_THAT(readImageBytes(jpeg, "forged.jpg"), failsWith(ErrorKind::TooLarge, "60000x60000"));

    Bytes bmp = writtenByQt(redAboveBlue(4, 4), "bmp");
    bmp[20] = bmp[24] = 0x7F;  // the third byte of each side
    EXPECT_FALSE(readImageBytes(bmp, "forged.bmp"));
}

TEST(ReadImage, RefusesAPngOfNoSize) {
    PngParts parts = fourIndices();
    parts.width = 0;
    EXPECT_THAT(readImageBytes(pngOf(parts), "none.png"), failsWith(ErrorKind::Corrupt, "damaged"));
}

// PNG (W3C, third edition), section 11.2.1: sides from 1 to 2^31 - 1, five colour types, each with
// its own depths, one way to compress and to filter, two to interlace.
TEST(ReadImage, RefusesAWrongPngHeaderWithoutWordsOfTheDecoder) {
    const Bytes whole = pngOf(fourIndices());
    constexpr std::size_t kHeaderAt = 16;  // behind signature, length and name
    const auto withHeader = [&](std::size_t offset, std::uint8_t value) {
        Bytes header(whole.begin() + kHeaderAt, whole.begin() + kHeaderAt + 13);
        header[offset] = value;
        Bytes forged(whole.begin(), whole.begin() + 8);
        const Bytes chunk = tests::pngChunk("IHDR", header);
        forged.insert(forged.end(), chunk.begin(), chunk.end());
        forged.insert(forged.end(), whole.begin() + kHeaderAt + 13 + 4, whole.end());
        return forged;
    };
    ASSERT_THAT(readImageBytes(withHeader(3, 4), "right.png"), isOk());
    ::testing::internal::CaptureStderr();
    EXPECT_THAT(readImageBytes(withHeader(0, 0x80), "wide.png"),
                failsWith(ErrorKind::Corrupt, "damaged"));
    EXPECT_THAT(readImageBytes(withHeader(0, 0x7F), "wide.png"),
                failsWith(ErrorKind::TooLarge, "2130706436x1"));
    EXPECT_THAT(readImageBytes(withHeader(7, 0), "none.png"),
                failsWith(ErrorKind::Corrupt, "damaged"));
    EXPECT_THAT(readImageBytes(withHeader(8, 3), "depth.png"),
                failsWith(ErrorKind::Corrupt, "damaged"));
    EXPECT_THAT(readImageBytes(withHeader(9, 5), "type.png"),
                failsWith(ErrorKind::Corrupt, "damaged"));
    for (const std::size_t method : {10U, 11U})
        EXPECT_THAT(readImageBytes(withHeader(method, 1), "method.png"),
                    failsWith(ErrorKind::Corrupt, "damaged"));
    EXPECT_THAT(readImageBytes(withHeader(12, 2), "interlace.png"),
                failsWith(ErrorKind::Corrupt, "damaged"));
    EXPECT_EQ(::testing::internal::GetCapturedStderr(), "");
}

TEST(ReadImage, RefusesEveryPngThatWasCutBeforeItsEnd) {
    const Bytes whole = pngOf(fourIndices());
    constexpr std::size_t kEndChunk = 12;
    for (std::size_t length = 1; length + kEndChunk < whole.size(); ++length) {
        const Bytes cut(whole.begin(), whole.begin() + static_cast<std::ptrdiff_t>(length));
        ASSERT_FALSE(readImageBytes(cut, "cut.png")) << length << " of " << whole.size();
    }
}

TEST(ReadImage, RefusesOtherFormatsCutInHalf) {
    for (const char* format : {"jpeg", "bmp", "webp"}) {
        Bytes bytes = writtenByQt(redAboveBlue(64, 64), format);
        if (bytes.empty()) continue;  // WebP is an extra of Qt's
        ASSERT_THAT(readImageBytes(bytes, "whole"), isOk()) << format;
        bytes.resize(bytes.size() / 2);
        EXPECT_THAT(readImageBytes(bytes, "half"), failsWith(ErrorKind::Corrupt, "cut short"))
            << format;
    }
}

TEST(ReadImage, StandsRandomDamage) {
    for (const char* format : {"png", "jpeg", "bmp", "webp"}) {
        const Bytes whole = writtenByQt(redAboveBlue(24, 24), format);
        for (std::uint64_t seed = 1; seed <= 200 && !whole.empty(); ++seed) {
            tests::Random random(seed);
            Bytes damaged = whole;
            for (int change = 0; change < 3; ++change) {
                const int at = random.between(0, static_cast<int>(whole.size()) - 1);
                damaged[static_cast<std::size_t>(at)] =
                    static_cast<std::uint8_t>(random.between(0, 255));
            }
            const Result<Picture> picture = readImageBytes(damaged, "damaged");
            if (!picture) continue;
            ASSERT_EQ(picture->pixels.pixels.size(),
                      static_cast<std::size_t>(picture->pixels.size.width) *
                          static_cast<std::size_t>(picture->pixels.size.height))
                << format << ", seed " << seed;
        }
    }
}

TEST(ReadImage, ShowsOddNamesMadeVisible) {
    const Result<Picture> picture = readImageBytes({}, "bad\x1b[31mname");
    ASSERT_FALSE(picture);
    EXPECT_EQ(picture.error().message.find('\x1b'), std::string::npos);
}

}  // namespace
}  // namespace pantile::image_files
