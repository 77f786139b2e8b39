#pragma once

// What the library's own SQL statements may call beyond SQLite's functions:
//   fold(text)                      the folded text
//   uses_near(colours, used, rgb, thousandths)
//                                   1 if a used palette entry lies within that CIEDE2000 distance
//   uses_only(colours, used, allowed)
//                                   1 if every used palette entry stands among the allowed ones
//   is_one_of(ids, id)              1 if the id is in the IdSet
//   keep_in(ids, id)                adds the id to the IdSet; NULL
// Colours are palettes as stored, three bytes each. `used` is contents.used; NULL means all
// entries.

#include "catalogue/connection.h"
#include "catalogue/text_folding.h"
#include "core/result.h"

namespace pantile::catalogue {

/// Errors: Internal if the folding is empty.
core::Result<void> addSqlFunctions(Connection& connection, const TextFolding& folding);

}  // namespace pantile::catalogue
