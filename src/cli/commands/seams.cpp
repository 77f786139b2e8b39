#include <cmath>
#include <ostream>
#include <string>

#include "cli/commands/all.h"
#include "cli/json.h"
#include "cli/selection.h"
#include "cli/written_file.h"
#include "picture/enlarge.h"
#include "tasks/library_place.h"
#include "tasks/seam_report.h"

namespace pantile::cli {

using core::Result;

namespace {

// The last bits differ between machines.
long long hundredths(double number) {
    constexpr double kHundredths = 100;
    return std::llround(number * kHundredths);
}

double rounded(double number) {
    return static_cast<double>(hundredths(number)) / 100;
}

std::string spoken(double number) {
    const long long rounded = hundredths(number);
    const std::string part = std::to_string(rounded % 100);
    return std::to_string(rounded / 100) + (part.size() < 2 ? ".0" : ".") + part;
}

QJsonObject seamJson(const picture::SeamDifference& seam) {
    return {{"ratio", rounded(seam.ratio())},
            {"across", rounded(seam.across)},
            {"inside", rounded(seam.inside)}};
}

void printSeam(std::ostream& out, std::string_view name, const picture::SeamDifference& seam) {
    out << name << spoken(seam.ratio()) << "  (across it " << spoken(seam.across) << ", inside "
        << spoken(seam.inside) << ")\n";
}

void printReport(Session& session, core::TextureId id, const picture::SeamCheck& check,
                 const std::optional<tasks::SeamPictureFile>& file) {
    session.out << "Seams of texture " << id.value << "; 1 is as smooth as its inside:\n";
    printSeam(session.out, "  left to right   ", check.vertical);
    printSeam(session.out, "  top to bottom   ", check.horizontal);
    if (file) printWrote(session.out, file->path);
}

Result<std::optional<tasks::SeamPictureFile>> pictureFile(const Arguments& arguments) {
    PANTILE_ASSIGN_OR_RETURN(const auto enlarge,
                             arguments.number("--enlarge", 1, picture::kMaxEnlargement));
    const auto path = arguments.value("--picture");
    if (!path) return std::optional<tasks::SeamPictureFile>();
    tasks::SeamPictureFile file;
    file.path = *path;
    if (enlarge) file.enlarge = static_cast<int>(*enlarge);
    if (arguments.has("--replace")) file.ifExists = tasks::IfExists::Replace;
    return std::optional(file);
}

Result<Outcome> runSeams(Session& session, const Arguments& arguments) {
    PANTILE_RETURN_IF_ERROR(checkPositional(arguments, 1, 1, "seams ID --picture FILE"));
    PANTILE_ASSIGN_OR_RETURN(const auto id, parseTextureId(arguments.positional().front()));
    PANTILE_ASSIGN_OR_RETURN(const auto file, pictureFile(arguments));
    PANTILE_ASSIGN_OR_RETURN(const auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(const auto check, tasks::reportSeams(library, id, file));
    if (session.json) {
        printJson(session.out,
                  {{"id", jsonNumber(id.value)},
                   {"vertical", seamJson(check.vertical)},
                   {"horizontal", seamJson(check.horizontal)},
                   {"picture", file ? QJsonValue(jsonText(file->path.string())) : QJsonValue()}});
    } else {
        printReport(session, id, check, file);
    }
    return Outcome::Done;
}

}  // namespace

Command seamsCommand() {
    return {"seams",
            "Says how visible a texture's seams are where it is repeated.",
            {"ID"},
            {
                {"--picture", OptionKind::Value, "FILE",
                 "a PNG with the seams in its middle, and red marks where they show"},
                {"--enlarge", OptionKind::Value, "N", "pixels a cell of it, 1 to 64, else 8"},
                {"--replace", OptionKind::Flag, "", "the file may be replaced"},
            },
            "The numbers compare the colours that meet at a seam with those side by side inside:\n"
            "1 is as smooth as the inside, 2 twice as rough. 'pantile touch ID --heal-seams both'\n"
            "heals them.",
            runSeams};
}

}  // namespace pantile::cli
