// How long codes are, and how long they take, next to WebP lossless at its slowest setting (the
// reference of speed, too) and JPEG XL lossless at effort 9. Prints figures and decides nothing.
// usage: code_size FOLDER    a half of what open_art.py made: a folder for each class

#include <chrono>
#include <cstdio>
#include <filesystem>
#include <jxl/encode.h>
#include <string>
#include <vector>
#include <webp/decode.h>
#include <webp/encode.h>

#include "art.h"
#include "codec/armour.h"
#include "codec/contents.h"

namespace {

using pantile::core::Texture;

std::vector<std::uint8_t> rgbaOf(const Texture& texture) {
    std::vector<std::uint8_t> rgba;
    const auto& palette = texture.palette();
    for (const pantile::core::PaletteIndex cell : texture.grid().cells()) {
        const bool clear = palette.transparent() == cell;
        const pantile::core::Rgb8 colour = clear ? pantile::core::Rgb8{} : palette[cell];
        rgba.insert(rgba.end(),
                    {colour.r, colour.g, colour.b, static_cast<std::uint8_t>(clear ? 0 : 255)});
    }
    return rgba;
}

std::vector<std::uint8_t> webpOf(const Texture& texture) {
    WebPConfig config;
    WebPConfigInit(&config);
    WebPConfigLosslessPreset(&config, 9);
    WebPPicture picture;
    WebPPictureInit(&picture);
    picture.use_argb = 1;
    picture.width = texture.grid().width();
    picture.height = texture.grid().height();
    WebPPictureImportRGBA(&picture, rgbaOf(texture).data(), 4 * picture.width);
    WebPMemoryWriter writer;
    WebPMemoryWriterInit(&writer);
    picture.writer = WebPMemoryWrite;
    picture.custom_ptr = &writer;
    std::vector<std::uint8_t> bytes;
    if (WebPEncode(&config, &picture)) bytes.assign(writer.mem, writer.mem + writer.size);
    WebPMemoryWriterClear(&writer);
    WebPPictureFree(&picture);
    return bytes;
}

std::size_t jxlBytes(const Texture& texture) {
    JxlEncoder* encoder = JxlEncoderCreate(nullptr);
    JxlBasicInfo info;
    JxlEncoderInitBasicInfo(&info);
    info.xsize = static_cast<std::uint32_t>(texture.grid().width());
    info.ysize = static_cast<std::uint32_t>(texture.grid().height());
    info.bits_per_sample = 8;
    info.uses_original_profile = JXL_TRUE;
    const bool clear = texture.palette().transparent().has_value();
    info.num_extra_channels = clear ? 1 : 0;
    info.alpha_bits = clear ? 8 : 0;
    JxlEncoderSetBasicInfo(encoder, &info);
    JxlColorEncoding colours;
    JxlColorEncodingSetToSRGB(&colours, JXL_FALSE);
    JxlEncoderSetColorEncoding(encoder, &colours);
    JxlEncoderFrameSettings* settings = JxlEncoderFrameSettingsCreate(encoder, nullptr);
    JxlEncoderSetFrameLossless(settings, JXL_TRUE);
    JxlEncoderFrameSettingsSetOption(settings, JXL_ENC_FRAME_SETTING_EFFORT, 9);
    const std::vector<std::uint8_t> rgba = rgbaOf(texture);
    std::vector<std::uint8_t> pixels;
    for (std::size_t i = 0; i < rgba.size(); ++i) {
        if (clear || i % 4 != 3) pixels.push_back(rgba[i]);
    }
    const JxlPixelFormat format = {clear ? 4U : 3U, JXL_TYPE_UINT8, JXL_NATIVE_ENDIAN, 0};
    JxlEncoderAddImageFrame(settings, &format, pixels.data(), pixels.size());
    JxlEncoderCloseInput(encoder);
    std::vector<std::uint8_t> bytes(1U << 20U);
    std::uint8_t* next = bytes.data();
    std::size_t left = bytes.size();
    const bool done = JxlEncoderProcessOutput(encoder, &next, &left) == JXL_ENC_SUCCESS;
    JxlEncoderDestroy(encoder);
    return done ? bytes.size() - left : 0;
}

template <class Action>
double milliseconds(Action action) {
    const auto start = std::chrono::steady_clock::now();
    action();
    const auto end = std::chrono::steady_clock::now();
    return std::chrono::duration<double, std::milli>(end - start).count();
}

constexpr std::size_t kOneMessage = 2000;  // Characters that a chat message takes; common practice.

struct Sums {
    double textures = 0, code = 0, runs = 0, webp = 0, jxl = 0;
    std::size_t longest = 0;  ///< In characters.
    int tooLong = 0;
    double write = 0, read = 0, webpWrite = 0, webpRead = 0;
};

void measure(const Texture& texture, Sums& sums) {
    using namespace pantile;
    codec::Container code;
    sums.write += milliseconds([&] { code = codec::packContents(texture); });
    sums.read += milliseconds([&] {
        if (!codec::unpackTextures(code.bytes)) std::puts("a code cannot be read");
    });
    std::vector<std::uint8_t> webp;
    sums.webpWrite += milliseconds([&] { webp = webpOf(texture); });
    sums.webpRead += milliseconds([&] {
        int width = 0;
        int height = 0;
        WebPFree(WebPDecodeRGBA(webp.data(), webp.size(), &width, &height));
    });
    sums.textures += 1;
    sums.code += static_cast<double>(code.bytes.size());
    const std::size_t characters = codec::armoured(code.bytes)->size();
    sums.longest = std::max(sums.longest, characters);
    if (characters > kOneMessage) ++sums.tooLong;
    sums.runs += static_cast<double>(codec::packTexture(texture).bytes.size());
    sums.webp += static_cast<double>(webp.size());
    sums.jxl += static_cast<double>(jxlBytes(texture));
}

}  // namespace

int main(int count, char** arguments) {
    if (count != 2) {
        std::puts("usage: code_size FOLDER");
        return 2;
    }
    double ofWebp = 0;
    double ofJxl = 0;
    std::puts(
        "class          n   code  runs  webp   jxl  /webp /jxl  characters >2000  write/read ms "
        "(webp)");
    for (const std::filesystem::path& folder : pantile::bench::foldersIn(arguments[1])) {
        Sums sums;
        for (const Texture& texture : pantile::bench::texturesIn(folder)) measure(texture, sums);
        const double n = sums.textures;
        ofWebp += sums.code / sums.webp;
        ofJxl += sums.code / sums.jxl;
        std::printf(
            "%-12s %3.0f %6.1f %5.0f %5.0f %5.0f  %.3f %.3f  %10zu %5d  %.2f/%.2f (%.2f/%.2f)\n",
            folder.filename().c_str(), n, sums.code / n, sums.runs / n, sums.webp / n, sums.jxl / n,
            sums.code / sums.webp, sums.code / sums.jxl, sums.longest, sums.tooLong, sums.write / n,
            sums.read / n, sums.webpWrite / n, sums.webpRead / n);
    }
    const auto classes = static_cast<double>(folders.size());
    std::printf("mean over the classes: %.3f of WebP, %.3f of JPEG XL\n", ofWebp / classes,
                ofJxl / classes);
    return 0;
}
