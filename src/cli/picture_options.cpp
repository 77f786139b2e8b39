#include "cli/picture_options.h"

#include <array>
#include <string>

#include "cli/number_list.h"
#include "image_files/read_image.h"
#include "picture/merge_alike.h"
#include "picture/strays.h"

namespace pantile::cli {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace {

using picture::Anchor;

constexpr std::array<Choice<picture::Fit>, 4> kFits = {{
    {"cover", picture::Fit::Cover},
    {"contain", picture::Fit::Contain},
    {"stretch", picture::Fit::Stretch},
    {"exact", picture::Fit::Exact},
}};
constexpr std::array<Choice<picture::Scale>, 3> kScales = {{
    {"area", picture::Scale::Area},
    {"lanczos", picture::Scale::Lanczos},
    {"nearest", picture::Scale::Nearest},
}};
constexpr std::array<Choice<picture::Dither>, 12> kDithers = {{
    {"none", picture::Dither::None},
    {"floyd-steinberg", picture::Dither::FloydSteinberg},
    {"jarvis-judice-ninke", picture::Dither::JarvisJudiceNinke},
    {"stucki", picture::Dither::Stucki},
    {"atkinson", picture::Dither::Atkinson},
    {"sierra", picture::Dither::Sierra},
    {"burkes", picture::Dither::Burkes},
    {"bayer2", picture::Dither::Bayer2},
    {"bayer4", picture::Dither::Bayer4},
    {"bayer8", picture::Dither::Bayer8},
    {"blue-noise", picture::Dither::BlueNoise},
    {"optimal", picture::Dither::Optimal},
}};

constexpr std::array<Choice<Anchor>, 9> kAnchors = {{
    {"top-left", Anchor::TopLeft},
    {"top", Anchor::Top},
    {"top-right", Anchor::TopRight},
    {"left", Anchor::Left},
    {"centre", Anchor::Centre},
    {"right", Anchor::Right},
    {"bottom-left", Anchor::BottomLeft},
    {"bottom", Anchor::Bottom},
    {"bottom-right", Anchor::BottomRight},
}};
constexpr std::array<Choice<tasks::Enlarged>, 2> kEnlarged = {{
    {"undo", tasks::Enlarged::Undo},
    {"keep", tasks::Enlarged::Keep},
}};

Result<picture::Rectangle> parsePart(const std::string& text) {
    PANTILE_ASSIGN_OR_RETURN(
        const auto numbers,
        parseNumberList("--part", text,
                        {4, 4, 0, image_files::kMaxImageSide,
                         "LEFT,TOP,WIDTH,HEIGHT in pixels, such as 40,0,128,128"}));
    return picture::Rectangle{{numbers[0], numbers[1]}, {numbers[2], numbers[3]}};
}

// Shells take a bare # for the beginning of a remark.
Result<core::Rgb8> parseColour(const std::string& option, std::string_view text) {
    const auto colour = core::parseHexColour(text);
    if (colour) return *colour;
    return Error{ErrorKind::Usage, option + ": " + colour.error().message,
                 "write a colour as #rrggbb, in quotes: " + option + " '#2f6f5e'"};
}

Result<void> readColours(const Arguments& arguments, tasks::PictureSettings& settings) {
    PANTILE_ASSIGN_OR_RETURN(
        const auto colours,
        arguments.number("--colours", core::kMinPaletteColours, core::kMaxPaletteColours));
    if (colours) settings.colours = static_cast<int>(*colours);
    PANTILE_ASSIGN_OR_RETURN(settings.pinned, pinnedColours(arguments));
    PANTILE_RETURN_IF_ERROR(
        arguments.readNumber("--merge", 0, picture::kMergeUnits, settings.mergeWithin));
    if (const auto dither = arguments.value("--dither")) {
        PANTILE_ASSIGN_OR_RETURN(settings.dither, parseChoice("--dither", *dither, kDithers));
    }
    PANTILE_ASSIGN_OR_RETURN(const auto strength, arguments.fraction("--strength", 0, 1));
    settings.strength = strength.value_or(1);
    return arguments.readNumber("--simplify", 0, picture::kMaxSimplifyLevel, settings.simplify);
}

Result<void> readFraming(const Arguments& arguments, tasks::PictureSettings& settings) {
    if (const auto fit = arguments.value("--fit")) {
        PANTILE_ASSIGN_OR_RETURN(settings.fit, parseChoice("--fit", *fit, kFits));
    }
    if (const auto scale = arguments.value("--scale")) {
        PANTILE_ASSIGN_OR_RETURN(settings.scale, parseChoice("--scale", *scale, kScales));
    }
    if (const auto word = arguments.value("--enlarged")) {
        PANTILE_ASSIGN_OR_RETURN(settings.enlarged, parseChoice("--enlarged", *word, kEnlarged));
    }
    if (const auto word = arguments.value("--anchor")) {
        PANTILE_ASSIGN_OR_RETURN(settings.anchor, parseChoice("--anchor", *word, kAnchors));
    }
    if (const auto text = arguments.value("--part")) {
        PANTILE_ASSIGN_OR_RETURN(settings.part, parsePart(*text));
    }
    return {};
}

Result<void> readTransparency(const Arguments& arguments, tasks::PictureSettings& settings) {
    int threshold = settings.alphaThreshold;
    PANTILE_RETURN_IF_ERROR(arguments.readNumber("--alpha-threshold", 1, 255, threshold));
    settings.alphaThreshold = static_cast<std::uint8_t>(threshold);
    if (const auto text = arguments.value("--background")) {
        PANTILE_ASSIGN_OR_RETURN(settings.background, parseColour("--background", *text));
    }
    return {};
}

Result<void> readAdjustments(const Arguments& arguments, picture::Adjustments& adjustments) {
    adjustments.levels = arguments.has("--levels");
    PANTILE_ASSIGN_OR_RETURN(const auto gamma, arguments.fraction("--gamma", 0.1, 10));
    adjustments.gamma = gamma.value_or(1);
    PANTILE_RETURN_IF_ERROR(
        arguments.readNumber("--brightness", -100, 100, adjustments.brightness));
    PANTILE_RETURN_IF_ERROR(arguments.readNumber("--contrast", -100, 100, adjustments.contrast));
    PANTILE_RETURN_IF_ERROR(
        arguments.readNumber("--saturation", -100, 100, adjustments.saturation));
    return arguments.readNumber("--sharpen", 0, 100, adjustments.sharpen);
}

}  // namespace

Result<std::vector<core::Rgb8>> pinnedColours(const Arguments& arguments) {
    std::vector<core::Rgb8> colours;
    for (const std::string& text : arguments.values("--pin")) {
        PANTILE_ASSIGN_OR_RETURN(const core::Rgb8 colour, parseColour("--pin", text));
        colours.push_back(colour);
    }
    return colours;
}

std::vector<OptionSpec> pictureOptions() {
    return {
        {"--colours", OptionKind::Value, "N", "at most so many colours, 2 to 256"},
        {"--pin", OptionKind::Repeated, "'#RRGGBB'", "one of the colours, as it is"},
        {"--merge", OptionKind::Value, "N",
         "join colours closer than N; 200 is just visible, black and white are 10000 apart"},
        {"--fit", OptionKind::Value, "cover|contain|stretch|exact", "how a picture meets the grid"},
        {"--scale", OptionKind::Value, "area|lanczos|nearest", "how pixels become cells"},
        {"--dither", OptionKind::Value, "NAME", "how missing colours are mixed, see below"},
        {"--strength", OptionKind::Value, "0..1", "how strongly to dither"},
        {"--simplify", OptionKind::Value, "LEVEL",
         "give up small patches that differ little, 0 to 1000, to draw it sooner"},
        {"--enlarged", OptionKind::Value, "undo|keep",
         "whether small art that came enlarged is taken back"},
        {"--part", OptionKind::Value, "X,Y,WIDTH,HEIGHT", "use this part of the picture"},
        {"--anchor", OptionKind::Value, "WHERE",
         "what cover keeps, where contain puts it: top-left, top, centre ..."},
        {"--alpha-threshold", OptionKind::Value, "1..255",
         "cells with less alpha are left unpainted"},
        {"--background", OptionKind::Value, "'#RRGGBB'", "lay the picture on this colour instead"},
        {"--levels", OptionKind::Flag, "", "stretch from black to white"},
        {"--gamma", OptionKind::Value, "0.1..10", "lighten (above 1) the middle tones"},
        {"--brightness", OptionKind::Value, "-100..100", "lighten or darken everything"},
        {"--contrast", OptionKind::Value, "-100..100", "spread away from middle grey"},
        {"--saturation", OptionKind::Value, "-100..100", "stronger or paler colours"},
        {"--sharpen", OptionKind::Value, "0..100", "stress what differs from its surroundings"},
    };
}

Result<tasks::PictureSettings> readPictureOptions(const Arguments& arguments) {
    tasks::PictureSettings settings;
    PANTILE_RETURN_IF_ERROR(readColours(arguments, settings));
    PANTILE_RETURN_IF_ERROR(readFraming(arguments, settings));
    PANTILE_RETURN_IF_ERROR(readTransparency(arguments, settings));
    PANTILE_RETURN_IF_ERROR(readAdjustments(arguments, settings.adjustments));
    return settings;
}

}  // namespace pantile::cli
