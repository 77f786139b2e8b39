#include "codec/modelled_form.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <utility>

#include "codec/bit_coder.h"
#include "codec/grid_model.h"
#include "codec/palette_lookup.h"
#include "codec/palette_model.h"
#include "codec/words_model.h"

namespace pantile::codec {
namespace {

constexpr std::array<int, 3> kUsualSides = {16, 32, 64};
constexpr int kSideKindBits = 2;
constexpr int kSideBits = 8;

core::Error damaged() {
    return {core::ErrorKind::Corrupt, "the modelled runs of the code are damaged",
            "ask for the code again"};
}

/// 0, 1, 2: a square of a usual side; 3: any other.
std::uint32_t sideKindOf(core::Size size) {
    const auto usual = std::find(kUsualSides.begin(), kUsualSides.end(), size.width);
    if (size.width != size.height) return kUsualSides.size();
    return static_cast<std::uint32_t>(usual - kUsualSides.begin());
}

core::Size codeSize(BitCoder& coder, core::Size size) {
    const std::uint32_t kind = coder.codeNumber(sideKindOf(size), kSideKindBits);
    if (kind < kUsualSides.size()) return {kUsualSides[kind], kUsualSides[kind]};
    const auto codeSide = [&](int side) {
        return static_cast<int>(coder.codeNumber(static_cast<std::uint32_t>(side - 1), kSideBits)) +
               1;
    };
    const int width = codeSide(size.width);
    return {width, codeSide(size.height)};
}

std::size_t cellsOf(core::Size size) {
    return static_cast<std::size_t>(size.width) * static_cast<std::size_t>(size.height);
}

/// Puts down or reads a whole set; what is the same for both stands here once.
class SetCoding {
public:
    SetCoding(BitCoder& coder, bool byFingerprint, const PaletteLookup& lookup)
        : m_coder(coder), m_byFingerprint(byFingerprint), m_lookup(lookup) {}

    core::Result<std::vector<core::Texture>> run(std::span<const core::Texture> textures) {
        const std::size_t count = m_coder.codeCount(static_cast<std::uint32_t>(textures.size()));
        if (count > kMostTexturesInSet) return damaged();
        if (!codeSizes(textures, count)) return damaged();
        m_hasWords = m_coder.codeEven(std::any_of(textures.begin(), textures.end(), hasWords));
        m_byFingerprint = m_coder.codeEven(m_byFingerprint);
        std::vector<core::Texture> coded;
        for (std::size_t i = 0; i < count; ++i) {
            PANTILE_ASSIGN_OR_RETURN(core::Texture texture,
                                     codeTexture(i, textures.empty() ? nullptr : &textures[i]));
            coded.push_back(std::move(texture));
        }
        return coded;
    }

    /// Those that were coded so far, whatever came of it.
    std::size_t decisions() const {
        return kDecisionsOfAStart + (m_grids ? m_grids->decisions() : 0) +
               (m_words ? kDecisionsOfALetter * m_words->letters() : 0);
    }

private:
    // What takes as long as so many decisions about cells: to clear the tables, and the eight about
    // a letter with fewer contexts.
    static constexpr std::size_t kDecisionsOfAStart = 500;
    static constexpr std::size_t kDecisionsOfALetter = 4;

    static bool hasWords(const core::Texture& texture) {
        const core::TextureText& text = texture.text();
        return !(text.title.empty() && text.author.empty() && text.licence.empty() &&
                 text.tags.empty());
    }

    bool codeSizes(std::span<const core::Texture> textures, std::size_t count) {
        std::size_t cells = 0;
        for (std::size_t i = 0; i < count; ++i) {
            const core::Size own = textures.empty() ? core::Size{1, 1} : textures[i].grid().size();
            const bool same = i > 0 && m_coder.codeEven(own == m_sizes.back());
            m_sizes.push_back(same ? m_sizes.back() : codeSize(m_coder, own));
            cells += cellsOf(m_sizes.back());
            if (cells > kMostModelledCells) return false;
        }
        m_grids.emplace(cells);
        return true;
    }

    core::Result<core::Texture> codeTexture(std::size_t number, const core::Texture* texture) {
        std::optional<core::TextureText> words = core::TextureText{};
        if (m_hasWords) {
            if (!m_words) m_words.emplace();
            words = m_words->code(m_coder, texture != nullptr ? texture->text() : *words);
            if (!words) return damaged();
        }
        PANTILE_ASSIGN_OR_RETURN(
            const std::size_t paletteNumber,
            codePaletteNumber(texture != nullptr ? &texture->palette() : nullptr, *words));
        std::vector<core::PaletteIndex> cells;
        if (texture != nullptr) {
            cells.assign(texture->grid().cells().begin(), texture->grid().cells().end());
        }
        const core::Palette& palette = m_palettes[paletteNumber];
        const core::Size size = m_sizes[number];
        if (!m_grids->code(m_coder, size, palette, paletteNumber, cells)) return damaged();
        PANTILE_ASSIGN_OR_RETURN(core::Grid grid,
                                 core::Grid::create(size.width, size.height, std::move(cells)));
        return core::Texture::create(std::move(grid), palette, std::move(*words));
    }

    /// Which of the palettes so far, counted back from the last one; 1 more for a new one.
    core::Result<std::size_t> codePaletteNumber(const core::Palette* palette,
                                                const core::TextureText& words) {
        const std::size_t known = m_palettes.size();
        if (known > 0) {
            const auto found = palette != nullptr
                                   ? std::find(m_palettes.begin(), m_palettes.end(), *palette)
                                   : m_palettes.end();
            const auto back = static_cast<std::uint32_t>(m_palettes.end() - found);
            const std::uint32_t wanted = back == 0 ? static_cast<std::uint32_t>(known) + 1 : back;
            const std::uint32_t coded = m_coder.codeCount(wanted);
            if (coded <= known) return known - coded;
            if (coded > known + 1) return damaged();
        }
        PANTILE_ASSIGN_OR_RETURN(core::Palette made, codeNewPalette(palette, words));
        m_palettes.push_back(std::move(made));
        return known;
    }

    core::Result<core::Palette> codeNewPalette(const core::Palette* palette,
                                               const core::TextureText& words) {
        if (m_byFingerprint) return codeFingerprint(palette, words);
        std::optional<core::Palette> coded = codePalette(m_coder, palette);
        if (!coded) return damaged();
        return std::move(*coded);
    }

    core::Result<core::Palette> codeFingerprint(const core::Palette* palette,
                                                const core::TextureText& words) {
        constexpr int kHalf = 32;
        const std::uint64_t own = palette != nullptr ? palette->fingerprint().value : 0;
        const std::uint64_t high =
            m_coder.codeNumber(static_cast<std::uint32_t>(own >> 32U), kHalf);
        const std::uint64_t low = m_coder.codeNumber(static_cast<std::uint32_t>(own), kHalf);
        const core::Fingerprint fingerprint{high << 32U | low};
        if (palette != nullptr) return *palette;
        return paletteFor(fingerprint, words.title, m_lookup);
    }

    BitCoder& m_coder;
    bool m_byFingerprint;
    const PaletteLookup& m_lookup;
    bool m_hasWords = false;
    std::vector<core::Size> m_sizes;
    std::vector<core::Palette> m_palettes;
    std::optional<GridModel> m_grids;
    std::optional<WordsModel> m_words;
};

}  // namespace

core::Result<std::vector<std::uint8_t>> packModelled(std::span<const core::Texture> textures,
                                                     bool byFingerprint) {
    using core::Error;
    using core::ErrorKind;
    std::size_t cells = 0;
    for (const core::Texture& texture : textures) cells += texture.grid().cellCount();
    if (textures.size() > kMostTexturesInSet || cells > kMostModelledCells) {
        return Error{ErrorKind::TooLarge,
                     "the set has " + std::to_string(textures.size()) + " textures with " +
                         std::to_string(cells) + " cells; one code holds at most " +
                         std::to_string(kMostTexturesInSet) + " textures and " +
                         std::to_string(kMostModelledCells) + " cells",
                     "make several sets of it"};
    }
    BitCoder coder;
    const PaletteLookup none;
    if (!SetCoding(coder, byFingerprint, none).run(textures)) {
        return Error{ErrorKind::DoesNotFit,
                     "the textures of the set are too noisy, or their words too long, to share one "
                     "code",
                     "share them one by one"};
    }
    std::vector<std::uint8_t> bytes = {kModelledForm};
    const std::vector<std::uint8_t> coded = coder.finish();
    bytes.insert(bytes.end(), coded.begin(), coded.end());
    return bytes;
}

core::Result<std::vector<core::Texture>> unpackModelled(std::span<const std::uint8_t> bytes,
                                                        const PaletteLookup& lookup,
                                                        std::size_t* decisions) {
    const std::span<const std::uint8_t> stream = bytes.subspan(1);
    BitCoder coder(stream);
    SetCoding coding(coder, false, lookup);
    core::Result<std::vector<core::Texture>> textures = coding.run({});
    if (decisions != nullptr) *decisions += coding.decisions();
    if (!textures) return textures;
    const std::vector<std::uint8_t> written = coder.finish();
    if (std::equal(written.begin(), written.end(), stream.begin(), stream.end())) return textures;
    return damaged();
}

}  // namespace pantile::codec
