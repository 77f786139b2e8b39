#pragma once

// The folding of searched text in any language, by Unicode's rules.

#include "catalogue/text_folding.h"

namespace pantile::tasks {

/// Compatibility decomposition, full case folding, then combining marks taken off and the rest
/// composed again. The voicing marks of kana stay: with one a kana is another letter.
/// Source: The Unicode Standard 15, sections 3.11 and 3.13.
catalogue::TextFolding unicodeFolding();

}  // namespace pantile::tasks
