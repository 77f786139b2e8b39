#include "image_files/svg_check.h"

#include <string>

#include <gtest/gtest.h>

#include "image_files/read_image.h"
#include "support/matchers.h"

namespace pantile::image_files {
namespace {

using core::ErrorKind;
using tests::failsWith;
using tests::isOk;

std::span<const std::uint8_t> drawingBytes(const std::string& text) {
    return {reinterpret_cast<const std::uint8_t*>(text.data()), text.size()};
}

// A buoy's drawing around `inside`, 10 wide and 5 high.
std::string drawing(const std::string& inside) {
    return "<svg xmlns='http://www.w3.org/2000/svg' xmlns:xlink='http://www.w3.org/1999/xlink' "
           "viewBox='0 0 10 5'>" +
           inside + "</svg>";
}

core::Result<void> checked(const std::string& inside) {
    const std::string text = drawing(inside);
    return checkSvg(drawingBytes(text), "buoy.svg");
}

TEST(SvgCheck, KnowsDrawingsByTheirFirstElement) {
    for (const char* text :
         {"<svg>", "<svg\n width='1'>", "\xEF\xBB\xBF <?xml version='1.0'?>\n<!-- buoy -->\n<svg/>",
          "<!DOCTYPE svg PUBLIC '' ''><svg>"})
        EXPECT_TRUE(isSvg(drawingBytes(text))) << text;
    for (const char* text : {"", "<", "<svg", "<svgx>", "<html><svg></svg></html>", "<?xml", "<!--",
                             "the tag <svg> in words", "<!DOCTYPE html><svg>"})
        EXPECT_FALSE(isSvg(drawingBytes(text))) << text;
}

TEST(SvgCheck, LetsPlainDrawingsThrough) {
    EXPECT_THAT(checked("<defs><linearGradient id='g'/><path id='p' d='M0 0h1v1z'/></defs>"
                        "<style>.a{fill:url( '#g');stroke-dasharray: none}</style>"
                        "<use xlink:href='#p'/><use href='#p'/><rect fill='url(#g)' "
                        "stroke-dasharray='none'/>"),
                isOk());
}

TEST(SvgCheck, RefusesWhatLiesOutside) {
    for (const char* inside :
         {"<use href='other.svg#a'/>", "<a xlink:href='file:///etc/passwd'/>",
          "<rect fill='url(http://example.com/#a)'/>", "<style>@import 'a.css';</style>",
          "<style>rect{fill:URL( \"a.svg#b\")}</style>"})
        EXPECT_THAT(checked(inside), failsWith(ErrorKind::Unsupported, "outside itself")) << inside;
    const std::string sheet = "<?xml-stylesheet href='/etc/passwd'?>" + drawing("");
    EXPECT_THAT(checkSvg(drawingBytes(sheet), "buoy.svg"),
                failsWith(ErrorKind::Unsupported, "outside itself"));
}

TEST(SvgCheck, RefusesTextPicturesDashesAndEntities) {
    EXPECT_THAT(checked("<text>buoy</text>"), failsWith(ErrorKind::Unsupported, "text"));
    EXPECT_THAT(checked("<image href='data:image/png;base64,AA=='/>"),
                failsWith(ErrorKind::Unsupported, "picture in it"));
    EXPECT_THAT(checked("<path stroke-dasharray='1e-9'/>"),
                failsWith(ErrorKind::Unsupported, "dashed"));
    EXPECT_THAT(checked("<path style='stroke-dasharray : 1'/>"),
                failsWith(ErrorKind::Unsupported, "dashed"));
    const std::string entities =
        "<!DOCTYPE svg [<!ENTITY a 'aaaa'><!ENTITY b '&a;&a;'>]>" + drawing("&b;");
    EXPECT_TRUE(isSvg(drawingBytes(entities)));
    EXPECT_THAT(checkSvg(drawingBytes(entities), "buoy.svg"),
                failsWith(ErrorKind::Unsupported, "entities"));
}

TEST(SvgCheck, RefusesTooMuchWork) {
    std::string many;
    for (int i = 0; i < 20001; ++i) many += "<g/>";
    EXPECT_THAT(checked(many), failsWith(ErrorKind::TooLarge, "elements"));
    std::string deep;
    for (int i = 0; i < 101; ++i) deep += "<g>";
    EXPECT_THAT(checked(deep), failsWith(ErrorKind::TooLarge, "nested"));
    std::string uses = "<path id='p'/>";
    for (int i = 0; i < 1001; ++i) uses += "<use href='#p'/>";
    EXPECT_THAT(checked(uses), failsWith(ErrorKind::TooLarge, "repeated parts"));
    // Each part twice the one before it; also where the repeated part comes later.
    EXPECT_THAT(checked("<g id='a'><use href='#b'/><use href='#b'/></g>"
                        "<g id='b'><use href='#c'/></g><path id='c'/>"),
                failsWith(ErrorKind::TooLarge, "repeat repeated"));
    EXPECT_THAT(checked("<g id='a'><use href='#a'/></g>"),
                failsWith(ErrorKind::TooLarge, "repeat repeated"));
    EXPECT_THAT(
        checkSvg(drawingBytes(drawing(std::string(std::size_t{4} << 20U, ' '))), "buoy.svg"),
        failsWith(ErrorKind::TooLarge, "4 MiB"));
}

TEST(SvgCheck, RefusesEveryDrawingThatWasCut) {
    const std::string whole = drawing("<g><path d='M0 0h1v1z'/></g>");
    for (std::size_t length = 5; length < whole.size(); length += 3) {
        EXPECT_THAT(checkSvg(drawingBytes(whole.substr(0, length)), "buoy.svg"),
                    failsWith(ErrorKind::Corrupt, "buoy.svg"))
            << length;
    }
}

TEST(SvgCheck, DrawingsAreReadAtOneSizeWithClearGround) {
    const std::string text = drawing("<rect x='5' y='0' width='5' height='5' fill='#c02010'/>");
    const auto picture = readImageBytes(drawingBytes(text), "buoy.svg");
    if (!picture && picture.error().message.find("installation") != std::string::npos)
        GTEST_SKIP() << "Debian's package libqt6svg6 is not installed";
    ASSERT_THAT(picture, isOk());
    EXPECT_EQ(picture->pixels.size, (core::Size{kSvgSide, kSvgSide / 2}));
    EXPECT_EQ(picture->pixels.at(10, 10).a, 0);
    EXPECT_EQ(picture->pixels.at(1000, 500), (core::Rgba8{0xC0, 0x20, 0x10, 255}));
}

TEST(SvgCheck, GiantAndEmptySizesAreHarmless) {
    for (const char* root :
         {"<svg width='1e30' height='1e30'/>", "<svg width='0' height='0'/>",
          "<svg width='-5' height='3'/>", "<svg/>",
          "<svg width='100000' height='1' xmlns='http://www.w3.org/2000/svg'/>"}) {
        const auto picture = readImageBytes(drawingBytes(root), "buoy.svg");
        if (!picture) continue;
        EXPECT_LE(picture->pixels.size.width, kSvgSide) << root;
        EXPECT_LE(picture->pixels.size.height, kSvgSide) << root;
    }
}

}  // namespace
}  // namespace pantile::image_files
