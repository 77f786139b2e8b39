#include "cli/manual_page.h"

#include <algorithm>
#include <cctype>
#include <ostream>
#include <string>

#include "cli/help.h"

namespace pantile::cli {
namespace {

/// Text that roff shows as it is: no backslash is an escape, no dash a hyphen, no line a request.
std::string roff(std::string_view text) {
    std::string escaped;
    for (const char c : text) {
        const bool beginsLine = escaped.empty() || escaped.back() == '\n';
        if (beginsLine && (c == '.' || c == '\'')) escaped += "\\&";
        if (c == '\\') {
            escaped += "\\e";
        } else if (c == '-') {
            escaped += "\\-";
        } else {
            escaped += c;
        }
    }
    return escaped;
}

std::string upper(std::string_view text) {
    std::string letters(text);
    std::transform(letters.begin(), letters.end(), letters.begin(), [](char c) {
        return static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
    });
    return letters;
}

void writeOptions(std::ostream& out, std::span<const OptionSpec> options) {
    for (const OptionSpec& option : options) {
        out << ".TP\n\\fB" << roff(option.name) << "\\fR";
        if (!option.placeholder.empty()) out << " \\fI" << roff(option.placeholder) << "\\fR";
        out << '\n' << roff(option.help);
        if (option.kind == OptionKind::Repeated) out << " (may be repeated)";
        out << '\n';
    }
}

void writeCommand(std::ostream& out, const Command& command) {
    out << ".SS " << roff(command.name) << '\n' << roff(command.summary) << "\n.PP\n.nf\n";
    for (const std::string_view usage : command.usage) {
        out << "\\fBpantile " << roff(command.name) << "\\fR " << roff(usage) << '\n';
    }
    out << ".fi\n";
    writeOptions(out, command.options);
    if (!command.notes.empty()) out << ".PP\n.nf\n" << roff(command.notes) << "\n.fi\n";
}

}  // namespace

void writeManualPage(std::ostream& out, std::string_view version) {
    out << ".TH " << upper("pantile") << " 1 \"\" \"Pantile " << roff(version)
        << "\" \"User Commands\"\n"
           ".SH NAME\npantile \\- keeps a game maker's textures, shares them as text codes, and "
           "writes what a drawing board reads\n"
           ".SH SYNOPSIS\n\\fBpantile\\fR [\\fB\\-\\-library\\fR \\fIFILE\\fR] "
           "[\\fB\\-\\-json\\fR] [\\fB\\-\\-quiet\\fR] \\fICOMMAND\\fR ...\n"
           ".SH DESCRIPTION\n"
        << roff(kJob)
        << "\n.PP\nA \\fISELECTION\\fR is one or more ids (17), one search in quotes (\"tag:kelp "
           "\\-tag:night\"), or all.\n"
           ".SH OPTIONS\n";
    writeOptions(out, globalOptions());
    out << ".SH COMMANDS\n";
    for (const Command& command : allCommands()) writeCommand(out, command);
    out << ".SH EXIT STATUS\n"
           ".TP\n0\nAll was done.\n"
           ".TP\n1\nSomething was refused or failed; the rest was done, and what was not is said.\n"
           ".TP\n2\nThe command was used wrongly.\n"
           ".SH ENVIRONMENT\n"
           ".TP\n\\fBPANTILE_LIBRARY\\fR\nThe library, where \\fB\\-\\-library\\fR names none.\n"
           ".TP\n\\fBXDG_DATA_HOME\\fR\nThe data folder of the account; ~/.local/share if it is "
           "not set.\n"
           ".TP\n\\fBNO_COLOR\\fR\nIf it is set, nothing is coloured.\n"
           ".SH FILES\n"
           ".TP\n\\fI$XDG_DATA_HOME/pantile/library.db\\fR\nThe library, where nothing names "
           "another.\n";
}

}  // namespace pantile::cli
