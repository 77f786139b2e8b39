#pragma once

// IndexChanges: which textures the indexes of words and facts do not hold as they are.

#include <cstdint>
#include <set>

#include "catalogue/connection.h"
#include "core/result.h"

namespace pantile::catalogue {

/// A page of an index holds many textures: they are written when the outermost transaction commits,
/// or something is searched. Triggers note every change.
class IndexChanges {
public:
    /// The texture came, changed or went in the present transaction.
    void note(std::int64_t id) { m_unwritten.insert(id); }

    /// A savepoint was undone, and perhaps with it what was written into the indexes.
    void takeBack();

    /// Brings the indexes up to the textures as they now are. Inside a transaction, if anything was
    /// noted.
    core::Result<void> write(Connection& connection);

    /// The outermost transaction ended, or the indexes were made anew in it.
    void clear();

private:
    std::set<std::int64_t> m_unwritten;
    std::set<std::int64_t> m_written;  ///< In the present transaction.
};

/// What triggers call: outdate_texture(id) notes the texture; NULL. The changes must outlive the
/// connection's handle.
core::Result<void> addOutdateFunction(Connection& connection, IndexChanges& changes);

}  // namespace pantile::catalogue
