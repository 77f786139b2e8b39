#pragma once

// Query: what a search asks for, as a tree. Authority for the language: docs/query-language.md.

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

namespace pantile::catalogue {

/// `text` occurs in the field; where it is empty, the field is.
struct TextFilter {
    enum class Field { Any, Title, Author, Licence, Source, Note };
    Field field = Field::Any;
    std::string text;
};

/// The texture has the tag, stands on the shelf or uses the palette of this name; where the name is
/// empty, it has none.
struct NameFilter {
    enum class Kind { Tag, Shelf, Palette };
    Kind kind = Kind::Tag;
    std::string name;
};

enum class Comparison { Less, LessOrEqual, Equal, GreaterOrEqual, Greater };

/// Units: cells, palette entries, bytes, milliseconds, unix seconds. A texture of which the number
/// is not known does not match.
struct NumberFilter {
    enum class Field { Width, Height, Colours, Bytes, DrawMs, Id, AddedAt, ChangedAt };
    Field field = Field::Width;
    Comparison comparison = Comparison::Equal;
    std::int64_t value = 0;
};

struct RemovedFilter {};

using Filter = std::variant<TextFilter, NameFilter, NumberFilter, RemovedFilter>;

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
    bool namesRemoved =
        false;  ///< Asks for is:removed somewhere; if not, removed ones are left out.
};

}  // namespace pantile::catalogue
