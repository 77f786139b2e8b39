#pragma once

// QuerySets: what a query asks of tables other than facts, worked out once before it is asked of
// each texture.

#include <cstdint>
#include <deque>
#include <map>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue/connection.h"
#include "catalogue/id_set.h"
#include "catalogue/near_entries.h"
#include "catalogue/query.h"
#include "catalogue/sql_piece.h"
#include "catalogue/text_folding.h"
#include "catalogue/word_index.h"
#include "core/ids.h"
#include "core/result.h"

namespace pantile::catalogue {

/// A condition: the column's id is in the set, which must outlive the statement. Few are looked up;
/// of many each row is asked whether it is one.
core::Result<SqlPiece> isAmong(Connection& connection, IdSet& set, const std::string& column);

/// Everything it gives lives as long as it does.
class QuerySets {
public:
    /// How a condition stands in the query: textures that match meet all that are required, so they
    /// may be looked up by it; another is only asked of textures that are there.
    enum class Use { Required, Asked };

    QuerySets(Connection& connection, const TextFolding& folding)
        : m_connection(connection), m_folding(folding) {}

    std::string fold(std::string_view text) const { return m_folding.fold(text); }

    /// A condition over facts f: its texture is one of those that the statement gives as `id`.
    core::Result<SqlPiece> isOneOf(const SqlPiece& ids, Use use);

    core::Result<SqlPiece> isOneOf(std::span<const core::TextureId> ids, Use use);

    /// The same of those in whose field the folded text stands, which is not empty. Any looks into
    /// the tags and their aliases too.
    core::Result<SqlPiece> holds(TextFilter::Field field, const std::string& folded, Use use);

    /// Where the field alone is asked; ascending, with a bit for each of the kWordFields.
    core::Result<const std::vector<TextHit>*> hitsOf(const std::string& folded);

    /// For paints_near() in SQL.
    core::Result<NearEntries*> nearEntries(const ColourFilter& filter);

private:
    /// Adds the ids that the statement gives.
    core::Result<void> addTo(IdSet& set, const SqlPiece& ids);

    core::Result<SqlPiece> isIn(IdSet& set, Use use);

    Connection& m_connection;
    const TextFolding& m_folding;
    std::deque<IdSet> m_sets;
    std::deque<NearEntries> m_nearEntries;
    std::map<std::string, std::vector<TextHit>> m_hits;
};

}  // namespace pantile::catalogue
