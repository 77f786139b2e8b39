#include "catalogue/tags.h"

#include <algorithm>
#include <ostream>

#include "cli/changed_answer.h"
#include "cli/commands/all.h"
#include "cli/json.h"
#include "cli/texture_answer.h"
#include "tasks/library_place.h"

namespace pantile::cli {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace {

using Words = std::vector<std::string>;

Words aliasesOf(const std::string& tag, const std::vector<catalogue::TagAlias>& all) {
    Words aliases;
    for (const catalogue::TagAlias& one : all) {
        if (one.tag == tag) aliases.push_back(one.alias);
    }
    return aliases;
}

// Other words may stand for a tag that no texture has now.
void addUnused(std::vector<catalogue::TagCount>& tags,
               const std::vector<catalogue::TagAlias>& aliases) {
    for (const catalogue::TagAlias& alias : aliases) {
        const bool listed = std::any_of(tags.begin(), tags.end(),
                                        [&](const auto& tag) { return tag.name == alias.tag; });
        if (!listed) tags.push_back({alias.tag, 0});
    }
}

void printTags(Session& session, const std::vector<catalogue::TagCount>& tags,
               const std::vector<catalogue::TagAlias>& aliases) {
    Table table({{"tag"}, {"textures", Align::Right}, {"other words"}});
    for (const catalogue::TagCount& tag : tags) {
        std::string words;
        for (const std::string& word : aliasesOf(tag.name, aliases)) {
            words += (words.empty() ? "" : " ") + word;
        }
        table.addRow({tag.name, std::to_string(tag.textures), words});
    }
    table.print(session.out);
    session.out << counted(static_cast<std::int64_t>(tags.size()), "tag", "tags") << ".\n";
}

Result<Outcome> listTags(Session& session, const std::string* begun) {
    constexpr int kMostSuggested = 20;
    PANTILE_ASSIGN_OR_RETURN(const auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Look));
    PANTILE_ASSIGN_OR_RETURN(
        auto tags, begun != nullptr ? catalogue::suggestTags(library, *begun, kMostSuggested)
                                    : catalogue::listTags(library));
    PANTILE_ASSIGN_OR_RETURN(const auto aliases, catalogue::listTagAliases(library));
    if (begun == nullptr) addUnused(tags, aliases);
    if (!session.json) {
        printTags(session, tags, aliases);
        return Outcome::Done;
    }
    printJsonList(session.out, jsonArray(tags, [&](const catalogue::TagCount& tag) {
                      return QJsonObject{{"name", jsonText(tag.name)},
                                         {"textures", jsonNumber(tag.textures)},
                                         {"aliases", jsonTexts(aliasesOf(tag.name, aliases))}};
                  }));
    return Outcome::Done;
}

Result<Outcome> answerTextures(Session& session, std::int64_t changed, const std::string& what) {
    return answerChanged(session, changed,
                         what + "; " + counted(changed, "texture", "textures") + " changed");
}

Result<Outcome> changeTags(Session& session, const Words& words) {
    PANTILE_ASSIGN_OR_RETURN(auto library,
                             tasks::openLibrary(session.libraryPath, tasks::Purpose::Change));
    const std::string& action = words[0];
    const std::string& name = words[1];
    if (action == "remove") {
        PANTILE_ASSIGN_OR_RETURN(const auto changed, catalogue::deleteTag(library, name));
        return answerTextures(session, changed, "Tag " + name + " removed");
    }
    if (action == "unalias") {
        PANTILE_RETURN_IF_ERROR(catalogue::removeTagAlias(library, name));
        return answerChanged(session, 1, name + " stands for no other tag now");
    }
    const std::string& other = words[2];
    if (action == "alias") {
        PANTILE_RETURN_IF_ERROR(catalogue::addTagAlias(library, name, other));
        return answerChanged(session, 1, name + " stands for the tag " + other + " now");
    }
    if (action == "merge") {
        PANTILE_ASSIGN_OR_RETURN(const auto changed, catalogue::mergeTag(library, name, other));
        return answerTextures(session, changed, "Tag " + name + " merged into " + other);
    }
    PANTILE_ASSIGN_OR_RETURN(const auto changed, catalogue::renameTag(library, name, other));
    return answerTextures(session, changed, "Tag " + name + " is now " + other);
}

Result<Outcome> runTags(Session& session, const Arguments& arguments) {
    const Words& words = arguments.positional();
    const std::string action = words.empty() ? "" : words[0];
    if (action == "list" && words.size() <= 2) {
        return listTags(session, words.size() == 2 ? &words[1] : nullptr);
    }
    const bool takesTwo = action == "rename" || action == "merge" || action == "alias";
    const bool takesOne = action == "remove" || action == "unalias";
    if ((takesTwo && words.size() == 3) || (takesOne && words.size() == 2)) {
        return changeTags(session, words);
    }
    return wrongUse("tags", words);
}

}  // namespace

Command tagsCommand() {
    return {"tags",
            "Lists, renames, merges and removes tags.",
            {"list [BEGINNING]", "rename TAG NEW", "merge TAG INTO", "remove TAG", "alias WORD TAG",
             "unalias WORD"},
            {},
            "Tags are nested by '/': tag:stone finds stone/slate too, and renaming stone\n"
            "takes stone/slate with it. A WORD that is an alias stands for the tag when it\n"
            "is put on textures and when it is searched for.",
            runTags};
}

}  // namespace pantile::cli
