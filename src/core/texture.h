#pragma once

// Texture: a grid of palette indices with its palette, title, tags and origin.

#include <string>
#include <string_view>
#include <vector>

#include "core/fingerprint.h"
#include "core/grid.h"
#include "core/palette.h"
#include "core/result.h"

namespace pantile::core {

/// What people say about a texture. All UTF-8; limits in characters are those of checkTextureText.
struct TextureText {
    std::string title;
    std::string author;
    std::string licence;
    std::string source;
    std::string note;
    std::vector<std::string> tags;  ///< Sorted, each once.

    bool operator==(const TextureText&) const = default;
};

inline constexpr std::size_t kMaxTitleCharacters = 120;
inline constexpr std::size_t kMaxAuthorCharacters = 120;
inline constexpr std::size_t kMaxLicenceCharacters = 120;
inline constexpr std::size_t kMaxSourceCharacters = 500;
inline constexpr std::size_t kMaxNoteCharacters = 4000;
inline constexpr std::size_t kMaxTagCharacters = 40;
inline constexpr std::size_t kMaxTags = 64;

/// Errors: InvalidInput or TooLarge naming the field and the character at fault.
Result<void> checkTextureText(const TextureText& text);

/// A tag is one word: no blanks, quotes, brackets, commas, colons or '|', no '-' or '+' in front.
/// Errors: InvalidInput or TooLarge.
Result<void> checkTag(std::string_view tag);

/// Sorts tags and keeps each once.
void normaliseTags(std::vector<std::string>& tags);

/// Every cell's index lies inside the palette.
class Texture {
public:
    /// Errors: InvalidInput if a cell's index is outside the palette, or as checkTextureText.
    /// Tags are sorted, each kept once.
    static Result<Texture> create(Grid grid, Palette palette, TextureText text = {});

    const Grid& grid() const { return m_grid; }

    const Palette& palette() const { return m_palette; }

    const TextureText& text() const { return m_text; }

    /// The same picture with other words. Errors: as checkTextureText.
    Result<Texture> withText(TextureText text) const;

    /// Over grid and palette, not the words: equal pictures have equal fingerprints.
    Fingerprint contentFingerprint() const;

    /// How many palette entries occur among the cells, the transparent one not counted.
    int coloursUsed() const;

    bool operator==(const Texture&) const = default;

private:
    Texture(Grid grid, Palette palette, TextureText text)
        : m_grid(std::move(grid)), m_palette(std::move(palette)), m_text(std::move(text)) {}

    Grid m_grid;
    Palette m_palette;
    TextureText m_text;
};

/// The fingerprint that Texture::contentFingerprint gives, from the parts.
Fingerprint contentFingerprint(const Grid& grid, const Palette& palette);

}  // namespace pantile::core
