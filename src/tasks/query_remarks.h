#pragma once

// What a query that finds too little may have been meant to be.

#include <string>
#include <string_view>
#include <vector>

#include "catalogue/library.h"
#include "catalogue/tags.h"

namespace pantile::tasks {

/// "there is no tag 'klep'; did you mean 'kelp'?"
std::string unknownTagText(const catalogue::UnknownTag& tag);

/// A sentence for each tag that the library does not have, with the nearest that it has, and for
/// each sign of other query languages that is searched for as text here, such as OR, NOT, '!' or
/// '*'. None for a query that cannot be read.
std::vector<std::string> queryRemarks(const catalogue::Library& library, std::string_view query);

}  // namespace pantile::tasks
