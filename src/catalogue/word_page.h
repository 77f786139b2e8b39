#pragma once

// WordPage: the folded texts of 64 textures in a row as one piece of bytes, which is searched as
// it stands. The format, and why: schema/0004_finding.sql.

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace pantile::catalogue {

/// In the order in which they stand in a page. Stored in libraries: never change it.
inline constexpr std::array<std::string_view, 5> kWordFields = {"title", "author", "licence",
                                                                "source", "note"};
using WordTexts = std::array<std::string, kWordFields.size()>;

class WordPage {
public:
    static constexpr std::size_t kTextures = 64;

    WordPage() = default;

    /// Takes any bytes: what lies beyond the last texture of a page is left out.
    explicit WordPage(std::string_view bytes);

    /// `place` is below kTextures.
    void set(std::size_t place, const WordTexts& folded);

    /// Empty if no texture of the page has a text.
    std::string bytes() const;

private:
    std::array<std::string, kTextures> m_records;
};

/// Where text stands: the texture's place in its page, and a bit for each field, the lowest for the
/// first.
struct WordHit {
    std::size_t place = 0;
    unsigned fields = 0;

    bool operator==(const WordHit&) const = default;
};

/// Every texture of the page in which `folded`, which is not empty, stands, by rising places.
void appendHits(std::string_view page, std::string_view folded, std::vector<WordHit>& hits);

}  // namespace pantile::catalogue
