#include "cli/completions.h"

#include <algorithm>
#include <ostream>
#include <string>
#include <vector>

#include "cli/help.h"

namespace pantile::cli {
namespace {

bool isPlainWord(std::string_view word) {
    return !word.empty() && std::all_of(word.begin(), word.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-';
    }) && word.front() != '-';
}

std::vector<std::string> parts(std::string_view text, char separator) {
    std::vector<std::string> list(1);
    for (const char c : text) {
        if (c == separator) {
            list.emplace_back();
        } else {
            list.back() += c;
        }
    }
    return list;
}

/// The words of "area|nearest"; none where the value is not a choice.
std::vector<std::string> choices(std::string_view placeholder) {
    std::vector<std::string> words = parts(placeholder, '|');
    const bool areAll = words.size() > 1 && std::all_of(words.begin(), words.end(), isPlainWord);
    return areAll ? words : std::vector<std::string>();
}

bool namesAPath(std::string_view text) {
    return text == "FILE" || text == "DIR" || text == "PATH" || text == "FOLDER";
}

/// What may follow the command itself: "make" of "make NAME SELECTION", "list" and "show".
std::vector<std::string> deeds(const Command& command) {
    std::vector<std::string> words;
    for (const std::string_view usage : command.usage) {
        for (const std::string& word : parts(usage.substr(0, usage.find(' ')), '|')) {
            const bool isNew = std::find(words.begin(), words.end(), word) == words.end();
            if (isPlainWord(word) && isNew) words.push_back(word);
        }
    }
    return words;
}

/// Whether a path stands anywhere in the usage that belongs to no option.
bool takesPaths(const Command& command) {
    for (const std::string_view usage : command.usage) {
        std::string before;
        for (const std::string& word : parts(usage, ' ')) {
            std::string bare;
            std::copy_if(word.begin(), word.end(), std::back_inserter(bare),
                         [](char c) { return c >= 'A' && c <= 'Z'; });
            if (namesAPath(bare) && before.find("--") == std::string::npos) return true;
            before = word;
        }
    }
    return false;
}

/// Something to offer, and what it is; that may be empty.
struct Offer {
    std::string word;
    std::string_view help;
};

std::vector<Offer> offersOf(std::span<const OptionSpec> options) {
    std::vector<Offer> offers;
    for (const OptionSpec& option : options)
        offers.push_back({std::string(option.name), option.help});
    return offers;
}

std::vector<Offer> offersOf(const std::vector<std::string>& words) {
    std::vector<Offer> offers;
    for (const std::string& word : words) offers.push_back({word, {}});
    return offers;
}

std::vector<Offer> allCommandOffers() {
    std::vector<Offer> offers;
    for (const Command& command : allCommands()) {
        offers.push_back({std::string(command.name), command.summary});
    }
    return offers;
}

std::vector<Offer> offersAfter(const Command& command) {
    std::vector<Offer> offers =
        command.name == "help" ? allCommandOffers() : offersOf(deeds(command));
    for (const std::span<const OptionSpec> options :
         {std::span(command.options), globalOptions()}) {
        const std::vector<Offer> more = offersOf(options);
        offers.insert(offers.end(), more.begin(), more.end());
    }
    return offers;
}

std::string quoted(std::string_view text) {
    std::string all = "'";
    for (const char c : text) {
        if (c == '\'') {
            all += "'\\''";
        } else {
            all += c;
        }
    }
    return all + "'";
}

/// The two shells share the form of `case`; how a list is written differs.
using WriteList = void (*)(std::ostream&, const std::vector<Offer>&);

void bashList(std::ostream& out, const std::vector<Offer>& offers) {
    out << "offered='";
    for (const Offer& offer : offers) out << (&offer == offers.data() ? "" : " ") << offer.word;
    out << "'";
}

void zshList(std::ostream& out, const std::vector<Offer>& offers) {
    out << "offered=(";
    for (const Offer& offer : offers) {
        std::string item = offer.word;
        if (!offer.help.empty()) item += ":" + std::string(offer.help);
        out << (&offer == offers.data() ? "" : " ") << quoted(item);
    }
    out << ")";
}

void writeCase(std::ostream& out, std::string_view pattern, const std::vector<Offer>& offers,
               bool files, WriteList list) {
    out << "        " << pattern << ")";
    if (!offers.empty()) {
        out << ' ';
        list(out, offers);
        if (files) out << ';';
    }
    if (files) out << " files=yes";
    out << " ;;\n";
}

void writeCases(std::ostream& out, WriteList list) {
    const auto values = [&](const std::string& command, std::span<const OptionSpec> options) {
        for (const OptionSpec& option : options) {
            if (option.kind == OptionKind::Flag) continue;
            writeCase(out, command + "," + std::string(option.name),
                      offersOf(choices(option.placeholder)), namesAPath(option.placeholder), list);
        }
    };
    values("*", globalOptions());
    for (const Command& command : allCommands()) values(std::string(command.name), command.options);
    std::vector<Offer> first = allCommandOffers();
    const std::vector<Offer> global = offersOf(globalOptions());
    first.insert(first.end(), global.begin(), global.end());
    writeCase(out, ",*", first, false, list);
    for (const Command& command : allCommands()) {
        writeCase(out, std::string(command.name) + ",*", offersAfter(command), takesPaths(command),
                  list);
    }
}

void writeFishOption(std::ostream& out, const std::string& condition, const OptionSpec& option) {
    out << "complete -c pantile" << condition << " -l " << option.name.substr(2);
    const std::vector<std::string> words = choices(option.placeholder);
    if (option.kind != OptionKind::Flag) out << (namesAPath(option.placeholder) ? " -rF" : " -x");
    if (!words.empty()) {
        out << " -a '";
        for (const std::string& word : words) out << (&word == words.data() ? "" : " ") << word;
        out << "'";
    }
    out << " -d " << quoted(option.help) << '\n';
}

}  // namespace

void writeBashCompletion(std::ostream& out) {
    out << R"(# Completion of pantile for bash.
_pantile() {
    local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]} command= i
    for ((i = 1; i < COMP_CWORD; ++i)); do
        case ${COMP_WORDS[i]} in
            --library) ((++i)) ;;
            --*) ;;
            *) command=${COMP_WORDS[i]}; break ;;
        esac
    done
    local offered= files=
    case $command,$before in
)";
    writeCases(out, bashList);
    out << R"(    esac
    mapfile -t COMPREPLY < <(compgen -W "$offered" -- "$word"; [[ -z $files ]] || compgen -f -- "$word")
    [[ -z $files ]] || compopt -o filenames 2>/dev/null
}
complete -F _pantile pantile
)";
}

void writeZshCompletion(std::ostream& out) {
    out << R"(#compdef pantile
# Completion of pantile for zsh.
_pantile() {
    local command= i files=
    local -a offered
    for ((i = 2; i < CURRENT; ++i)); do
        case $words[i] in
            --library) ((++i)) ;;
            --*) ;;
            *) command=$words[i]; break ;;
        esac
    done
    case $command,$words[CURRENT-1] in
)";
    writeCases(out, zshList);
    out << R"(    esac
    (( $#offered )) && _describe -t words 'word' offered
    [[ -n $files ]] && _files
    return 0
}
if [[ $funcstack[1] == _pantile ]]; then _pantile "$@"; else compdef _pantile pantile; fi
)";
}

void writeFishCompletion(std::ostream& out) {
    out << R"(# Completion of pantile for fish.
function __pantile_command
    set -l words (commandline -opc)
    set -e words[1]
    while set -q words[1]
        switch $words[1]
            case --library
                set -e words[1]
                set -q words[1]; and set -e words[1]
            case '--*'
                set -e words[1]
            case '*'
                echo $words[1]
                return 0
        end
    end
    return 1
end
complete -c pantile -f
)";
    for (const OptionSpec& option : globalOptions()) writeFishOption(out, "", option);
    for (const Command& command : allCommands()) {
        const std::string name(command.name);
        out << "complete -c pantile -n 'not __pantile_command' -a " << name << " -d "
            << quoted(command.summary) << '\n';
        const std::string condition = " -n '__pantile_command | string match -q " + name + "'";
        const std::vector<Offer> words =
            command.name == "help" ? allCommandOffers() : offersOf(deeds(command));
        for (const Offer& offer : words) {
            out << "complete -c pantile" << condition << " -a " << offer.word;
            if (!offer.help.empty()) out << " -d " << quoted(offer.help);
            out << '\n';
        }
        if (takesPaths(command)) out << "complete -c pantile" << condition << " -F\n";
        for (const OptionSpec& option : command.options) writeFishOption(out, condition, option);
    }
}

}  // namespace pantile::cli
