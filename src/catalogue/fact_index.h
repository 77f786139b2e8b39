#pragma once

// The index of facts: the table fact_pages, which holds column by column what queries compare and
// order by. See schema/0008_fact_pages.sql.

#include <cstddef>
#include <cstdint>
#include <initializer_list>
#include <span>
#include <vector>

#include "catalogue/connection.h"
#include "catalogue/fact_page.h"
#include "catalogue/statement.h"
#include "core/ids.h"
#include "core/result.h"

namespace pantile::catalogue {

/// Stored in libraries: never renumber. Where there is no texture, each is 0.
enum class Fact : std::uint8_t {
    Presence,  ///< A TexturePresence.
    Width,
    Height,
    Colours,
    Stars,
    Seam,       ///< Hundredths, or kUnknownFact.
    DrawMs,     ///< Or kUnknownFact.
    LoadBytes,  ///< Or kUnknownFact.
    Palette,
    AddedAt,
    ChangedAt,
    Tone,   ///< Or kUnknownFact.
    Used0,  ///< A bit for each of the palette entries 0 to 63 that is painted; of one that was not
            ///< looked at yet, for all.
    Used64,
    Used128,
    Used192,
};

inline constexpr std::size_t kFacts = 16;
inline constexpr std::int64_t kUnknownFact = -1;

enum TexturePresence : std::int64_t { kNoTexture = 0, kPresentTexture = 1, kRemovedTexture = 2 };

/// Goes through pages of some facts side by side, by rising ids.
class FactReader {
public:
    /// Errors: as Connection::error.
    static core::Result<FactReader> create(Connection& connection,
                                           std::initializer_list<Fact> facts);

    /// Goes to the next page that holds all the facts; false at the end.
    /// Errors: Corrupt if a page is none.
    core::Result<bool> next();

    /// Of the page's first texture; the others follow it.
    std::int64_t firstId() const { return firstIdOf(m_columns.front().page); }

    /// In the order of create().
    const FactValues& values(std::size_t column) const { return m_columns[column].values; }

private:
    struct Column {
        Statement rows;
        std::int64_t base = 0;
        std::int64_t page = 0;
        FactValues values{};
    };

    static std::int64_t firstIdOf(std::int64_t page);

    static core::Result<bool> step(Column& column);

    std::vector<Column> m_columns;
};

/// Brings the pages up to what these textures, by rising ids, now are.
core::Result<void> writeFacts(Connection& connection, std::span<const std::int64_t> ids);

/// Makes all pages anew.
core::Result<void> fillFacts(Connection& connection);

/// The textures of which the pages say what is not so, and those that only the pages know.
core::Result<std::vector<std::int64_t>> wrongFacts(Connection& connection);

}  // namespace pantile::catalogue
