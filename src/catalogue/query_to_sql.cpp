#include "catalogue/query_to_sql.h"

#include <variant>

#include "catalogue/filter_sql.h"

namespace pantile::catalogue {
namespace {

using core::Result;

using Use = QuerySets::Use;

Result<SqlPiece> nodeSql(const QueryNode& node, QuerySets& sets, Use use) {
    if (node.kind == QueryNode::Kind::Match) return filterSql(node.filter, sets, use);
    if (node.kind == QueryNode::Kind::Not) {
        // An estimate that is missing makes a comparison NULL, and NOT NULL would be NULL again.
        SqlPiece piece{"NOT ifnull(", {}};
        PANTILE_ASSIGN_OR_RETURN(const SqlPiece inner,
                                 nodeSql(node.parts.front(), sets, Use::Asked));
        piece.append(inner);
        piece.sql += ", 0)";
        return piece;
    }
    if (node.parts.empty()) return SqlPiece{"1", {}};
    SqlPiece piece{"(", {}};
    const bool any = node.kind == QueryNode::Kind::AnyOf;
    const char* const joint = any ? " OR " : " AND ";
    for (const QueryNode& part : node.parts) {
        if (&part != node.parts.data()) piece.sql += joint;
        PANTILE_ASSIGN_OR_RETURN(const SqlPiece inner, nodeSql(part, sets, any ? Use::Asked : use));
        piece.append(inner);
    }
    piece.sql += ")";
    return piece;
}

void collectWords(const QueryNode& node, std::vector<std::string>& words) {
    if (node.kind == QueryNode::Kind::Not) return;
    const auto* filter = std::get_if<TextFilter>(&node.filter);
    const bool isWord = node.kind == QueryNode::Kind::Match && filter != nullptr &&
                        filter->field == TextFilter::Field::Any;
    if (isWord) words.push_back(filter->text);
    for (const QueryNode& part : node.parts) collectWords(part, words);
}

/// What is not known comes last, whichever way the order goes.
std::string knownOr(const std::string& column, SortDirection direction) {
    const bool isReversed = direction == SortDirection::Reversed;
    return "ifnull(" + column + (isReversed ? ", -1)" : ", 9223372036854775807)");
}

std::string numberBy(SortKey order) {
    switch (order.field) {
        case SortField::Added:
            return "f.added_at";
        case SortField::Changed:
            return "f.changed_at";
        case SortField::Size:
            return "f.width * f.height";
        case SortField::Stars:
            return "f.stars";
        case SortField::Draw:
            return knownOr("f.draw_ms", order.direction);
        case SortField::Bytes:
            return knownOr("f.load_bytes", order.direction);
        case SortField::Colours:
            return "f.colours";
        case SortField::Colour:
            return "f.tone";
        case SortField::Title:
        case SortField::Relevance:
        case SortField::Id:
            break;
    }
    return "0";
}

}  // namespace

Result<SqlPiece> toCondition(const Query& query, QuerySets& sets) {
    PANTILE_ASSIGN_OR_RETURN(SqlPiece piece, nodeSql(query.root, sets, Use::Required));
    if (!query.namesRemoved) piece.sql += " AND NOT f.removed";
    return piece;
}

Result<SqlPiece> toMatchStatement(const Query& query, SortKey order, MatchList& matching,
                                  QuerySets& sets) {
    // Row by row they would take twice the time.
    SqlPiece piece{
        "SELECT count(keep_match(?, f.texture_id, " + numberBy(order) + ")) FROM facts f WHERE ",
        {bound(matching)}};
    PANTILE_ASSIGN_OR_RETURN(const SqlPiece condition, toCondition(query, sets));
    piece.append(condition);
    return piece;
}

std::vector<std::string> wordsOf(const Query& query) {
    std::vector<std::string> words;
    collectWords(query.root, words);
    return words;
}

}  // namespace pantile::catalogue
