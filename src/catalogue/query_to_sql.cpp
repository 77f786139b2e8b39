#include "catalogue/query_to_sql.h"

#include "catalogue/filter_sql.h"

namespace pantile::catalogue {
namespace {

SqlPiece nodeSql(const QueryNode& node, const TextFolding& folding) {
    if (node.kind == QueryNode::Kind::Match) return filterSql(node.filter, folding);
    if (node.kind == QueryNode::Kind::Not) {
        // An estimate that is missing makes a comparison NULL, and NOT NULL would be NULL again.
        SqlPiece piece{"NOT ifnull(", {}};
        piece.append(nodeSql(node.parts.front(), folding));
        piece.sql += ", 0)";
        return piece;
    }
    if (node.parts.empty()) return {"1", {}};
    SqlPiece piece{"(", {}};
    const char* joint = node.kind == QueryNode::Kind::AnyOf ? " OR " : " AND ";
    for (const QueryNode& part : node.parts) {
        if (&part != node.parts.data()) piece.sql += joint;
        piece.append(nodeSql(part, folding));
    }
    piece.sql += ")";
    return piece;
}

/// The words asked for, without those behind a '-'.
void collectWords(const QueryNode& node, std::vector<std::string>& words) {
    if (node.kind == QueryNode::Kind::Not) return;
    const auto* filter = std::get_if<TextFilter>(&node.filter);
    const bool isWord = node.kind == QueryNode::Kind::Match && filter != nullptr &&
                        filter->field == TextFilter::Field::Any;
    if (isWord) words.push_back(filter->text);
    for (const QueryNode& part : node.parts) collectWords(part, words);
}

std::vector<std::string> wordsOf(const Query& query) {
    std::vector<std::string> words;
    collectWords(query.root, words);
    return words;
}

SqlPiece relevance(const Query& query, const std::string& direction, const TextFolding& folding) {
    const std::vector<std::string> words = wordsOf(query);
    SqlPiece piece;
    for (const std::string& word : words) {
        piece.sql += piece.sql.empty() ? "(" : " + (";
        piece.append(titleHolds(word, folding));
        piece.sql += ")";
    }
    piece.sql += (words.empty() ? "" : direction + ", ") + std::string("f.texture_id") + direction;
    return piece;
}

std::string byNumber(const std::string& column, const std::string& direction) {
    return column + direction + ", f.texture_id" + direction;
}

/// The order by anything but relevance.
std::string orderBy(SortKey sort) {
    const bool isReversed = sort.direction == SortDirection::Reversed;
    const std::string rising = isReversed ? " DESC" : "";
    const std::string falling = isReversed ? "" : " DESC";
    switch (sort.field) {
        case SortField::Title:
            return "t.title COLLATE NOCASE" + rising + ", t.id" + rising;
        case SortField::Added:
            return byNumber("f.added_at", falling);
        case SortField::Changed:
            return byNumber("f.changed_at", falling);
        case SortField::Size:
            return byNumber("f.width * f.height", rising);
        case SortField::Stars:
            return byNumber("f.stars", falling);
        case SortField::Draw:
            return byNumber("f.draw_ms IS NULL, f.draw_ms", rising);
        case SortField::Bytes:
            return byNumber("f.load_bytes IS NULL, f.load_bytes", rising);
        case SortField::Colours:
            return byNumber("f.colours", rising);
        case SortField::Colour:
            return byNumber("f.tone", rising);
        case SortField::Relevance:
        case SortField::Id:
            break;
    }
    return "f.texture_id" + rising;
}

/// Titles stand with the textures alone. Of many it is quicker to go along the order.
std::string tablesFor(SortKey sort, Share share) {
    if (sort.field != SortField::Title) return "facts f";
    return share == Share::Many
               ? "textures t INDEXED BY textures_by_title CROSS JOIN facts f ON f.texture_id = t.id"
               : "facts f CROSS JOIN textures t ON t.id = f.texture_id";
}

/// Few are looked up; of many each texture is asked whether it is one.
SqlPiece isMatching(IdSet& matching, Share share) {
    if (share == Share::Many) return {"is_one_of(?, f.texture_id)", {&matching}};
    std::string list = "[";
    for (const std::int64_t id : matching.ids()) {
        if (list.size() > 1) list += ',';
        list += std::to_string(id);
    }
    return {"f.texture_id IN (SELECT value FROM json_each(?))", {list + "]"}};
}

}  // namespace

void SqlPiece::append(const SqlPiece& other) {
    sql += other.sql;
    values.insert(values.end(), other.values.begin(), other.values.end());
}

SqlPiece toCondition(const Query& query, const TextFolding& folding) {
    SqlPiece piece = nodeSql(query.root, folding);
    if (!query.namesRemoved) piece.sql += " AND NOT f.removed";
    return piece;
}

SqlPiece toMatchStatement(const Query& query, IdSet& matching, const TextFolding& folding) {
    // Row by row they would take twice the time.
    SqlPiece piece{"SELECT count(keep_in(?, f.texture_id)) FROM facts f WHERE ", {&matching}};
    piece.append(toCondition(query, folding));
    return piece;
}

std::optional<SortDirection> orderOfIds(const Query& query, SortKey sort) {
    if (sort.field == SortField::Id) return sort.direction;
    if (sort.field != SortField::Relevance || !wordsOf(query).empty()) return std::nullopt;
    const bool isReversed = sort.direction == SortDirection::Reversed;
    return isReversed ? SortDirection::Usual : SortDirection::Reversed;
}

SqlPiece toOrderStatement(const Query& query, SortKey sort, IdSet& matching, Share share,
                          const TextFolding& folding) {
    SqlPiece piece{"SELECT f.texture_id FROM " + tablesFor(sort, share) + " WHERE ", {}};
    piece.append(isMatching(matching, share));
    piece.sql += " ORDER BY ";
    if (sort.field == SortField::Relevance) {
        const bool isReversed = sort.direction == SortDirection::Reversed;
        piece.append(relevance(query, isReversed ? "" : " DESC", folding));
    } else {
        piece.sql += orderBy(sort);
    }
    return piece;
}

std::vector<BoundValue> boundValues(std::span<const OwnedValue> values) {
    std::vector<BoundValue> bound;
    for (const OwnedValue& value : values) {
        if (const auto* number = std::get_if<std::int64_t>(&value)) {
            bound.emplace_back(*number);
        } else if (IdSet* const* ids = std::get_if<IdSet*>(&value)) {
            bound.emplace_back(*ids);
        } else {
            bound.emplace_back(std::string_view(std::get<std::string>(value)));
        }
    }
    return bound;
}

}  // namespace pantile::catalogue
