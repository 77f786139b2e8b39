#pragma once

// QueryMatcher: which textures match a query. Each part of the query gives a set of ids, and the
// query puts them together. Every value of a query that SQL needs is a bound parameter.

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue/connection.h"
#include "catalogue/entry_sets.h"
#include "catalogue/fact_index.h"
#include "catalogue/id_set.h"
#include "catalogue/query.h"
#include "catalogue/statement.h"
#include "catalogue/text_folding.h"
#include "catalogue/word_index.h"
#include "core/result.h"

namespace pantile::catalogue {

/// For the moment at which it was made: it must not outlive a transaction. Errors of all: as
/// Connection::error, and Corrupt where an index is damaged.
class QueryMatcher {
public:
    QueryMatcher(Connection& connection, const TextFolding& folding)
        : m_connection(connection), m_folding(folding) {}

    core::Result<IdSet> matches(const Query& query);

    std::string fold(std::string_view text) const { return m_folding.fold(text); }

    /// Where the folded text, which is not empty, stands.
    core::Result<const WordSets*> wordSets(const std::string& folded);

private:
    struct Answer;

    /// The parts of the library that a query may be about.
    struct Present {
        IdSet all;  ///< Removed ones too.
        IdSet removed;
    };

    core::Result<const Present*> present();

    core::Result<IdSet> node(const QueryNode& node);
    core::Result<IdSet> allOf(const std::vector<QueryNode>& parts);

    core::Result<IdSet> text(const TextFilter& filter);
    core::Result<IdSet> name(const NameFilter& filter);
    core::Result<IdSet> number(const NumberFilter& filter);
    core::Result<IdSet> colour(const ColourFilter& filter);
    core::Result<IdSet> without(NameFilter::Kind kind);
    core::Result<IdSet> fitting(const std::string* foldedName);
    core::Result<IdSet> fittingOne(Statement& canvas);
    core::Result<IdSet> painting(EntrySets& entries);
    core::Result<IdSet> withPalette(const IdSet& palettes);

    /// All but these.
    core::Result<IdSet> complement(const IdSet& ids);

    /// Those that the statement gives as `id`; the value is its parameter ?2.
    core::Result<IdSet> idsFrom(std::string_view select, std::string_view value = {});

    Connection& m_connection;
    const TextFolding& m_folding;
    std::optional<Present> m_present;
    std::map<std::string, WordSets> m_wordSets;
};

/// The words asked for, without those behind a '-'.
std::vector<std::string> wordsOf(const Query& query);

}  // namespace pantile::catalogue
