// conversion_bench: how far textures are from their pictures, beside what other programs make of
// the same pictures, and how many pictures a second each converts.
//
// usage: conversion_bench PICTURES REMAPPED
//
// PICTURES holds folders of pictures, such as one half of what open_pictures.py makes; REMAPPED
// what pillow_remap.py makes of them. ImageMagick's quantiser (one thread) and pngquant's (speed 1)
// are called as libraries. Times are the processor's, of the conversions alone, without reading and
// writing.

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <functional>
#include <iomanip>
#include <iostream>
#include <libimagequant.h>
#include <magick/MagickCore.h>
#include <memory>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

#include "image_files/read_image.h"
#include "picture/convert.h"
#include "picture/picture_difference.h"
#include "picture/pictures.h"
#include "picture/structural_similarity.h"

namespace {

using namespace pantile;
namespace fs = std::filesystem;

constexpr int kColours = 16;

core::Pixels converted(const core::Pixels& pixels, picture::Dither dither, bool isFree) {
    picture::ConvertOptions options;
    options.fit = picture::Fit::Exact;
    options.dither = dither;
    options.colours = kColours;
    if (!isFree) options.palette = *core::Palette::create(picture::cssColours());
    const auto made = picture::convertPicture({pixels, std::nullopt}, options);
    core::Pixels shown{pixels.size, {}};
    for (const core::PaletteIndex index : made->grid.cells()) {
        const core::Rgb8 colour = made->palette[index];
        shown.pixels.push_back({colour.r, colour.g, colour.b, 255});
    }
    return shown;
}

template <typename T, void (*destroy)(T*)>
struct Destroyed {
    void operator()(T* object) const { destroy(object); }
};

void destroyImage(Image* image) {
    DestroyImage(image);
}

void destroyQuantizeInfo(QuantizeInfo* info) {
    DestroyQuantizeInfo(info);
}

using ImagePointer = std::unique_ptr<Image, Destroyed<Image, destroyImage>>;

ImagePointer imageOf(core::Size size, const void* bytes, const char* map, ExceptionInfo* failure) {
    return ImagePointer(ConstituteImage(static_cast<std::size_t>(size.width),
                                        static_cast<std::size_t>(size.height), map, CharPixel,
                                        bytes, failure));
}

core::Pixels byImageMagick(const core::Pixels& pixels, bool isFree) {
    ExceptionInfo* failure = AcquireExceptionInfo();
    const ImagePointer image = imageOf(pixels.size, pixels.pixels.data(), "RGBP", failure);
    const std::unique_ptr<QuantizeInfo, Destroyed<QuantizeInfo, destroyQuantizeInfo>> info(
        AcquireQuantizeInfo(nullptr));
    info->number_colors = kColours;
    info->dither = MagickTrue;
    info->dither_method = FloydSteinbergDitherMethod;
    if (isFree) {
        QuantizeImage(info.get(), image.get());
    } else {
        RemapImage(info.get(), image.get(),
                   imageOf({kColours, 1}, picture::cssColours().data(), "RGB", failure).get());
    }
    core::Pixels shown{pixels.size, std::vector<core::Rgba8>(pixels.pixels.size())};
    ExportImagePixels(image.get(), 0, 0, image->columns, image->rows, "RGBA", CharPixel,
                      shown.pixels.data(), failure);
    DestroyExceptionInfo(failure);
    return shown;
}

core::Pixels byPngquant(const core::Pixels& pixels) {
    liq_attr* attributes = liq_attr_create();
    liq_set_speed(attributes, 1);
    liq_set_max_colors(attributes, kColours);
    liq_image* image = liq_image_create_rgba(attributes, pixels.pixels.data(), pixels.size.width,
                                             pixels.size.height, 0);
    liq_result* result = nullptr;
    if (liq_image_quantize(image, attributes, &result) != LIQ_OK) std::abort();
    liq_set_dithering_level(result, 1);
    std::vector<std::uint8_t> indices(pixels.pixels.size());
    liq_write_remapped_image(result, image, indices.data(), indices.size());
    const liq_palette* palette = liq_get_palette(result);
    core::Pixels shown{pixels.size, {}};
    for (const std::uint8_t index : indices) {
        const liq_color& colour = palette->entries[index];
        shown.pixels.push_back({colour.r, colour.g, colour.b, 255});
    }
    liq_result_destroy(result);
    liq_image_destroy(image);
    liq_attr_destroy(attributes);
    return shown;
}

struct Source {
    std::string className;
    std::string file;
    core::Pixels pixels;
};

struct Method {
    std::string name;
    std::function<core::Pixels(const Source&)> convert;
    bool timed = true;
};

struct Score {
    int pictures = 0;
    double perceived = 0;
    double plain = 0;
    double similarity = 0;
    double seconds = 0;
};

void addScore(const Source& source, const Method& method, Score& score) {
    const std::clock_t start = std::clock();
    const core::Pixels shown = method.convert(source);
    const std::clock_t taken = std::clock() - start;
    const picture::CellColours wanted = picture::cellsOf(source.pixels);
    const picture::CellColours cells = picture::cellsOf(shown);
    ++score.pictures;
    score.perceived += picture::meanPerceivedDifference(wanted, cells);
    score.plain += picture::meanDifference(wanted, cells);
    score.similarity += picture::structuralSimilarity(wanted, cells).value_or(0);
    score.seconds += static_cast<double>(taken) / CLOCKS_PER_SEC;
}

// A row for each method; its last figure is the perceived difference over the reference's best.
void report(const std::string& title, const std::vector<Source>& sources,
            const std::vector<Method>& others, const std::vector<Method>& ours) {
    std::cout << "\n"
              << title << "\n\n| method | perceived | plain | SSIM | a second | ratio |\n"
              << "| --- | --- | --- | --- | --- | --- |\n";
    double best = 0;
    const auto row = [&](const Method& method, bool isReference) {
        Score score;
        for (const Source& source : sources) addScore(source, method, score);
        const double perceived = score.perceived / score.pictures;
        if (isReference && (best == 0 || perceived < best)) best = perceived;
        std::cout << std::fixed << "| " << method.name << std::setprecision(3) << " | " << perceived
                  << " | " << score.plain / score.pictures << " | "
                  << score.similarity / score.pictures << " | ";
        if (method.timed) std::cout << std::setprecision(0) << score.pictures / score.seconds;
        std::cout << " | ";
        if (!isReference) std::cout << std::setprecision(3) << perceived / best;
        std::cout << " |\n";
    };
    for (const Method& method : others) row(method, true);
    for (const Method& method : ours) row(method, false);
}

core::Pixels readPixels(const fs::path& path) {
    const auto picture = image_files::readImageFile(path);
    if (!picture) {
        std::cerr << path.string() << ": " << picture.error().message << '\n';
        std::exit(1);
    }
    return picture->pixels;
}

std::vector<Source> readSources(const fs::path& folder) {
    std::vector<Source> sources;
    for (const auto& className : fs::directory_iterator(folder)) {
        for (const auto& file : fs::directory_iterator(className.path()))
            sources.push_back({className.path().filename().string(),
                               file.path().filename().string(), readPixels(file.path())});
    }
    std::sort(sources.begin(), sources.end(), [](const Source& p, const Source& q) {
        return std::tie(p.className, p.file) < std::tie(q.className, q.file);
    });
    return sources;
}

Method ownMethod(const std::string& name, picture::Dither dither, bool isFree) {
    return {name, [=](const Source& source) { return converted(source.pixels, dither, isFree); }};
}

std::vector<Method> ownMethods(bool isFree) {
    return {ownMethod("none", picture::Dither::None, isFree),
            ownMethod("floyd-steinberg", picture::Dither::FloydSteinberg, isFree),
            ownMethod("atkinson", picture::Dither::Atkinson, isFree),
            ownMethod("bayer8", picture::Dither::Bayer8, isFree),
            ownMethod("blue-noise", picture::Dither::BlueNoise, isFree),
            ownMethod("optimal", picture::Dither::Optimal, isFree)};
}

void reportAll(const std::string& title, const std::vector<Source>& sources,
               const fs::path& remapped) {
    const std::vector<Method> fixed{
        {"ImageMagick, remap, Floyd-Steinberg",
         [](const Source& source) { return byImageMagick(source.pixels, false); }},
        {"Pillow, Floyd-Steinberg",
         [&](const Source& source) {
             return readPixels(remapped / source.className / source.file);
         },
         false}};
    const std::vector<Method> chosen{
        {"ImageMagick, 16 colours, Floyd-Steinberg",
         [](const Source& source) { return byImageMagick(source.pixels, true); }},
        {"pngquant, speed 1", [](const Source& source) { return byPngquant(source.pixels); }}};
    const std::string count = title + ", " + std::to_string(sources.size()) + " pictures, ";
    report(count + "the sixteen colours of CSS level 1", sources, fixed, ownMethods(false));
    report(count + "sixteen free colours", sources, chosen, ownMethods(true));
}

}  // namespace

int main(int count, char** words) {
    if (count != 3) {
        std::cerr << "usage: conversion_bench PICTURES REMAPPED\n";
        return 2;
    }
    MagickCoreGenesis(words[0], MagickFalse);
    SetMagickResourceLimit(ThreadResource, 1);
    const std::vector<Source> sources = readSources(words[1]);
    reportAll("all", sources, words[2]);
    for (auto begin = sources.begin(); begin != sources.end();) {
        const auto end = std::find_if(begin, sources.end(), [&](const Source& source) {
            return source.className != begin->className;
        });
        reportAll(begin->className, {begin, end}, words[2]);
        begin = end;
    }
    MagickCoreTerminus();
    return 0;
}
