#include "catalogue/query_to_sql.h"

#include <string_view>

namespace pantile::catalogue {
namespace {

using Field = TextFilter::Field;

/// A LIKE pattern for `text` anywhere inside.
std::string containing(std::string_view text) {
    std::string pattern = "%";
    for (const char c : text) {
        if (c == '%' || c == '_' || c == '\\') pattern += '\\';
        pattern += c;
    }
    return pattern + "%";
}

SqlPiece contains(const std::string& column, const std::string& text) {
    return {column + " LIKE ? ESCAPE '\\'", {containing(text)}};
}

SqlPiece anywhere(const std::string& text) {
    SqlPiece piece{"(", {}};
    for (const char* column : {"t.title", "t.author", "t.licence", "t.source", "t.note"}) {
        piece.append(contains(column, text));
        piece.sql += " OR ";
    }
    piece.sql +=
        "EXISTS (SELECT 1 FROM texture_tags x JOIN tags g ON g.id = x.tag_id "
        "WHERE x.texture_id = t.id AND ";
    piece.append(contains("g.name", text));
    piece.sql += "))";
    return piece;
}

std::string columnOf(Field field) {
    switch (field) {
        case Field::Title:
            return "t.title";
        case Field::Author:
            return "t.author";
        case Field::Licence:
            return "t.licence";
        case Field::Source:
            return "t.source";
        case Field::Note:
        case Field::Any:
            break;
    }
    return "t.note";
}

SqlPiece toSql(const TextFilter& filter) {
    if (filter.field == Field::Any) return anywhere(filter.text);
    const std::string column = columnOf(filter.field);
    if (filter.text.empty()) return {column + " = ''", {}};
    return contains(column, filter.text);
}

SqlPiece toSql(const NameFilter& filter) {
    const bool none = filter.name.empty();
    const std::vector<OwnedValue> values =
        none ? std::vector<OwnedValue>{} : std::vector<OwnedValue>{filter.name};
    switch (filter.kind) {
        case NameFilter::Kind::Tag:
            if (none) return {"t.id NOT IN (SELECT texture_id FROM texture_tags)", {}};
            return {
                "t.id IN (SELECT x.texture_id FROM tags g JOIN texture_tags x ON x.tag_id = "
                "g.id WHERE g.name = ? COLLATE NOCASE)",
                values};
        case NameFilter::Kind::Shelf:
            if (none) return {"t.id NOT IN (SELECT texture_id FROM shelf_textures)", {}};
            return {
                "t.id IN (SELECT x.texture_id FROM shelves s JOIN shelf_textures x ON "
                "x.shelf_id = s.id WHERE s.name = ?)",
                values};
        case NameFilter::Kind::Palette:
            break;
    }
    if (none) return {"c.palette_id NOT IN (SELECT palette_id FROM palette_names)", {}};
    return {"c.palette_id IN (SELECT palette_id FROM palette_names WHERE name = ?)", values};
}

std::string columnOf(NumberFilter::Field field) {
    switch (field) {
        case NumberFilter::Field::Width:
            return "c.width";
        case NumberFilter::Field::Height:
            return "c.height";
        case NumberFilter::Field::Colours:
            return "c.colours";
        case NumberFilter::Field::Bytes:
            return "e.load_bytes";
        case NumberFilter::Field::DrawMs:
            return "e.draw_ms";
        case NumberFilter::Field::Id:
            return "t.id";
        case NumberFilter::Field::AddedAt:
            return "t.added_at";
        case NumberFilter::Field::ChangedAt:
            break;
    }
    return "t.changed_at";
}

std::string signOf(Comparison comparison) {
    switch (comparison) {
        case Comparison::Less:
            return " < ?";
        case Comparison::LessOrEqual:
            return " <= ?";
        case Comparison::Equal:
            return " = ?";
        case Comparison::GreaterOrEqual:
            return " >= ?";
        case Comparison::Greater:
            break;
    }
    return " > ?";
}

SqlPiece toSql(const NumberFilter& filter) {
    return {columnOf(filter.field) + signOf(filter.comparison), {filter.value}};
}

SqlPiece toSql(const RemovedFilter& /*filter*/) {
    return {"t.removed_at IS NOT NULL", {}};
}

SqlPiece toSql(const QueryNode& node) {
    if (node.kind == QueryNode::Kind::Match) {
        return std::visit([](const auto& filter) { return toSql(filter); }, node.filter);
    }
    if (node.kind == QueryNode::Kind::Not) {
        // An estimate that is missing makes a comparison NULL, and NOT NULL would be NULL again.
        SqlPiece piece{"NOT ifnull(", {}};
        piece.append(toSql(node.parts.front()));
        piece.sql += ", 0)";
        return piece;
    }
    if (node.parts.empty()) return {"1", {}};
    SqlPiece piece{"(", {}};
    const char* joint = node.kind == QueryNode::Kind::AnyOf ? " OR " : " AND ";
    for (const QueryNode& part : node.parts) {
        if (&part != node.parts.data()) piece.sql += joint;
        piece.append(toSql(part));
    }
    piece.sql += ")";
    return piece;
}

/// The words asked for, without those behind a '-'.
void collectWords(const QueryNode& node, std::vector<std::string>& words) {
    if (node.kind == QueryNode::Kind::Not) return;
    const auto* filter = std::get_if<TextFilter>(&node.filter);
    const bool isWord =
        node.kind == QueryNode::Kind::Match && filter != nullptr && filter->field == Field::Any;
    if (isWord) words.push_back(filter->text);
    for (const QueryNode& part : node.parts) collectWords(part, words);
}

SqlPiece relevance(const Query& query, const std::string& direction) {
    std::vector<std::string> words;
    collectWords(query.root, words);
    SqlPiece piece;
    for (const std::string& word : words) {
        piece.sql += piece.sql.empty() ? "(" : " + (";
        piece.append(contains("t.title", word));
        piece.sql += ")";
    }
    piece.sql += (words.empty() ? "" : direction + ", ") + std::string("t.id") + direction;
    return piece;
}

SqlPiece byNumber(const std::string& column, const std::string& direction) {
    return {column + direction + ", t.id" + direction, {}};
}

}  // namespace

void SqlPiece::append(const SqlPiece& other) {
    sql += other.sql;
    values.insert(values.end(), other.values.begin(), other.values.end());
}

SqlPiece toCondition(const Query& query) {
    SqlPiece piece = toSql(query.root);
    if (!query.namesRemoved) piece.sql += " AND t.removed_at IS NULL";
    return piece;
}

SqlPiece toOrder(const Query& query, SortKey sort) {
    const bool isReversed = sort.direction == SortDirection::Reversed;
    const std::string rising = isReversed ? " DESC" : "";
    const std::string falling = isReversed ? "" : " DESC";
    switch (sort.field) {
        case SortField::Relevance:
            return relevance(query, falling);
        case SortField::Title:
            return byNumber("t.title COLLATE NOCASE", rising);
        case SortField::Added:
            return byNumber("t.added_at", falling);
        case SortField::Changed:
            return byNumber("t.changed_at", falling);
        case SortField::Size:
            return byNumber("c.width * c.height", rising);
        case SortField::Draw:
            return byNumber("e.draw_ms IS NULL, e.draw_ms", rising);
        case SortField::Bytes:
            return byNumber("e.load_bytes IS NULL, e.load_bytes", rising);
        case SortField::Colours:
            return byNumber("c.colours", rising);
        case SortField::Id:
            break;
    }
    return {"t.id" + rising, {}};
}

std::vector<BoundValue> boundValues(std::span<const OwnedValue> values) {
    std::vector<BoundValue> bound;
    for (const OwnedValue& value : values) {
        if (const auto* number = std::get_if<std::int64_t>(&value)) {
            bound.emplace_back(*number);
        } else {
            bound.emplace_back(std::string_view(std::get<std::string>(value)));
        }
    }
    return bound;
}

}  // namespace pantile::catalogue
