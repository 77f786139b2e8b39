#pragma once

// Query: what a search asks for, as a tree. Authority for the language: docs/query-language.md.

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/colour.h"
#include "core/ids.h"

namespace pantile::catalogue {

/// `text` occurs in the field; where it is empty, the field is.
struct TextFilter {
    enum class Field { Any, Title, Author, Licence, Source, Note };
    Field field = Field::Any;
    std::string text;
};

/// The texture has the tag or one below it, stands on the shelf, uses the palette, fits the canvas,
/// or lies in a load that has this name or whose board has; where the name is empty, there is none.
struct NameFilter {
    enum class Kind { Tag, Shelf, Palette, Canvas, On };
    Kind kind = Kind::Tag;
    std::string name;
};

enum class Comparison { Less, LessOrEqual, Equal, GreaterOrEqual, Greater };

/// Units: cells, palette entries, bytes, milliseconds, unix seconds. A texture of which the number
/// is not known does not match.
struct NumberFilter {
    enum class Field { Width, Height, Colours, Stars, Bytes, DrawMs, Id, AddedAt, ChangedAt };
    Field field = Field::Width;
    Comparison comparison = Comparison::Equal;
    std::int64_t value = 0;
};

/// A colour that is painted lies within this distance. Units: thousandths of CIEDE2000.
struct ColourFilter {
    core::Rgb8 colour;
    std::int64_t thousandths = 0;
};

/// What `like:` allows where it names no distance, and `similar` too. Units: look-alikes.md.
inline constexpr int kUsualLikeness = 2;

/// Looks like the texture, which is not one of its look-alikes itself. Pictures are not known here:
/// `found` is to be filled in before the query is asked (tasks/find_textures.h).
struct LikeFilter {
    core::TextureId id;
    int within = kUsualLikeness;
    std::optional<std::vector<core::TextureId>> found;
};

struct RemovedFilter {};

/// What is:seamless allows: the worse seam is at most a quarter more visible than the inside.
/// Units: hundredths of picture::SeamDifference::ratio.
inline constexpr std::int64_t kSeamlessHundredths = 125;

/// Repeated, its seams are hardly seen. One that was not measured does not match.
struct SeamlessFilter {};

using Filter = std::variant<TextFilter, NameFilter, NumberFilter, ColourFilter, LikeFilter,
                            RemovedFilter, SeamlessFilter>;

struct QueryNode {
    enum class Kind {
        AllOf,  ///< Every part matches; without parts, everything does.
        AnyOf,
        Not,  ///< Has one part.
        Match,
    };
    Kind kind = Kind::AllOf;
    std::vector<QueryNode> parts;
    Filter filter;  ///< For Match.
};

struct Query {
    QueryNode root;
    /// Asks for is:removed somewhere; if not, removed ones are left out.
    bool namesRemoved = false;
};

}  // namespace pantile::catalogue
