#pragma once

// How text is made alike for searching: letter case and accents taken off.

#include <functional>
#include <string>
#include <string_view>

namespace pantile::catalogue {

/// `fold` gives the same for the same text always, and folded text stays as it is. The index of a
/// library holds folded text: another version makes it anew.
struct TextFolding {
    std::string version;
    std::function<std::string(std::string_view)> fold;
};

}  // namespace pantile::catalogue
