#include "cli/help.h"

#include <algorithm>
#include <array>
#include <ostream>
#include <string>

namespace pantile::cli {
namespace {

constexpr std::array<OptionSpec, 5> kGlobalOptions = {{
    {"--library", OptionKind::Value, "FILE", "the library to work on"},
    {"--json", OptionKind::Flag, "", "answer with one JSON document"},
    {"--quiet", OptionKind::Flag, "", "no progress and no remarks"},
    {"--help", OptionKind::Flag, "", "this help, or the command's"},
    {"--version", OptionKind::Flag, "", "the version of the program"},
}};

bool areAllRepeated(std::span<const OptionSpec> options) {
    return std::all_of(options.begin(), options.end(), [](const OptionSpec& option) {
        return option.kind == OptionKind::Repeated;
    });
}

void printOptions(std::ostream& out, std::span<const OptionSpec> options) {
    const bool saidOfAll = areAllRepeated(options);
    std::size_t widest = 0;
    const auto left = [](const OptionSpec& option) {
        std::string text(option.name);
        if (!option.placeholder.empty()) text += " " + std::string(option.placeholder);
        return text;
    };
    constexpr std::size_t kMaxColumn = 30;
    for (const OptionSpec& option : options) {
        const std::size_t length = left(option).size();
        if (length <= kMaxColumn) widest = std::max(widest, length);
    }
    for (const OptionSpec& option : options) {
        const std::string text = left(option);
        out << "  " << text;
        if (text.size() > widest) {
            out << "\n  " << std::string(widest, ' ');
        } else {
            out << std::string(widest - text.size(), ' ');
        }
        out << "  " << option.help;
        if (option.kind == OptionKind::Repeated && !saidOfAll) out << " (may be repeated)";
        out << '\n';
    }
}

}  // namespace

std::span<const OptionSpec> globalOptions() {
    return kGlobalOptions;
}

void printOverview(std::ostream& out) {
    out << kJob
        << "\n\n"
           "pantile [--library FILE] [--json] [--quiet] COMMAND ...\n\n"
           "Commands:\n";
    std::size_t widest = 0;
    for (const Command& command : allCommands()) widest = std::max(widest, command.name.size());
    for (const Command& command : allCommands()) {
        out << "  " << command.name << std::string(widest - command.name.size(), ' ') << "  "
            << command.summary << '\n';
    }
    out << "\nFor every command:\n";
    printOptions(out, kGlobalOptions);
    out << "\nThe library is --library FILE, else $PANTILE_LIBRARY, else library.db in the data "
           "folder\n"
           "of your account. A SELECTION is one or more ids (17), one search in quotes "
           "(\"tag:kelp\n"
           "-tag:night\"), or all. 'pantile help COMMAND' says more.\n";
}

void printCommandHelp(std::ostream& out, const Command& command) {
    out << command.summary << "\n\n";
    for (const std::string_view usage : command.usage) {
        out << "  pantile " << command.name << (usage.empty() ? "" : " ") << usage << '\n';
    }
    if (!command.options.empty()) {
        out << (areAllRepeated(command.options) ? "\nOptions, each as often as wanted:\n"
                                                : "\nOptions:\n");
        printOptions(out, command.options);
    }
    if (!command.notes.empty()) out << '\n' << command.notes << '\n';
}

}  // namespace pantile::cli
