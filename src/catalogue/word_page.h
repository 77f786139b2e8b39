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

/// Of each field, a bit for each place of a page, the lowest for the first.
using WordHits = std::array<std::uint64_t, kWordFields.size()>;
static_assert(WordPage::kTextures == 64);

/// Where `folded`, which is not empty, stands.
WordHits hitsIn(std::string_view page, std::string_view folded);

}  // namespace pantile::catalogue
