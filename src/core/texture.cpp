#include "core/texture.h"

#include <algorithm>
#include <bitset>

#include "core/text.h"

namespace pantile::core {

Result<void> checkTag(std::string_view tag) {
    PANTILE_RETURN_IF_ERROR(checkText(tag, {"tag", kMaxTagCharacters}));
    const bool oneWord = !tag.empty() && tag.find_first_of(" \"'(),:|") == std::string_view::npos;
    const bool plainStart = !tag.empty() && tag.front() != '-' && tag.front() != '+';
    if (oneWord && plainStart) return {};
    return Error{ErrorKind::InvalidInput, "'" + excerpt(tag) + "' cannot be a tag",
                 "a tag is one word without quotes, brackets, commas or colons, such as wet-sand"};
}

void normaliseTags(std::vector<std::string>& tags) {
    std::sort(tags.begin(), tags.end());
    tags.erase(std::unique(tags.begin(), tags.end()), tags.end());
}

Result<void> checkTextureText(const TextureText& text) {
    PANTILE_RETURN_IF_ERROR(checkText(text.title, {"title", kMaxTitleCharacters}));
    PANTILE_RETURN_IF_ERROR(checkText(text.author, {"author", kMaxAuthorCharacters}));
    PANTILE_RETURN_IF_ERROR(checkText(text.licence, {"licence", kMaxLicenceCharacters}));
    PANTILE_RETURN_IF_ERROR(checkText(text.source, {"source", kMaxSourceCharacters}));
    PANTILE_RETURN_IF_ERROR(
        checkText(text.note, {"note", kMaxNoteCharacters, LineBreaks::Allowed}));
    for (const std::string& tag : text.tags) PANTILE_RETURN_IF_ERROR(checkTag(tag));
    if (text.tags.size() > kMaxTags) {
        return Error{ErrorKind::TooLarge,
                     "a texture has at most " + std::to_string(kMaxTags) + " tags, not " +
                         std::to_string(text.tags.size()),
                     "leave some out"};
    }
    return {};
}

Result<Texture> Texture::create(Grid grid, Palette palette, TextureText text) {
    const int largest = grid.largestIndex();
    if (largest >= palette.size()) {
        return Error{ErrorKind::InvalidInput,
                     "a cell has index " + std::to_string(largest) + ", and the palette ends at " +
                         std::to_string(palette.size() - 1),
                     "use a palette with more colours or smaller indices"};
    }
    normaliseTags(text.tags);
    PANTILE_RETURN_IF_ERROR(checkTextureText(text));
    return Texture(std::move(grid), std::move(palette), std::move(text));
}

Result<Texture> Texture::withText(TextureText text) const {
    return create(m_grid, m_palette, std::move(text));
}

Fingerprint contentFingerprint(const Grid& grid, const Palette& palette) {
    FingerprintBuilder builder;
    const std::uint64_t paletteValue = palette.fingerprint().value;
    for (unsigned shift = 0; shift < 64; shift += 8) {
        builder.addByte(static_cast<std::uint8_t>(paletteValue >> shift));
    }
    builder.addByte(static_cast<std::uint8_t>(grid.width() - 1));
    builder.addByte(static_cast<std::uint8_t>(grid.height() - 1));
    builder.addBytes(grid.cells());
    return builder.finish();
}

Fingerprint Texture::contentFingerprint() const {
    return pantile::core::contentFingerprint(m_grid, m_palette);
}

int Texture::coloursUsed() const {
    std::bitset<kMaxPaletteColours> used;
    for (const PaletteIndex index : m_grid.cells()) used.set(index);
    if (m_palette.transparent()) used.reset(*m_palette.transparent());
    return static_cast<int>(used.count());
}

}  // namespace pantile::core
