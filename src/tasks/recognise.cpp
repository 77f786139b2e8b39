#include "tasks/recognise.h"

#include <algorithm>
#include <span>
#include <utility>

#include "core/text.h"
#include "image_files/image_kind.h"
#include "image_files/read_image.h"
#include "picture/picture_difference.h"
#include "picture/strays.h"
#include "tasks/bytes.h"
#include "tasks/grid_csv.h"

namespace pantile::tasks {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace {

constexpr core::TextRule kTitleRule{"title", core::kMaxTitleCharacters};

bool fitsUsualGrid(core::Size size) {
    return size.width <= kUsualGridSide && size.height <= kUsualGridSide;
}

// A fixed palette takes one more entry for cells that the picture leaves open, if it has room.
std::optional<core::Palette> withTransparentEntry(const core::Palette& palette) {
    if (palette.transparent() || palette.size() == core::kMaxPaletteColours) return palette;
    std::vector<core::Rgb8> colours(palette.colours().begin(), palette.colours().end());
    const auto transparent = static_cast<core::PaletteIndex>(colours.size());
    colours.push_back({0, 0, 0});
    return *core::Palette::create(std::move(colours), transparent);
}

bool uses(const core::Grid& grid, std::optional<core::PaletteIndex> index) {
    const auto cells = grid.cells();
    return index && std::find(cells.begin(), cells.end(), *index) != cells.end();
}

picture::ConvertOptions convertOptions(const core::Picture& source,
                                       const PictureSettings& settings) {
    picture::ConvertOptions options;
    options.anchor = settings.anchor;
    options.scale = settings.scale;
    options.adjustments = settings.adjustments;
    options.alphaThreshold = settings.alphaThreshold;
    options.background = settings.background;
    options.dither = settings.dither;
    options.strength = settings.strength;
    options.pinned = settings.pinned;
    options.mergeWithin = settings.mergeWithin;
    const bool asItIs = !settings.canvas && fitsUsualGrid(source.pixels.size);
    options.fit = settings.fit.value_or(asItIs ? picture::Fit::Exact : picture::Fit::Cover);
    if (settings.canvas) {
        options.target = settings.canvas->size;
        if (settings.canvas->palette)
            options.palette = withTransparentEntry(*settings.canvas->palette);
        options.colours = settings.colours.value_or(settings.canvas->freeColours);
    } else {
        const bool exact = options.fit == picture::Fit::Exact;
        options.target = exact ? core::Size{} : core::Size{kUsualGridSide, kUsualGridSide};
        options.colours = settings.colours.value_or(exact ? 0 : core::Canvas{}.freeColours);
    }
    return options;
}

Difference differenceOf(const picture::CellColours& wanted, const core::Texture& texture) {
    const picture::CellColours shown = picture::coloursShown(texture.grid(), texture.palette());
    return {picture::meanDifference(wanted, shown),
            picture::meanPerceivedDifference(wanted, shown)};
}

Result<void> simplify(RecognisedTexture& recognised, int level) {
    if (level == 0) return {};
    const core::Texture& texture = recognised.texture;
    PANTILE_ASSIGN_OR_RETURN(core::Grid grid,
                             picture::simplify(texture.grid(), texture.palette(), level));
    PANTILE_ASSIGN_OR_RETURN(
        core::Texture simplified,
        core::Texture::create(std::move(grid), texture.palette(), texture.text()));
    recognised.fuller = std::exchange(recognised.texture, std::move(simplified));
    return {};
}

Result<core::Texture> textureFromCsv(std::string_view bytes, const std::string& title,
                                     const PictureSettings& settings) {
    PANTILE_ASSIGN_OR_RETURN(GridCsv csv, parseGridCsv(bytes));
    if (!csv.palette && settings.canvas) csv.palette = settings.canvas->palette;
    if (!csv.palette) {
        return Error{
            ErrorKind::InvalidInput, "the grid has no palette",
            "put a line such as '# palette #1b2631 #f2efe4' at its top, or name a canvas with "
            "a fixed palette by --canvas"};
    }
    core::TextureText text;
    text.title = csv.title.empty() ? title : csv.title;
    return core::Texture::create(std::move(csv.grid), std::move(*csv.palette), std::move(text));
}

bool isText(std::string_view bytes) {
    return bytes.find('\0') == std::string_view::npos;
}

}  // namespace

std::string titleFromFileName(const std::filesystem::path& path) {
    std::string stem = path.stem().string();
    std::replace(stem.begin(), stem.end(), '-', ' ');
    std::replace(stem.begin(), stem.end(), '_', ' ');
    return core::cleanedText(stem, kTitleRule);
}

Result<RecognisedTexture> textureFromPicture(core::Picture source, const std::string& title,
                                             const PictureSettings& settings,
                                             const core::Progress& progress) {
    if (settings.part) {
        PANTILE_ASSIGN_OR_RETURN(source, picture::cropped(source, *settings.part));
    }
    std::optional<double> enlargement;
    if (settings.enlarged == Enlarged::Undo) {
        const core::Size usual{kUsualGridSide, kUsualGridSide};
        enlargement = undoEnlargement(source, settings.canvas ? settings.canvas->size : usual);
    }
    const picture::ConvertOptions options = convertOptions(source, settings);
    // A file's own indices are kept unless the user or the canvas asks for other or fewer colours.
    const int colourLimit = options.colours == 0 ? core::kMaxPaletteColours : options.colours;
    const bool tooMany = source.indexed && std::ssize(source.indexed->table) > colourLimit;
    if (tooMany) source.indexed.reset();
    PANTILE_ASSIGN_OR_RETURN(picture::ConvertedPicture converted,
                             picture::convertPicture(source, options, progress));
    core::TextureText text;
    text.title = title;
    const bool leavesNoneOpen = !uses(converted.grid, converted.palette.transparent());
    if (leavesNoneOpen && settings.canvas && settings.canvas->palette) {
        converted.palette = *settings.canvas->palette;
    }
    PANTILE_ASSIGN_OR_RETURN(core::Texture texture,
                             core::Texture::create(std::move(converted.grid),
                                                   std::move(converted.palette), std::move(text)));
    RecognisedTexture recognised{std::move(texture), {}, enlargement, {}, {}};
    PANTILE_RETURN_IF_ERROR(simplify(recognised, settings.simplify));
    if (converted.wanted)
        recognised.difference = differenceOf(*converted.wanted, recognised.texture);
    return recognised;
}

bool endsAsPicture(const std::filesystem::path& path) {
    constexpr std::array<std::string_view, 7> kEndings = {".png", ".jpg",  ".jpeg", ".gif",
                                                          ".bmp", ".webp", ".svg"};
    std::string ending = path.extension().string();
    for (char& letter : ending)
        if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
    return std::find(kEndings.begin(), kEndings.end(), ending) != kEndings.end();
}

bool isPicture(std::string_view bytes) {
    return image_files::imageKindOf(asBytes(bytes)).has_value();
}

Result<Recognised> recognise(std::string_view name, std::string_view bytes,
                             const PictureSettings& settings,
                             const codec::PaletteLookup& paletteLookup,
                             const core::Progress& progress) {
    const std::string title = titleFromFileName(name);
    Recognised recognised;
    if (isPicture(bytes)) {
        PANTILE_ASSIGN_OR_RETURN(core::Picture source,
                                 image_files::readImageBytes(asBytes(bytes), name));
        auto texture = textureFromPicture(std::move(source), title, settings, progress);
        if (!texture) return texture.error().at(name);
        recognised.textures.push_back(*std::move(texture));
        return recognised;
    }
    if (looksLikeGridCsv(bytes)) {
        auto texture = textureFromCsv(bytes, title, settings);
        if (!texture) return texture.error().at(name);
        recognised.textures.push_back({*std::move(texture), {}, {}, {}, {}});
        return recognised;
    }
    if (isText(bytes)) {
        codec::Harvest harvest = codec::harvestCodes(bytes, paletteLookup, progress);
        for (codec::FoundCode& found : harvest.found) {
            recognised.textures.push_back(
                {std::move(found.texture), std::move(found.repairs), {}, {}, {}});
        }
        recognised.damaged = std::move(harvest.damaged);
    }
    recognised.fromCodes = true;
    recognised.foreign = recognised.textures.empty() && recognised.damaged.empty();
    return recognised;
}

}  // namespace pantile::tasks
