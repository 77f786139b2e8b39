#pragma once

// A code as posts to paste: with words about the texture around it, escaped for the place where it
// goes, and in as many parts as the length of a post asks for.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/result.h"

namespace pantile::tasks {

/// Where posts go.
enum class PostSyntax { Plain, Chat, Markdown, Bbcode };

/// What the words around a code say. Any of them may be empty, and all come from outside.
struct Credit {
    std::string title;
    std::string author;
    std::string licence;
    std::size_t textures = 1;  ///< If there are more, the title tells how many.
};

struct PostOptions {
    std::optional<PostSyntax> syntax;  ///< Else the code alone.
    std::optional<std::size_t> limit;  ///< Characters of a post; at least kLeastPostLimit.
};

inline constexpr std::size_t kLeastPostLimit = 160;

/// Characters as the strictest places count them: UTF-16 units.
std::size_t postLength(std::string_view validUtf8);

/// "Kelp, by Mara, CC0-1.0", for a line in front of a code; safe to print. Words that a reader
/// could take for a code are left out.
std::string creditWords(const Credit& credit);

/// The posts for a container, one if it may be. Each part says which it is.
/// Errors: as codec::armoured and codec::armouredParts; Usage for a limit below kLeastPostLimit.
core::Result<std::vector<std::string>> codePosts(std::span<const std::uint8_t> container,
                                                 const Credit& credit, const PostOptions& options);

}  // namespace pantile::tasks
