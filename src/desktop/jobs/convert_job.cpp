#include "desktop/jobs/convert_job.h"

#include <algorithm>
#include <cmath>

#include "codec/text_code.h"
#include "core/colour_spaces.h"
#include "core/text.h"
#include "image_files/read_image.h"
#include "picture/resample.h"
#include "tasks/bytes.h"

namespace pantile::desktop {

using core::Result;

namespace {

// Four pixels to a cell of the usual grid: more are hardly seen in it.
constexpr int kCoarseSide = 256;
constexpr int kDithers = static_cast<int>(picture::Dither::Optimal) + 1;

Result<core::Picture> withFewerPixels(const core::Picture& picture, int by,
                                      const core::Progress& progress) {
    const core::Size size = picture.pixels.size;
    const core::Size target{std::max(1, size.width / by), std::max(1, size.height / by)};
    PANTILE_ASSIGN_OR_RETURN(
        const picture::LinearPicture averaged,
        picture::resample(picture.pixels, picture::frame(size, target, picture::Fit::Stretch),
                          picture::Scale::Area, progress));
    core::Picture fewer;
    fewer.pixels.size = target;
    fewer.pixels.pixels.reserve(averaged.pixels.size());
    for (const picture::LinearPixel& pixel : averaged.pixels) {
        const core::Rgb8 colour = core::toRgb8(pixel.colour);
        const auto alpha = static_cast<std::uint8_t>(std::lround(pixel.alpha * 255));
        fewer.pixels.pixels.push_back({colour.r, colour.g, colour.b, alpha});
    }
    return fewer;
}

QImage imageOf(const core::Pixels& pixels) {
    QImage image(pixels.size.width, pixels.size.height, QImage::Format_RGBA8888);
    for (int y = 0; y < pixels.size.height; ++y) {
        auto* const line = image.scanLine(y);
        for (int x = 0; x < pixels.size.width; ++x) {
            const core::Rgba8 pixel = pixels.at(x, y);
            auto* const bytes = line + std::ptrdiff_t{4} * x;
            bytes[0] = pixel.r;
            bytes[1] = pixel.g;
            bytes[2] = pixel.b;
            bytes[3] = pixel.a;
        }
    }
    return image;
}

tasks::PictureSettings forCoarse(const SourcePicture& source, tasks::PictureSettings settings) {
    const core::Size size = source.coarse->pixels.size;
    if (settings.part) {
        picture::Rectangle& part = *settings.part;
        part.at = {std::clamp(part.at.x / source.coarseBy, 0, size.width - 1),
                   std::clamp(part.at.y / source.coarseBy, 0, size.height - 1)};
        part.size = {std::clamp(part.size.width / source.coarseBy, 1, size.width - part.at.x),
                     std::clamp(part.size.height / source.coarseBy, 1, size.height - part.at.y)};
    }
    // Fewer pixels are no longer enlarged art, nor few enough to be taken cell by cell.
    if (source.coarseBy > 1) {
        settings.enlarged = tasks::Enlarged::Keep;
        settings.fit = settings.fit.value_or(picture::Fit::Cover);
    }
    return settings;
}

Result<tasks::RecognisedTexture> madeFrom(const core::Picture& picture, const std::string& title,
                                          const tasks::PictureSettings& settings,
                                          const core::Progress& progress) {
    return tasks::textureFromPicture(picture, title, settings, progress);
}

}  // namespace

Result<SourcePicture> readSource(const tasks::GatherInput& input, const core::Progress& progress) {
    PANTILE_ASSIGN_OR_RETURN(
        core::Picture picture,
        input.bytes ? image_files::readImageBytes(tasks::asBytes(*input.bytes), input.path)
                    : image_files::readImageFile(input.path));
    SourcePicture source;
    source.title = tasks::titleFromFileName(std::filesystem::path(input.path).filename());
    source.picture = std::make_shared<const core::Picture>(std::move(picture));
    const core::Size size = source.picture->pixels.size;
    source.coarseBy = std::max(1, std::max(size.width, size.height) / kCoarseSide);
    source.coarse = source.picture;
    if (source.coarseBy > 1) {
        PANTILE_ASSIGN_OR_RETURN(core::Picture fewer,
                                 withFewerPixels(*source.picture, source.coarseBy, progress));
        source.coarse = std::make_shared<const core::Picture>(std::move(fewer));
    }
    source.image = imageOf(source.coarse->pixels);
    return source;
}

Result<tasks::RecognisedTexture> coarsePreview(const SourcePicture& source,
                                               tasks::PictureSettings settings,
                                               const core::Progress& progress) {
    // The best dither takes its time; this one comes nearest to it.
    if (settings.dither == picture::Dither::Optimal)
        settings.dither = picture::Dither::FloydSteinberg;
    return madeFrom(*source.coarse, source.title, forCoarse(source, std::move(settings)), progress);
}

Result<tasks::RecognisedTexture> exactPreview(const SourcePicture& source,
                                              const tasks::PictureSettings& settings,
                                              const core::Progress& progress) {
    return madeFrom(*source.picture, source.title, settings, progress);
}

Result<PreviewCosts> previewCosts(const tasks::RecognisedTexture& made,
                                  const tasks::DrawingDefaults& defaults,
                                  const core::Progress& progress) {
    PreviewCosts costs;
    PANTILE_ASSIGN_OR_RETURN(const codec::TextCode code, codec::encodeTextCode(made.texture));
    costs.codeCharacters = static_cast<std::int64_t>(core::codePointCount(code.text));
    costs.estimate = tasks::estimateDrawing(made.texture, defaults);
    if (progress.stopRequested()) return core::stoppedError();
    if (made.fuller && costs.estimate) {
        const auto fuller = tasks::estimateDrawing(*made.fuller, defaults);
        costs.savedMs = fuller ? fuller->drawMs - costs.estimate->drawMs : 0;
    }
    return costs;
}

Result<std::vector<DitherSample>> ditherSamples(const SourcePicture& source,
                                                const tasks::PictureSettings& settings,
                                                const tasks::DrawingDefaults& defaults,
                                                SampleWork work, const core::Progress& progress) {
    std::vector<DitherSample> samples;
    for (int i = 0; i < kDithers; ++i) {
        DitherSample sample;
        sample.dither = static_cast<picture::Dither>(i);
        tasks::PictureSettings each = forCoarse(source, settings);
        each.dither = sample.dither;
        if (sample.dither != picture::Dither::Optimal || work == SampleWork::All) {
            auto made = madeFrom(*source.coarse, source.title, each, progress);
            if (made) sample.texture = std::move(made->texture);
        }
        if (progress.stopRequested()) return core::stoppedError();
        if (sample.texture && work == SampleWork::All)
            sample.estimate = tasks::estimateDrawing(*sample.texture, defaults);
        samples.push_back(std::move(sample));
    }
    return samples;
}

}  // namespace pantile::desktop
