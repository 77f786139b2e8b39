#include <ostream>

#include "cli/commands/all.h"
#include "cli/json.h"
#include "cli/selection.h"
#include "cli/texture_answer.h"
#include "cli/written_file.h"
#include "picture/enlarge.h"
#include "tasks/export_textures.h"
#include "tasks/library_file.h"
#include "tasks/library_place.h"

namespace pantile::cli {

using core::Error;
using core::ErrorKind;
using core::Result;
using tasks::ExportForm;

namespace {

constexpr std::array<Choice<ExportForm>, 5> kForms = {{
    {"png", ExportForm::Png},
    {"csv", ExportForm::Csv},
    {"json", ExportForm::Json},
    {"text", ExportForm::Text},
    {"sheet", ExportForm::Sheet},
}};

bool meansWholeLibrary(const Arguments& arguments, const tasks::ExportOptions& options) {
    const std::vector<std::string> all = {"all"};
    return options.form == ExportForm::Json && arguments.positional() == all;
}

Result<std::vector<std::filesystem::path>> exportFiles(Session& session,
                                                       catalogue::Library& library,
                                                       const Arguments& arguments,
                                                       const std::string& folder,
                                                       const tasks::ExportOptions& options) {
    if (meansWholeLibrary(arguments, options)) {
        PANTILE_ASSIGN_OR_RETURN(
            const auto file,
            tasks::exportLibrary(library, folder, options.ifExists, session.progress()));
        return std::vector{file};
    }
    PANTILE_ASSIGN_OR_RETURN(const Selection selection,
                             selectTextures(library, arguments.positional()));
    return tasks::exportTextures(library, selection.ids, folder, options, session.progress());
}

Result<Outcome> runExport(Session& session, const Arguments& arguments) {
    const auto form = arguments.value("--as");
    const auto folder = arguments.value("--into");
    if (!form || !folder) {
        return Error{ErrorKind::Usage, "the form or the folder is missing",
                     "write export SELECTION --as png|csv|json|text|sheet --into DIR"};
    }
    tasks::ExportOptions options;
    PANTILE_ASSIGN_OR_RETURN(options.form, parseChoice("--as", *form, kForms));
    PANTILE_ASSIGN_OR_RETURN(const auto enlarge,
                             arguments.number("--enlarge", 1, picture::kMaxEnlargement));
    options.enlarge = static_cast<int>(enlarge.value_or(1));
    if (arguments.has("--replace")) options.ifExists = tasks::IfExists::Replace;
    PANTILE_ASSIGN_OR_RETURN(auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(const auto files,
                             exportFiles(session, library, arguments, *folder, options));
    if (session.json) {
        printJson(session.out, {{"files", jsonPaths(files)}});
        return Outcome::Done;
    }
    for (const auto& file : files) printWrote(session.out, file);
    return Outcome::Done;
}

}  // namespace

Command exportCommand() {
    return {
        "export",
        "Writes textures as files that other programs open.",
        {"SELECTION --as png|csv|json|text|sheet --into DIR"},
        {
            {"--as", OptionKind::Value, "FORM",
             "png, csv, json, text (the code), or sheet: all in one PNG"},
            {"--into", OptionKind::Value, "DIR", "the folder, made if it is missing"},
            {"--enlarge", OptionKind::Value, "N", "pixels a cell of a png, 1 to 64"},
            {"--replace", OptionKind::Flag, "", "files of the same name may be replaced"},
        },
        "'pantile export all --as json --into DIR' writes one file, library.json, that holds all "
        "of the\nlibrary; 'pantile add' makes the same library of it again. See "
        "docs/library-file.md.",
        runExport};
}

}  // namespace pantile::cli
