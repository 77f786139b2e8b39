#include "catalogue/query_filters.h"

#include <algorithm>
#include <array>
#include <string>

#include "catalogue/query_values.h"
#include "core/nearest_word.h"
#include "core/text.h"

namespace pantile::catalogue {
namespace {

using core::Error;
using core::Result;

using TextField = TextFilter::Field;
using NameKind = NameFilter::Kind;
using NumberField = NumberFilter::Field;

// The keys by the kind of their value.
struct SizeKey {};

struct IsKey {};

struct ColourKey {};

struct LikeKey {};

struct DurationKey {};

struct DateKey {
    NumberField field;
};

using KeyMeaning = std::variant<TextField, NameKind, NumberField, SizeKey, DurationKey, DateKey,
                                ColourKey, LikeKey, IsKey>;

struct Key {
    std::string_view name;
    KeyMeaning meaning;
};

const std::array<Key, 23> kKeys = {{
    {"tag", NameKind::Tag},
    {"shelf", NameKind::Shelf},
    {"palette", NameKind::Palette},
    {"canvas", NameKind::Canvas},
    {"on", NameKind::On},
    {"title", TextField::Title},
    {"author", TextField::Author},
    {"licence", TextField::Licence},
    {"source", TextField::Source},
    {"note", TextField::Note},
    {"size", SizeKey{}},
    {"width", NumberField::Width},
    {"height", NumberField::Height},
    {"colours", NumberField::Colours},
    {"colour", ColourKey{}},
    {"like", LikeKey{}},
    {"stars", NumberField::Stars},
    {"bytes", NumberField::Bytes},
    {"id", NumberField::Id},
    {"draw", DurationKey{}},
    {"added", DateKey{NumberField::AddedAt}},
    {"changed", DateKey{NumberField::ChangedAt}},
    {"is", IsKey{}},
}};

Comparison comparisonOf(std::string_view sign) {
    if (sign == "<") return Comparison::Less;
    if (sign == "<=") return Comparison::LessOrEqual;
    if (sign == ">") return Comparison::Greater;
    if (sign == ">=") return Comparison::GreaterOrEqual;
    return Comparison::Equal;
}

QueryNode allOf(QueryNode first, QueryNode second) {
    return {QueryNode::Kind::AllOf, {std::move(first), std::move(second)}, {}};
}

/// A period compared: "<" is before it, ">" after it, "=" inside it.
QueryNode periodNode(NumberField field, Comparison comparison, Period period) {
    const auto node = [&](Comparison c, std::int64_t value) {
        return matchNode(NumberFilter{field, c, value});
    };
    switch (comparison) {
        case Comparison::Less:
            return node(Comparison::Less, period.begin);
        case Comparison::LessOrEqual:
            return node(Comparison::Less, period.end);
        case Comparison::GreaterOrEqual:
            return node(Comparison::GreaterOrEqual, period.begin);
        case Comparison::Greater:
            return node(Comparison::GreaterOrEqual, period.end);
        case Comparison::Equal:
            break;
    }
    return allOf(node(Comparison::GreaterOrEqual, period.begin),
                 node(Comparison::Less, period.end));
}

class FilterReader {
public:
    FilterReader(std::string_view query, const QueryToken& token)
        : m_query(query), m_token(token) {}

    Result<QueryNode> operator()(TextField field) const {
        PANTILE_RETURN_IF_ERROR(checkWordValue());
        return matchNode(TextFilter{field, m_token.value});
    }

    Result<QueryNode> operator()(NameKind kind) const {
        PANTILE_RETURN_IF_ERROR(checkWordValue());
        return matchNode(NameFilter{kind, m_token.value});
    }

    Result<QueryNode> operator()(NumberField field) const {
        const auto value = parseCount(m_token.value);
        if (!value) return badValue("a whole number", "32");
        return matchNode(NumberFilter{field, comparison(), *value});
    }

    Result<QueryNode> operator()(SizeKey) const {
        PANTILE_RETURN_IF_ERROR(checkEquals());
        const auto size = parseSize(m_token.value);
        if (!size) return badValue("a size", "32x32");
        const auto side = [](NumberField field, int value) {
            return matchNode(NumberFilter{field, Comparison::Equal, value});
        };
        return allOf(side(NumberField::Width, size->width),
                     side(NumberField::Height, size->height));
    }

    Result<QueryNode> operator()(DurationKey) const {
        const auto duration = parseDuration(m_token.value);
        if (!duration) return badValue("a time", "90s, 2m or 1h");
        return matchNode(NumberFilter{NumberField::DrawMs, comparison(), *duration});
    }

    Result<QueryNode> operator()(DateKey key) const {
        const auto period = parsePeriod(m_token.value);
        if (!period) return badValue("a date", "2026, 2026-01 or 2026-01-31");
        return periodNode(key.field, comparison(), *period);
    }

    Result<QueryNode> operator()(ColourKey) const {
        PANTILE_RETURN_IF_ERROR(checkEquals());
        const auto near = parseNearColour(m_token.value);
        if (!near) return badValue("a colour", "#3a6b4c or #3a6b4c~10");
        return matchNode(ColourFilter{near->colour, near->thousandths});
    }

    Result<QueryNode> operator()(LikeKey) const {
        PANTILE_RETURN_IF_ERROR(checkEquals());
        const auto like = parseLike(m_token.value);
        if (!like) return badValue("the id of a texture", "17, or 17~10 for a distance up to 100");
        return matchNode(
            LikeFilter{core::TextureId{like->id}, like->within.value_or(kUsualLikeness), {}});
    }

    Result<QueryNode> operator()(IsKey) const {
        PANTILE_RETURN_IF_ERROR(checkEquals());
        if (m_token.value == "removed") return matchNode(RemovedFilter{});
        if (m_token.value == "seamless") return matchNode(SeamlessFilter{});
        constexpr std::array<std::string_view, 2> kKnown = {"removed", "seamless"};
        return queryError(
            m_query, m_token.valuePlace,
            "'is:' does not know '" + core::excerpt(m_token.value) + "'",
            core::didYouMean(m_token.value, kKnown,
                             "write is:removed or is:seamless; tag:\"\" and the like find those "
                             "without any"));
    }

private:
    Comparison comparison() const { return comparisonOf(m_token.sign); }

    Result<void> checkEquals() const {
        if (comparison() == Comparison::Equal) return {};
        return queryError(m_query, m_token.place,
                          "'" + m_token.key + "' has no order for '" + m_token.sign + "'",
                          "write " + m_token.key + ":");
    }

    Result<void> checkWordValue() const {
        PANTILE_RETURN_IF_ERROR(checkEquals());
        if (!m_token.value.empty() || m_token.quoted) return {};
        return queryError(
            m_query, m_token.valuePlace,
            "a word is missing after '" + m_token.key + m_token.sign + "'",
            "write it without a blank, or " + m_token.key + ":\"\" for textures without any");
    }

    Error badValue(const std::string& expected, const std::string& example) const {
        const std::string found =
            m_token.value.empty() ? "nothing" : "'" + core::excerpt(m_token.value) + "'";
        return queryError(m_query, m_token.valuePlace,
                          "'" + m_token.key + "' takes " + expected + ", not " + found,
                          "write it like " + example);
    }

    std::string_view m_query;
    const QueryToken& m_token;
};

Error unknownKey(std::string_view query, const QueryToken& token) {
    std::array<std::string_view, kKeys.size()> names;
    std::transform(kKeys.begin(), kKeys.end(), names.begin(), [](const Key& k) { return k.name; });
    const auto near = core::nearestWord(token.key, names);
    const std::string known =
        near ? "did you mean '" + std::string(*near) + token.sign + "'? " : "";
    return queryError(query, token.place,
                      "there is no '" + token.key + token.sign + "' to search by",
                      known + "put quotes around the word to search for it as text");
}

}  // namespace

Result<QueryNode> readFilter(std::string_view query, const QueryToken& token) {
    const auto* const key =
        std::find_if(kKeys.begin(), kKeys.end(), [&](const Key& k) { return k.name == token.key; });
    if (key == kKeys.end()) return unknownKey(query, token);
    return std::visit(FilterReader(query, token), key->meaning);
}

}  // namespace pantile::catalogue
