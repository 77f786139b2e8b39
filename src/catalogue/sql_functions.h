#pragma once

// What the library's own SQL statements may call beyond SQLite's functions:
//   fold(text)                      the folded text
//   is_one_of(ids, id)              1 if the id is in the IdSet
//   keep_in(ids, id)                adds the id to the IdSet; NULL
//   keep_entries(entries, palette, colours)
//                                   adds the palette, three bytes a colour, to the EntrySets; NULL
// Objects are given by bound().

#include "catalogue/connection.h"
#include "catalogue/statement.h"
#include "catalogue/text_folding.h"
#include "core/result.h"

namespace pantile::catalogue {

/// The object must outlive the statement's last step.
template <typename Object>
BoundValue bound(Object& object) {
    return BoundObject{&object, Object::kType};
}

/// Errors: Internal if the folding is empty.
core::Result<void> addSqlFunctions(Connection& connection, const TextFolding& folding);

}  // namespace pantile::catalogue
