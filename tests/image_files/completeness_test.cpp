#include "image_files/completeness.h"

#include <gtest/gtest.h>

#include "image_files/qt_pictures.h"
#include "support/png_bytes.h"

namespace pantile::image_files {
namespace {

using Bytes = std::vector<std::uint8_t>;

Bytes cut(Bytes bytes, std::size_t length) {
    bytes.resize(length);
    return bytes;
}

// GIF89a, worked by hand: a screen of 1x1, a table of two colours, one picture of one pixel.
const Bytes kGif{'G',  'I',  'F',  '8',  '9', 'a', 1, 0, 1, 0, 0x80, 0, 0,  // screen
                 255,  0,    0,    0,    0,   255,                          // two colours
                 0x21, 0xF9, 4,    0,    0,   0,   0, 0,                    // graphic control
                 0x2C, 0,    0,    0,    0,   1,   0, 1, 0, 0,              // picture
                 2,    2,    0x44, 0x01, 0,                                 // its codes
                 0x3B};

TEST(Completeness, OfAJpegNeedsItsEndMarker) {
    const Bytes whole = writtenByQt(redAboveBlue(32, 32), "jpeg");
    ASSERT_FALSE(whole.empty());
    EXPECT_TRUE(isWhole(ImageKind::Jpeg, whole));
    for (std::size_t length = 0; length < whole.size(); ++length)
        ASSERT_FALSE(isWhole(ImageKind::Jpeg, cut(whole, length))) << length;
}

TEST(Completeness, OfAJpegIsNotFooledByAnEndMarkerInsideASegment) {
    Bytes bytes = writtenByQt(redAboveBlue(32, 32), "jpeg");
    // A comment that holds the end marker, as the thumbnail in a photograph's header does.
    const Bytes comment{0xFF, 0xFE, 0, 6, 0xFF, 0xD9, 0xFF, 0xD9};
    bytes.insert(bytes.begin() + 2, comment.begin(), comment.end());
    EXPECT_TRUE(isWhole(ImageKind::Jpeg, bytes));
    EXPECT_FALSE(isWhole(ImageKind::Jpeg, cut(bytes, bytes.size() - 2)));
}

TEST(Completeness, OfAGifNeedsTheFirstPicturesBlocks) {
    EXPECT_TRUE(isWhole(ImageKind::Gif, kGif));
    EXPECT_TRUE(isWhole(ImageKind::Gif, cut(kGif, kGif.size() - 1))) << "the trailer is no loss";
    for (std::size_t length = 0; length + 1 < kGif.size(); ++length)
        ASSERT_FALSE(isWhole(ImageKind::Gif, cut(kGif, length))) << length;
}

TEST(Completeness, OfAPngNeedsItsEndChunkAndSoundChunks) {
    const Bytes whole = writtenByQt(redAboveBlue(32, 32), "png");
    ASSERT_FALSE(whole.empty());
    EXPECT_TRUE(isWhole(ImageKind::Png, whole));
    for (std::size_t length = 0; length < whole.size(); ++length)
        ASSERT_FALSE(isWhole(ImageKind::Png, cut(whole, length))) << length;
    Bytes damaged = whole;
    damaged[damaged.size() - 20] ^=
        1;  // in the picture's data, before the end chunk's twelve bytes
    EXPECT_FALSE(isWhole(ImageKind::Png, damaged));
}

TEST(Completeness, OfABitmapNeedsAllItsRows) {
    const Bytes whole = writtenByQt(redAboveBlue(5, 7), "bmp");
    ASSERT_FALSE(whole.empty());
    EXPECT_TRUE(isWhole(ImageKind::Bmp, whole));
    for (std::size_t length = 0; length < whole.size(); ++length)
        ASSERT_FALSE(isWhole(ImageKind::Bmp, cut(whole, length))) << length;
}

TEST(Completeness, OfABitmapStandsForgedSizes) {
    Bytes bytes = writtenByQt(redAboveBlue(5, 7), "bmp");
    for (std::size_t i = 18; i < 30; ++i) bytes[i] = 0xFF;  // width, height, planes, bits
    EXPECT_FALSE(isWhole(ImageKind::Bmp, bytes));
}

TEST(Completeness, IsLeftToTheDecoderOfWebP) {
    EXPECT_TRUE(isWhole(ImageKind::WebP, {}));
}

}  // namespace
}  // namespace pantile::image_files
