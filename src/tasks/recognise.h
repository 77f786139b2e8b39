#pragma once

// What some bytes from outside hold: a picture, a grid as CSV, or text with codes in it.

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "codec/text_code.h"
#include "core/canvas.h"
#include "core/pixels.h"
#include "core/progress.h"
#include "core/result.h"
#include "core/texture.h"
#include "picture/convert.h"
#include "picture/crop.h"
#include "tasks/enlarged_art.h"

namespace pantile::tasks {

struct PictureSettings {
    std::optional<core::Canvas> canvas;
    std::optional<int> colours;
    std::vector<core::Rgb8> pinned;  ///< See picture::ConvertOptions.
    int mergeWithin = 0;             ///< The same.
    std::optional<picture::Fit> fit;
    std::optional<picture::Rectangle> part;  ///< Of the picture as it comes; else all of it.
    Enlarged enlarged = Enlarged::Undo;
    picture::Anchor anchor = picture::Anchor::Centre;
    picture::Scale scale = picture::Scale::Area;
    picture::Adjustments adjustments;
    std::uint8_t alphaThreshold = picture::ConvertOptions{}.alphaThreshold;
    std::optional<core::Rgb8> background;
    picture::Dither dither = picture::Dither::None;
    double strength = 1;
    int simplify = 0;  ///< 0..picture::kMaxSimplifyLevel.
};

/// Pictures up to so many cells a side are taken cell by cell if neither canvas nor fit is given;
/// larger ones are made to cover a grid of this size.
inline constexpr int kUsualGridSide = 64;

/// How far a texture is from the picture it was made of: means of CIEDE2000.
struct Difference {
    double plain = 0;
    double perceived = 0;  ///< As an eye at a distance sees both.
};

struct RecognisedTexture {
    core::Texture texture;
    std::vector<std::string> repairs;      ///< What was put right in its code, in words.
    std::optional<double> enlargement;     ///< Pixels a cell in the picture, if that was undone.
    std::optional<Difference> difference;  ///< If a picture's colours were mapped.
    std::optional<core::Texture> fuller;   ///< What it was before it was simplified.
};

struct Recognised {
    std::vector<RecognisedTexture> textures;
    std::vector<codec::DamagedCode> damaged;
    bool fromCodes = false;
    bool foreign = false;  ///< Neither picture nor grid nor code: nothing that concerns us.
};

/// Whether the name says that it is a picture, whatever the file holds.
bool endsAsPicture(const std::filesystem::path& path);

/// Whether recognise() will take the bytes for a picture.
bool isPicture(std::string_view bytes);

/// `name` (of the file) becomes the title of a picture or grid that has none of its own.
/// Errors: as reading a picture, a grid or converting does, the name in front.
core::Result<Recognised> recognise(std::string_view name, std::string_view bytes,
                                   const PictureSettings& settings,
                                   const codec::PaletteLookup& paletteLookup,
                                   const core::Progress& progress = {});

/// A picture that was read already, as recognise() makes a texture of it: for those who try several
/// settings on one. Errors: as converting does.
core::Result<RecognisedTexture> textureFromPicture(core::Picture source, const std::string& title,
                                                   const PictureSettings& settings,
                                                   const core::Progress& progress = {});

/// A title from a file's name: without its ending, '-' and '_' as blanks.
std::string titleFromFileName(const std::filesystem::path& path);

}  // namespace pantile::tasks
