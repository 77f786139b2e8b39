#pragma once

// What the conversion dialog has worked out off the window's thread: a picture read once, and what
// settings make of it, first roughly, then as it would be added.

#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

#include <QImage>

#include "catalogue/texture_row.h"
#include "core/pixels.h"
#include "core/progress.h"
#include "core/result.h"
#include "picture/dither.h"
#include "tasks/drawing_estimate.h"
#include "tasks/gather.h"
#include "tasks/recognise.h"

namespace pantile::desktop {

struct SourcePicture {
    std::string title;
    // Their owners are the dialog and the jobs that still work on them.
    std::shared_ptr<const core::Picture> picture;
    std::shared_ptr<const core::Picture> coarse;  ///< The same with fewer pixels.
    int coarseBy = 1;                             ///< Pixels of the picture to one of `coarse`.
    QImage image;                                 ///< `coarse`, to be shown.
};

/// Errors: as image_files::readImageBytes.
core::Result<SourcePicture> readSource(const tasks::GatherInput& input,
                                       const core::Progress& progress);

/// Within a tenth of a second, from the coarse picture: nearly what exactPreview gives.
/// Errors: as tasks::textureFromPicture.
core::Result<tasks::RecognisedTexture> coarsePreview(const SourcePicture& source,
                                                     tasks::PictureSettings settings,
                                                     const core::Progress& progress);

/// What will be added. Errors: as tasks::textureFromPicture.
core::Result<tasks::RecognisedTexture> exactPreview(const SourcePicture& source,
                                                    const tasks::PictureSettings& settings,
                                                    const core::Progress& progress);

struct PreviewCosts {
    std::optional<catalogue::Estimate> estimate;  ///< If a canvas takes it.
    std::int64_t savedMs = 0;                     ///< Of drawing, by simplifying.
    std::int64_t codeCharacters = 0;
};

/// Errors: as codec::encodeTextCode; Cancelled.
core::Result<PreviewCosts> previewCosts(const tasks::RecognisedTexture& made,
                                        const tasks::DrawingDefaults& defaults,
                                        const core::Progress& progress);

struct DitherSample {
    picture::Dither dither = picture::Dither::None;
    std::optional<core::Texture> texture;  ///< Nothing if the settings cannot be followed.
    std::optional<catalogue::Estimate> estimate;
};

enum class SampleWork {
    Quick,  ///< Without the dither that takes long, and without estimates.
    All,
};

/// The coarse picture under each dither, in the order of the enumeration. Errors: Cancelled.
core::Result<std::vector<DitherSample>> ditherSamples(const SourcePicture& source,
                                                      const tasks::PictureSettings& settings,
                                                      const tasks::DrawingDefaults& defaults,
                                                      SampleWork work,
                                                      const core::Progress& progress);

}  // namespace pantile::desktop
