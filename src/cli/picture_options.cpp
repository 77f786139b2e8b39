#include "cli/picture_options.h"

#include <array>
#include <string>

#include "image_files/read_image.h"

namespace pantile::cli {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace {

using picture::Anchor;

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

Error badPart(const std::string& text) {
    return {ErrorKind::Usage, "--part cannot be '" + text + "'",
            "write left,top,width,height in pixels, for example 40,0,128,128"};
}

Result<picture::Rectangle> parsePart(const std::string& text) {
    std::array<int, 4> numbers{};
    std::size_t at = 0;
    for (std::size_t i = 0; i < numbers.size(); ++i) {
        const bool last = i + 1 == numbers.size();
        const std::size_t comma = last ? text.size() : text.find(',', at);
        if (comma == std::string::npos || at > text.size()) return badPart(text);
        const auto number =
            parseNumber("--part", text.substr(at, comma - at), 0, image_files::kMaxImageSide);
        if (!number) return badPart(text);
        numbers.at(i) = static_cast<int>(*number);
        at = comma + 1;
    }
    return picture::Rectangle{{numbers[0], numbers[1]}, {numbers[2], numbers[3]}};
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

std::vector<OptionSpec> pictureOptions() {
    return {
        {"--enlarged", OptionKind::Value, "undo|keep",
         "whether small art that came enlarged is taken back"},
        {"--part", OptionKind::Value, "X,Y,WIDTH,HEIGHT", "use this part of the picture"},
        {"--anchor", OptionKind::Value, "WHERE",
         "what cover keeps, where contain puts it: top-left, top, centre ..."},
        {"--alpha-threshold", OptionKind::Value, "1..255",
         "cells with less alpha are left unpainted"},
        {"--background", OptionKind::Value, "#RRGGBB", "lay the picture on this colour instead"},
        {"--levels", OptionKind::Flag, "", "stretch from black to white"},
        {"--gamma", OptionKind::Value, "0.1..10", "lighten (above 1) the middle tones"},
        {"--brightness", OptionKind::Value, "-100..100", "lighten or darken everything"},
        {"--contrast", OptionKind::Value, "-100..100", "spread away from middle grey"},
        {"--saturation", OptionKind::Value, "-100..100", "stronger or paler colours"},
        {"--sharpen", OptionKind::Value, "0..100", "stress what differs from its surroundings"},
    };
}

Result<void> readPictureOptions(const Arguments& arguments, tasks::PictureSettings& settings) {
    if (const auto word = arguments.value("--enlarged")) {
        PANTILE_ASSIGN_OR_RETURN(settings.enlarged, parseChoice("--enlarged", *word, kEnlarged));
    }
    if (const auto word = arguments.value("--anchor")) {
        PANTILE_ASSIGN_OR_RETURN(settings.anchor, parseChoice("--anchor", *word, kAnchors));
    }
    if (const auto text = arguments.value("--part")) {
        PANTILE_ASSIGN_OR_RETURN(settings.part, parsePart(*text));
    }
    int threshold = settings.alphaThreshold;
    PANTILE_RETURN_IF_ERROR(arguments.readNumber("--alpha-threshold", 1, 255, threshold));
    settings.alphaThreshold = static_cast<std::uint8_t>(threshold);
    if (const auto text = arguments.value("--background")) {
        const auto colour = core::parseHexColour(*text);
        if (!colour) return Error{ErrorKind::Usage, colour.error().message, colour.error().hint};
        settings.background = *colour;
    }
    return readAdjustments(arguments, settings.adjustments);
}

}  // namespace pantile::cli
