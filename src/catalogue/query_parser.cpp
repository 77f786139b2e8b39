#include "catalogue/query_parser.h"

#include <string>

#include "catalogue/query_filters.h"
#include "catalogue/query_lexer.h"

namespace pantile::catalogue {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;
using Token = QueryToken::Kind;

// The grammar of docs/query-language.md, one function for each of its rules.
class Parser {
public:
    Parser(std::string_view query, const std::vector<QueryToken>& tokens)
        : m_query(query), m_tokens(tokens) {}

    Result<Query> parse() {
        PANTILE_ASSIGN_OR_RETURN(m_result.root, either(0));
        if (m_at < m_tokens.size()) {
            return queryError(m_query, place(), "a bracket is closed that was not opened",
                              "leave it out, or open one with ( before");
        }
        return std::move(m_result);
    }

private:
    bool sees(Token kind) const { return m_at < m_tokens.size() && m_tokens[m_at].kind == kind; }

    std::size_t place() const {
        return m_at < m_tokens.size() ? m_tokens[m_at].place : m_query.size();
    }

    Result<QueryNode> either(int depth) {
        QueryNode node{QueryNode::Kind::AnyOf, {}, {}};
        for (;;) {
            PANTILE_ASSIGN_OR_RETURN(QueryNode part, together(depth));
            node.parts.push_back(std::move(part));
            if (!sees(Token::Bar)) break;
            ++m_at;
        }
        return node.parts.size() == 1 ? std::move(node.parts.front()) : std::move(node);
    }

    Result<QueryNode> together(int depth) {
        QueryNode node{QueryNode::Kind::AllOf, {}, {}};
        while (m_at < m_tokens.size() && !sees(Token::Bar) && !sees(Token::Close)) {
            PANTILE_ASSIGN_OR_RETURN(QueryNode part, term(depth));
            node.parts.push_back(std::move(part));
        }
        if (node.parts.empty()) {
            return queryError(m_query, place(), "something to search for is missing here",
                              "write a word, or leave out the bar or bracket");
        }
        return node.parts.size() == 1 ? std::move(node.parts.front()) : std::move(node);
    }

    Result<QueryNode> term(int depth) {
        const std::size_t begin = place();
        bool isNegated = false;
        for (; sees(Token::Minus); ++m_at) isNegated = !isNegated;
        if (m_at == m_tokens.size() || sees(Token::Bar) || sees(Token::Close)) {
            return queryError(m_query, begin, "'-' stands without a word after it",
                              "write the word right behind it, or put quotes around the '-'");
        }
        PANTILE_ASSIGN_OR_RETURN(QueryNode node, atom(depth));
        if (!isNegated) return node;
        return QueryNode{QueryNode::Kind::Not, {std::move(node)}, {}};
    }

    Result<QueryNode> atom(int depth) {
        if (sees(Token::Open)) return bracket(depth);
        const QueryToken& token = m_tokens[m_at++];
        if (++m_terms > kMaxQueryTerms) {
            return Error{ErrorKind::TooLarge,
                         "a query has at most " + std::to_string(kMaxQueryTerms) + " words",
                         "search in two steps"};
        }
        if (token.kind == Token::KeyAndValue) {
            PANTILE_ASSIGN_OR_RETURN(QueryNode node, readFilter(m_query, token));
            if (std::holds_alternative<RemovedFilter>(node.filter)) m_result.namesRemoved = true;
            return node;
        }
        if (token.value.empty()) {
            return queryError(m_query, token.place, "the quotes are empty",
                              "write the words to search for between them");
        }
        return matchNode(TextFilter{TextFilter::Field::Any, token.value});
    }

    Result<QueryNode> bracket(int depth) {
        const std::size_t opened = place();
        if (depth == kMaxQueryDepth) {
            return Error{ErrorKind::TooLarge,
                         "brackets stand in one another more than " +
                             std::to_string(kMaxQueryDepth) + " deep",
                         "search in two steps"};
        }
        ++m_at;
        PANTILE_ASSIGN_OR_RETURN(QueryNode node, either(depth + 1));
        if (!sees(Token::Close)) {
            return queryError(m_query, opened, "a bracket is opened and not closed",
                              "close it with )");
        }
        ++m_at;
        return node;
    }

    std::string_view m_query;
    const std::vector<QueryToken>& m_tokens;
    std::size_t m_at = 0;
    int m_terms = 0;
    Query m_result;
};

bool asksForAll(const std::vector<QueryToken>& tokens) {
    if (tokens.empty()) return true;
    const QueryToken& first = tokens.front();
    return tokens.size() == 1 && first.kind == Token::Text && !first.quoted && first.value == "all";
}

}  // namespace

Result<Query> parseQuery(std::string_view text) {
    PANTILE_ASSIGN_OR_RETURN(const std::vector<QueryToken> tokens, lexQuery(text));
    if (asksForAll(tokens)) return Query{};
    return Parser(text, tokens).parse();
}

}  // namespace pantile::catalogue
