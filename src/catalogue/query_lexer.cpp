#include "catalogue/query_lexer.h"

#include <algorithm>
#include <array>

#include "catalogue/query_parser.h"
#include "core/text.h"

namespace pantile::catalogue {
namespace {

using core::Error;
using core::ErrorKind;
using core::Result;
using Kind = QueryToken::Kind;

bool isKeyLetter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

bool endsWord(char c) {
    return c == ' ' || c == '\t' || c == '(' || c == ')' || c == '|' || c == '"';
}

class Lexer {
public:
    explicit Lexer(std::string_view query) : m_query(query) {}

    Result<std::vector<QueryToken>> lex() {
        std::vector<QueryToken> tokens;
        for (skipBlanks(); m_at < m_query.size(); skipBlanks()) {
            PANTILE_ASSIGN_OR_RETURN(QueryToken token, next());
            tokens.push_back(std::move(token));
        }
        return tokens;
    }

private:
    void skipBlanks() {
        while (m_at < m_query.size() && (m_query[m_at] == ' ' || m_query[m_at] == '\t')) ++m_at;
    }

    Result<QueryToken> next() {
        QueryToken token;
        token.place = token.valuePlace = m_at;
        const bool isSign = takeSign(token);
        if (isSign) return token;
        if (takeKey(token)) {
            token.kind = Kind::KeyAndValue;
            token.valuePlace = m_at;
        }
        PANTILE_RETURN_IF_ERROR(takeValue(token));
        return token;
    }

    bool takeSign(QueryToken& token) {
        constexpr std::array<std::pair<char, Kind>, 4> kSigns = {
            {{'(', Kind::Open}, {')', Kind::Close}, {'|', Kind::Bar}, {'-', Kind::Minus}}};
        for (const auto& [letter, kind] : kSigns) {
            if (m_query[m_at] != letter) continue;
            token.kind = kind;
            ++m_at;
            return true;
        }
        return false;
    }

    // Letters and a sign right behind them; anything else is text.
    bool takeKey(QueryToken& token) {
        std::size_t end = m_at;
        while (end < m_query.size() && isKeyLetter(m_query[end])) ++end;
        if (end == m_at || end == m_query.size()) return false;
        constexpr std::array<std::string_view, 6> kSigns = {"<=", ">=", ":", "<", "=", ">"};
        const auto* const sign = std::find_if(kSigns.begin(), kSigns.end(), [&](auto candidate) {
            return m_query.substr(end).starts_with(candidate);
        });
        if (sign == kSigns.end()) return false;
        token.key = m_query.substr(m_at, end - m_at);
        std::transform(token.key.begin(), token.key.end(), token.key.begin(),
                       [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; });
        token.sign = *sign;
        m_at = end + sign->size();
        return true;
    }

    Result<void> takeValue(QueryToken& token) {
        if (m_at < m_query.size() && m_query[m_at] == '"') return takePhrase(token);
        const std::size_t begin = m_at;
        while (m_at < m_query.size() && !endsWord(m_query[m_at])) ++m_at;
        token.value = m_query.substr(begin, m_at - begin);
        return {};
    }

    Result<void> takePhrase(QueryToken& token) {
        const std::size_t begin = m_at++;
        token.quoted = true;
        for (; m_at < m_query.size() && m_query[m_at] != '"'; ++m_at) {
            const bool escapes = m_query[m_at] == '\\' && m_at + 1 < m_query.size() &&
                                 (m_query[m_at + 1] == '"' || m_query[m_at + 1] == '\\');
            if (escapes) ++m_at;
            token.value += m_query[m_at];
        }
        if (m_at == m_query.size()) {
            return queryError(m_query, begin, "a quote is opened and not closed",
                              "close it with another \"");
        }
        ++m_at;
        return {};
    }

    std::string_view m_query;
    std::size_t m_at = 0;
};

}  // namespace

Result<std::vector<QueryToken>> lexQuery(std::string_view query) {
    PANTILE_RETURN_IF_ERROR(core::checkText(query, {"query", kMaxQueryCharacters}));
    return Lexer(query).lex();
}

Error queryError(std::string_view query, std::size_t place, const std::string& message,
                 const std::string& advice) {
    // A long query is shown around the place only.
    constexpr std::size_t kBefore = 40;
    constexpr std::size_t kShown = 80;
    const auto atLetter = [&](std::size_t at) {
        while (at < query.size() && (static_cast<unsigned char>(query[at]) & 0xC0U) == 0x80U) ++at;
        return std::min(at, query.size());
    };
    const std::size_t begin = atLetter(place > kBefore ? place - kBefore : 0);
    const std::size_t end = atLetter(begin + kShown);
    const std::size_t column = core::codePointCount(query.substr(0, place)) + 1;
    const std::size_t indent = core::codePointCount(query.substr(begin, place - begin));
    return {ErrorKind::InvalidInput, "column " + std::to_string(column) + ": " + message,
            std::string(query.substr(begin, end - begin)) + "\n" + std::string(indent, ' ') +
                "^\n" + advice};
}

}  // namespace pantile::catalogue
