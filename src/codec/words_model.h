#pragma once

// Title, author, licence and tags letter by letter, foretold from the letters before and from what
// the textures before had there. Authority: docs/code-format.md, section 14.

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "codec/bit_coder.h"
#include "codec/bit_mixer.h"
#include "core/texture.h"

namespace pantile::codec {

/// Of all words of a code: bounds the time that a reader takes, whatever it is given. The longest
/// words of one texture have fewer.
inline constexpr std::size_t kMostLetters = 12000;

class WordsModel {
public:
    WordsModel();

    /// Puts down title, author, licence and tags of `text`, or reads them. Nothing if what is read
    /// breaks the rules of core::checkTextureText or has tags out of order, or if all words
    /// together need more than kMostLetters.
    std::optional<core::TextureText> code(BitCoder& coder, const core::TextureText& text);

    /// Bytes of words that were coded so far, those that end a text too.
    std::size_t letters() const { return m_letters; }

private:
    static constexpr std::size_t kFields = 4;
    using Mixer = BitMixer<6, 2>;

    std::optional<std::string> codeText(BitCoder& coder, std::size_t field, std::string_view text,
                                        std::size_t mostBytes);
    std::uint8_t codeLetter(BitCoder& coder, std::size_t field, std::string_view before,
                            std::uint8_t letter);

    Mixer m_mixer;
    std::size_t m_letters = 0;
    std::array<std::string, kFields> m_previous;  ///< The text before, in each field.
};

}  // namespace pantile::codec
