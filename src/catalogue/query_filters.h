#pragma once

// What each key of the query language means: one table of keys, one reader for each kind of value.

#include <string_view>
#include <utility>

#include "catalogue/query.h"
#include "catalogue/query_lexer.h"
#include "core/result.h"

namespace pantile::catalogue {

/// The part of the tree that a filter token asks for. Errors: InvalidInput at its place.
core::Result<QueryNode> readFilter(std::string_view query, const QueryToken& token);

template <typename OneFilter>
QueryNode matchNode(OneFilter filter) {
    QueryNode node;
    node.kind = QueryNode::Kind::Match;
    node.filter.emplace<OneFilter>(std::move(filter));
    return node;
}

}  // namespace pantile::catalogue
