#include "catalogue/query_sets.h"

namespace pantile::catalogue {
namespace {

using core::Result;

/// Textures whose tags, or other words for them, hold the text.
SqlPiece taggedLike(const std::string& folded) {
    return {
        "SELECT texture_id AS id FROM texture_tags WHERE tag_id IN (SELECT id FROM tags WHERE "
        "instr(folded, ?) OR folded IN (SELECT fold(tag) FROM tag_aliases WHERE instr(alias, ?)))",
        {folded, folded}};
}

unsigned bitsOf(TextFilter::Field field) {
    if (field == TextFilter::Field::Any) return ~0U;
    return 1U << (static_cast<unsigned>(field) - static_cast<unsigned>(TextFilter::Field::Title));
}

SqlPiece askedOf(IdSet& set, const std::string& column) {
    return {"is_one_of(?, " + column + ")", {bound(set)}};
}

}  // namespace

Result<SqlPiece> isAmong(Connection& connection, IdSet& set, const std::string& column) {
    constexpr std::int64_t kOneIn = 8;
    PANTILE_ASSIGN_OR_RETURN(
        const std::int64_t last,
        connection.number("SELECT ifnull((SELECT max(texture_id) FROM facts), 0)"));
    if (set.size() >= last / kOneIn) return askedOf(set, column);
    std::string list = "[";
    for (const std::int64_t id : set.ids()) {
        if (list.size() > 1) list += ',';
        list += std::to_string(id);
    }
    return SqlPiece{column + " IN (SELECT value FROM json_each(?))", {list + "]"}};
}

Result<void> QuerySets::addTo(IdSet& set, const SqlPiece& ids) {
    // Row by row they would take twice the time.
    SqlPiece all{"SELECT count(keep_in(?, id)) FROM (", {bound(set)}};
    all.append(ids);
    all.sql += ")";
    PANTILE_ASSIGN_OR_RETURN(Statement statement, prepare(m_connection, all));
    PANTILE_RETURN_IF_ERROR(statement.run());
    return {};
}

Result<SqlPiece> QuerySets::isIn(IdSet& set, Use use) {
    const std::string column = "f.texture_id";
    if (use == Use::Asked) return askedOf(set, column);
    return isAmong(m_connection, set, column);
}

Result<SqlPiece> QuerySets::isOneOf(const SqlPiece& ids, Use use) {
    IdSet& set = m_sets.emplace_back();
    PANTILE_RETURN_IF_ERROR(addTo(set, ids));
    return isIn(set, use);
}

Result<SqlPiece> QuerySets::isOneOf(std::span<const core::TextureId> ids, Use use) {
    IdSet& set = m_sets.emplace_back();
    for (const core::TextureId id : ids) set.add(id.value);
    return isIn(set, use);
}

Result<SqlPiece> QuerySets::holds(TextFilter::Field field, const std::string& folded, Use use) {
    PANTILE_ASSIGN_OR_RETURN(const std::vector<TextHit>* hits, hitsOf(folded));
    IdSet& set = m_sets.emplace_back();
    for (const TextHit& hit : *hits) {
        if ((hit.fields & bitsOf(field)) != 0) set.add(hit.id);
    }
    if (field == TextFilter::Field::Any) {
        PANTILE_RETURN_IF_ERROR(addTo(set, taggedLike(folded)));
    }
    return isIn(set, use);
}

Result<const std::vector<TextHit>*> QuerySets::hitsOf(const std::string& folded) {
    const auto known = m_hits.find(folded);
    if (known != m_hits.end()) return &known->second;
    PANTILE_ASSIGN_OR_RETURN(std::vector<TextHit> hits, searchWords(m_connection, folded));
    return &m_hits.emplace(folded, std::move(hits)).first->second;
}

Result<NearEntries*> QuerySets::nearEntries(const ColourFilter& filter) {
    constexpr double kThousandths = 1000;
    NearEntries& near = m_nearEntries.emplace_back(core::ColourNeighbourhood(
        filter.colour, static_cast<double>(filter.thousandths) / kThousandths));
    PANTILE_ASSIGN_OR_RETURN(
        Statement statement,
        prepare(m_connection,
                {"SELECT count(keep_near(?, id, colours)) FROM palettes", {bound(near)}}));
    PANTILE_RETURN_IF_ERROR(statement.run());
    return &near;
}

}  // namespace pantile::catalogue
