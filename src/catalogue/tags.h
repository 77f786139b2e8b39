#pragma once

// The tags of a library as a whole: counts, suggestions, renaming, other words for them. Tags are
// nested by '/': "stone/slate" lies below "stone". A tag is named exactly, or as folding makes it.
// Every texture changed gets a revision. Numbers given back are those of textures changed.

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue/library.h"
#include "core/result.h"

namespace pantile::catalogue {

struct TagCount {
    std::string name;
    std::int64_t textures = 0;  ///< With this very tag, removed ones left out.

    bool operator==(const TagCount&) const = default;
};

/// Errors: as core::checkTag; InvalidInput if one of its levels is empty, as in "stone/" or
/// "/slate". Older libraries and codes may have such.
core::Result<void> checkNewTag(std::string_view tag);

struct UnknownTag {
    std::string word;
    std::string nearest;  ///< The tag or other word that it may be a slip of; may be empty.

    bool operator==(const UnknownTag&) const = default;
};

/// Those of the words that are no tag, none above a tag and no other word for one.
/// Cost: reads all tags if there is such a word.
core::Result<std::vector<UnknownTag>> unknownTags(const Library& library,
                                                  std::span<const std::string> words);

/// Sorted by name. Tags that only removed textures have count 0.
core::Result<std::vector<TagCount>> listTags(const Library& library);

/// For a tag that is being typed: those of which the name, a part behind a '/' or another word for
/// it begins with the text, the most used first.
core::Result<std::vector<TagCount>> suggestTags(const Library& library, std::string_view begun,
                                                int most);

/// The tags below it go with it: renaming "stone" makes "stone/slate" "rock/slate".
/// Errors: NotFound with the nearest; AlreadyExists if there is a tag of that name, or another word
/// is it; as checkNewTag; TooLarge if a tag below becomes too long.
core::Result<std::int64_t> renameTag(Library& library, std::string_view name,
                                     std::string_view newName);

/// Gives the textures of the one the other; those below go with it. Errors: NotFound for either;
/// InvalidInput if they are the same, or one lies below the other.
core::Result<std::int64_t> mergeTag(Library& library, std::string_view name, std::string_view into);

/// Takes it off all textures; tags below it stay. Errors: NotFound.
core::Result<std::int64_t> deleteTag(Library& library, std::string_view name);

struct TagAlias {
    std::string alias;  ///< Folded.
    std::string tag;

    bool operator==(const TagAlias&) const = default;
};

/// Sorted by the alias.
core::Result<std::vector<TagAlias>> listTagAliases(const Library& library);

/// From now on the word stands for the tag, when it is put on textures and when it is searched for.
/// Errors: NotFound for the tag; AlreadyExists if there is a tag of that name, or the word stands
/// for a tag already; as checkNewTag.
core::Result<void> addTagAlias(Library& library, std::string_view alias, std::string_view tag);

/// Errors: NotFound.
core::Result<void> removeTagAlias(Library& library, std::string_view alias);

}  // namespace pantile::catalogue
