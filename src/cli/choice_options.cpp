#include "cli/choice_options.h"

#include "board/fit.h"
#include "cli/selection.h"

namespace pantile::cli {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace {

constexpr long long kMaxSeconds = 1'000'000;

Result<std::set<core::TextureId>> readIds(const Arguments& arguments, std::string_view option) {
    std::set<core::TextureId> ids;
    for (const std::string& word : arguments.values(option)) {
        PANTILE_ASSIGN_OR_RETURN(const core::TextureId id, parseTextureId(word));
        ids.insert(id);
    }
    return ids;
}

Result<void> readWorths(const Arguments& arguments, tasks::ChooseOptions& options) {
    for (const std::string& word : arguments.values("--worth")) {
        const std::size_t equals = word.find('=');
        if (equals == std::string::npos) {
            return Error{ErrorKind::Usage, "--worth needs an id and a number",
                         "write for example --worth 17=5"};
        }
        PANTILE_ASSIGN_OR_RETURN(const core::TextureId id, parseTextureId(word.substr(0, equals)));
        PANTILE_ASSIGN_OR_RETURN(const long long worth,
                                 parseNumber("a worth", word.substr(equals + 1), 0, 1'000'000));
        options.worth[id] = worth;
    }
    return {};
}

}  // namespace

std::vector<OptionSpec> chooseOptionSpecs() {
    return {
        {"--board", OptionKind::Value, "NAME", "the board"},
        {"--canvas", OptionKind::Value, "NAME",
         "the canvas, else for each the smallest that it fits"},
        {"--must", OptionKind::Repeated, "ID", "this texture has to be in"},
        {"--never", OptionKind::Repeated, "ID", "this texture stays out"},
        {"--together", OptionKind::Repeated, "SHELF",
         "the selected textures of this shelf are all in or all out"},
        {"--worth", OptionKind::Repeated, "ID=N", "what a texture is worth"},
        {"--seconds", OptionKind::Value, "N", "at most so much drawing time for a load"},
    };
}

Result<tasks::ChooseOptions> chooseOptions(const Arguments& arguments) {
    tasks::ChooseOptions options;
    const auto board = arguments.value("--board");
    if (!board) {
        return Error{ErrorKind::Usage, "no board was named",
                     "write --board NAME; 'pantile board list' shows those there are"};
    }
    options.board = *board;
    options.canvas = arguments.value("--canvas").value_or("");
    PANTILE_ASSIGN_OR_RETURN(options.must, readIds(arguments, "--must"));
    PANTILE_ASSIGN_OR_RETURN(options.never, readIds(arguments, "--never"));
    options.together = arguments.values("--together");
    PANTILE_RETURN_IF_ERROR(readWorths(arguments, options));
    PANTILE_ASSIGN_OR_RETURN(const auto seconds, arguments.number("--seconds", 0, kMaxSeconds));
    if (seconds) options.milliseconds = *seconds * 1000;
    return options;
}

}  // namespace pantile::cli
