#include <cmath>
#include <filesystem>
#include <ostream>

#include "cli/commands/all.h"
#include "cli/json.h"
#include "cli/picture_options.h"
#include "cli/standard_input.h"
#include "cli/texture_answer.h"
#include "core/text.h"
#include "tasks/gather.h"
#include "tasks/library_place.h"

namespace pantile::cli {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace {

Result<std::vector<tasks::GatherInput>> gatherInputs(Session& session, const Arguments& arguments) {
    std::vector<tasks::GatherInput> inputs;
    bool standardInputTaken = false;
    for (const std::string& path : arguments.positional()) {
        if (path != "-") {
            inputs.push_back({path, std::nullopt});
            continue;
        }
        if (standardInputTaken) {
            return Error{ErrorKind::Usage, "'-' stands twice", "standard input can be read once"};
        }
        standardInputTaken = true;
        PANTILE_ASSIGN_OR_RETURN(std::string bytes, readStandardInput(session.in));
        inputs.push_back({"standard input", std::move(bytes)});
    }
    return inputs;
}

QJsonValue enlargedJson(const tasks::GatheredTexture& texture) {
    return texture.enlargement ? QJsonValue(*texture.enlargement) : QJsonValue();
}

QJsonValue differenceJson(const tasks::GatheredTexture& texture) {
    if (!texture.difference) return {};
    return QJsonObject{{"plain", jsonHundredths(texture.difference->plain)},
                       {"perceived", jsonHundredths(texture.difference->perceived)}};
}

std::string tenths(double number) {
    const auto rounded = std::llround(number * 10);
    return std::to_string(rounded / 10) + '.' + std::to_string(rounded % 10);
}

std::string costsText(const tasks::GatheredTexture& texture) {
    if (!texture.estimate) {
        const std::string why =
            texture.undrawable.empty() ? "it cannot be drawn" : texture.undrawable;
        return why + "; --colours and --canvas make pictures fit one";
    }
    std::string text = std::to_string(texture.estimate->loadBytes) + " bytes, " +
                       spokenTime(texture.estimate->drawMs) + " to draw";
    if (texture.savedMs > 0) text += ", " + spokenTime(texture.savedMs) + " saved by simplifying";
    return text;
}

// Looks, where it was converted, against bytes and time.
void printCosts(std::ostream& out, const tasks::GatheredTexture& texture) {
    out << "  ";
    if (texture.difference) {
        out << tenths(texture.difference->plain) << " off the picture, "
            << tenths(texture.difference->perceived) << " from a distance; ";
    }
    out << costsText(texture) << '\n';
}

// The factor with at most two decimals.
void printEnlargement(std::ostream& out, double factor) {
    const auto hundredths = std::llround(factor * 100);
    out << "  taken back to its cells: it was enlarged " << hundredths / 100;
    if (hundredths % 100 != 0) out << '.' << hundredths / 10 % 10 << hundredths % 10;
    out << " times; --enlarged keep takes it as it is\n";
}

QJsonValue alikeJson(const tasks::GatheredTexture& texture) {
    if (!texture.alike) return {};
    return QJsonObject{{"id", jsonNumber(texture.alike->id.value)},
                       {"title", jsonText(texture.alike->title)},
                       {"distance", texture.alike->distance},
                       {"how", jsonText(texture.alike->how)}};
}

void printAlike(std::ostream& out, const tasks::LookAlike& alike) {
    out << (alike.distance == 0 ? "  you have this: " : "  you have one like this: ")
        << alike.id.value << " \"" << core::visibleText(alike.title) << "\", " << alike.how << '\n';
}

QJsonObject reportJson(const tasks::GatherReport& report) {
    const auto added = jsonArray(report.added, [](const tasks::GatheredTexture& texture) {
        return QJsonObject{
            {"id", jsonNumber(texture.id.value)},
            {"title", jsonText(texture.title)},
            {"width", texture.size.width},
            {"height", texture.size.height},
            {"colours", texture.colours},
            {"path", jsonText(texture.path)},
            {"recovered", texture.recovered},
            {"repairs", jsonTexts(texture.repairs)},
            {"alike", alikeJson(texture)},
            {"enlarged", enlargedJson(texture)},
            {"difference", differenceJson(texture)},
            {"load_bytes",
             texture.estimate ? jsonNumber(texture.estimate->loadBytes) : QJsonValue()},
            {"draw_seconds",
             texture.estimate ? jsonSeconds(texture.estimate->drawMs) : QJsonValue()},
            {"undrawable",
             texture.undrawable.empty() ? QJsonValue() : jsonText(texture.undrawable)},
            {"saved_seconds", jsonSeconds(texture.savedMs)}};
    });
    const auto known = jsonArray(report.known, [](const tasks::KnownTexture& texture) {
        return QJsonObject{{"id", jsonNumber(texture.id.value)},
                           {"title", jsonText(texture.title)},
                           {"path", jsonText(texture.path)},
                           {"repairs", jsonTexts(texture.repairs)},
                           {"filed", texture.filed}};
    });
    const auto refused = jsonArray(report.refused, [](const tasks::RefusedInput& input) {
        QJsonObject object{{"path", jsonText(input.path)},
                           {"reason", jsonText(input.error.message)},
                           {"hint", jsonText(input.error.hint)}};
        if (!input.text.empty()) object.insert("text", jsonText(input.text));
        return object;
    });
    const auto libraries = jsonArray(report.libraries, [](const tasks::TakenLibrary& taken) {
        return QJsonObject{{"path", jsonText(taken.path)},
                           {"whole", taken.whole},
                           {"textures", jsonNumber(taken.textures)}};
    });
    QJsonObject all{{"added", added},
                    {"known", known},
                    {"refused", refused},
                    {"libraries", libraries},
                    {"passed_over", jsonNumber(report.passedOver)}};
    if (report.stopped) all.insert("error", jsonError(*report.stopped).value("error"));
    return all;
}

void printLibraries(std::ostream& out, const tasks::GatherReport& report) {
    for (const tasks::TakenLibrary& taken : report.libraries) {
        const std::string path = core::visibleText(taken.path);
        const std::string textures = counted(taken.textures, "texture", "textures");
        if (taken.whole) {
            out << "Took in all of the library " << path << ", with " << textures << ".\n";
        } else {
            out << "Of the library " << path << " only the " << textures
                << " went into this one, with words, stars and shelves.\n"
                << "  Name a new library with --library to get all of it.\n";
        }
    }
}

// What is wrong, after the path, which it may begin with already, or with the file's name.
std::string withPath(const tasks::RefusedInput& input) {
    std::string_view what = input.error.message;
    if (what.starts_with(input.path)) return std::string(what);
    const std::string name = std::filesystem::path(input.path).filename().string() + ": ";
    if (what.starts_with(name)) what.remove_prefix(name.size());
    return input.path + ": " + std::string(what);
}

void printReport(Session& session, const tasks::GatherReport& report) {
    for (const tasks::GatheredTexture& texture : report.added) {
        session.out << (texture.recovered ? "Recovered " : "Added ") << texture.id.value << "  "
                    << core::visibleText(texture.title) << ", " << texture.size.width << "x"
                    << texture.size.height << ", " << counted(texture.colours, "colour", "colours")
                    << '\n';
        printRepairs(session.out, texture.repairs);
        if (texture.enlargement) printEnlargement(session.out, *texture.enlargement);
        printCosts(session.out, texture);
        if (texture.alike) printAlike(session.out, *texture.alike);
    }
    for (const tasks::KnownTexture& texture : report.known) {
        session.out << "Known " << texture.id.value << "  " << core::visibleText(texture.title)
                    << ", from " << core::visibleText(texture.path)
                    << (texture.filed ? "; tags and shelf put on" : "") << '\n';
        printRepairs(session.out, texture.repairs);
    }
    for (const tasks::RefusedInput& input : report.refused) {
        session.err << "Refused " << core::visibleText(withPath(input)) << '\n';
        if (!input.error.hint.empty())
            session.err << "  " << core::visibleText(input.error.hint) << '\n';
    }
    printLibraries(session.out, report);
    std::int64_t added = std::ssize(report.added);
    for (const tasks::TakenLibrary& taken : report.libraries)
        if (taken.whole) added += taken.textures;
    session.out << added << " added, " << report.known.size() << " known already, "
                << report.refused.size() << " refused";
    if (report.passedOver > 0)
        session.out << ", " << counted(report.passedOver, "file", "files") << " passed over";
    session.out << ".\n";
}

Result<Outcome> runAdd(Session& session, const Arguments& arguments) {
    PANTILE_RETURN_IF_ERROR(checkPositional(arguments, 1, 100000, "add PATH..."));
    tasks::GatherOptions options;
    PANTILE_ASSIGN_OR_RETURN(options.pictures, readPictureOptions(arguments));
    options.canvas = arguments.value("--canvas").value_or("");
    options.title = arguments.value("--title");
    options.author = arguments.value("--author");
    options.licence = arguments.value("--licence");
    options.source = arguments.value("--source");
    options.tags = arguments.values("--tag");
    options.shelf = arguments.value("--shelf").value_or("");
    PANTILE_ASSIGN_OR_RETURN(const auto inputs, gatherInputs(session, arguments));
    PANTILE_ASSIGN_OR_RETURN(auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Change));
    PANTILE_ASSIGN_OR_RETURN(const tasks::GatherReport report,
                             tasks::gather(library, inputs, options, session.progress()));
    if (session.json) {
        printJson(session.out, reportJson(report));
    } else {
        printReport(session, report);
        if (report.stopped) printProblem(session.err, *report.stopped);
    }
    if (report.stopped) return Outcome::SomeRefused;
    return report.refused.empty() ? Outcome::Done : Outcome::SomeRefused;
}

}  // namespace

Command addCommand() {
    Command command{
        "add",
        "Adds pictures, grids and codes to the library.",
        {"PATH... [options]"},
        {
            {"--canvas", OptionKind::Value, "NAME", "make pictures fit this canvas"},
            {"--title", OptionKind::Text, "TEXT",
             "the title, else the file's name; a code's own title stays"},
            {"--tag", OptionKind::Repeated, "WORD", "a tag, for known ones too"},
            {"--shelf", OptionKind::Value, "NAME", "put them on this shelf, known ones too"},
            {"--author", OptionKind::Text, "TEXT", "who made them; a code's own author stays"},
            {"--licence", OptionKind::Text, "TEXT", "their licence; a code's own licence stays"},
            {"--source", OptionKind::Text, "TEXT", "where they come from, else the file's name"},
        },
        "PATH is a picture (PNG, JPEG, GIF, BMP, WebP, SVG), a grid of palette indices as CSV, any "
        "text or\n"
        "HTML file with codes in it, a whole library as JSON, or a folder of such files; - is "
        "standard\n"
        "input. In a folder, hidden files and links to folders are passed over. A texture that is\n"
        "there already is not added again. Without --canvas and --fit, "
        "pictures "
        "of\n"
        "at most 64x64 are taken cell by cell, larger ones are made to cover 64x64 cells.\n"
        "Dithers: none, floyd-steinberg, jarvis-judice-ninke, stucki, atkinson, sierra, burkes,\n"
        "bayer2, bayer4, bayer8, blue-noise, optimal (looks best from a distance).",
        runAdd,
    };
    for (const OptionSpec& option : pictureOptions()) command.options.push_back(option);
    return command;
}

}  // namespace pantile::cli
