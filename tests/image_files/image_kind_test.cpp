#include "image_files/image_kind.h"

#include <string_view>
#include <vector>

#include <gtest/gtest.h>

#include "support/png_bytes.h"

namespace pantile::image_files {
namespace {

tests::Bytes bytesOf(std::string_view text) {
    return {text.begin(), text.end()};
}

TEST(ImageKind, IsKnownByTheSignatureAlone) {
    EXPECT_EQ(imageKindOf(bytesOf("\x89PNG\r\n\x1a\n")), ImageKind::Png);
    EXPECT_EQ(imageKindOf(bytesOf("\xff\xd8\xff\xe0")), ImageKind::Jpeg);
    EXPECT_EQ(imageKindOf(bytesOf("GIF87a")), ImageKind::Gif);
    EXPECT_EQ(imageKindOf(bytesOf("GIF89a")), ImageKind::Gif);
    EXPECT_EQ(imageKindOf(bytesOf("RIFF1234WEBPVP8 ")), ImageKind::WebP);
    EXPECT_EQ(imageKindOf(bytesOf(std::string_view("BM1234\0\0\0\0data", 14))), ImageKind::Bmp);
}

TEST(ImageKind, IsSvgByTheFirstElement) {
    EXPECT_EQ(imageKindOf(bytesOf("<svg xmlns='http://www.w3.org/2000/svg'/>")), ImageKind::Svg);
}

TEST(ImageKind, IsNothingForOtherBytes) {
    EXPECT_EQ(imageKindOf({}), std::nullopt);
    EXPECT_EQ(imageKindOf(bytesOf("\x89PNG\r\n")), std::nullopt) << "a signature cut short";
    EXPECT_EQ(imageKindOf(bytesOf("BMX is a word that text can begin with")), std::nullopt);
    EXPECT_EQ(imageKindOf(bytesOf("RIFF1234WAVEfmt ")), std::nullopt);
    EXPECT_EQ(imageKindOf(bytesOf("<p>a page with <svg></svg> in it")), std::nullopt);
}

TEST(ImageKind, TellsIndexedPngByItsColourType) {
    tests::PngParts parts;
    for (const int colourType : {0, 2, 3, 4, 6}) {
        parts.colourType = static_cast<std::uint8_t>(colourType);
        EXPECT_EQ(isIndexedPng(tests::pngOf(parts)), colourType == 3) << colourType;
    }
    EXPECT_FALSE(isIndexedPng(bytesOf("\x89PNG\r\n\x1a\n")));
    EXPECT_FALSE(
        isIndexedPng(bytesOf("GIF89a\x03\x03\x03\x03\x03\x03\x03\x03\x03\x03"
                             "\x03\x03\x03\x03\x03\x03\x03\x03\x03\x03\x03")));
}

}  // namespace
}  // namespace pantile::image_files
