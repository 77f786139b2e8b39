#include "codec/words_model.h"

#include <algorithm>
#include <utility>

namespace pantile::codec {
namespace {

constexpr int kTableBits = 12;
constexpr std::size_t kMostUtf8Bytes = 4;
constexpr std::size_t kTagField = 3;

// The model reads this before the first letter, so that it knows letters and licences. Part of the
// format.
constexpr std::string_view kPrimer =
    "the tide wrack and lighthouse stone wall wood plank sand water rope slate in a of small large "
    "dark light blue green red old wet Rock Kelp Shingle Brass Tarred Sailcloth Foam Lamp Net "
    "CC0-1.0 CC BY 4.0 CC BY-SA 4.0 public domain all rights reserved";

template <class StartWeights>
StartWeights evenStart(int hundredths, std::array<std::size_t, 2> choices) {
    StartWeights start;
    for (std::size_t i = 0; i < choices.size(); ++i) {
        typename StartWeights::value_type::value_type weights;
        weights.fill(static_cast<Weight>(kWeightOne * hundredths / 100));
        weights.back() = 0;
        start[i].assign(choices[i], weights);
    }
    return start;
}

std::uint64_t byteBefore(std::string_view text, std::size_t back) {
    return text.size() < back ? 0 : static_cast<std::uint8_t>(text[text.size() - back]);
}

/// The byte that follows in `previous` if it began as `before` did; 256 if it did not.
std::uint64_t expectedByte(std::string_view previous, std::string_view before) {
    if (previous.substr(0, before.size()) != before) return 256;
    return previous.size() == before.size() ? 0
                                            : static_cast<std::uint8_t>(previous[before.size()]);
}

}  // namespace

WordsModel::WordsModel() : m_mixer(kTableBits, evenStart<Mixer::StartWeights>(35, {256, 3})) {
    BitCoder unused;
    std::string before;
    for (const char letter : kPrimer) {
        codeLetter(unused, 0, before, static_cast<std::uint8_t>(letter));
        before.push_back(letter);
    }
}

std::uint8_t WordsModel::codeLetter(BitCoder& coder, std::size_t field, std::string_view before,
                                    std::uint8_t letter) {
    const std::uint64_t expected = expectedByte(m_previous[field], before);
    const std::uint64_t one = byteBefore(before, 1);
    const std::uint64_t two = one << 8U | byteBefore(before, 2);
    const std::uint64_t three = two << 8U | byteBefore(before, 3);
    std::uint64_t node = 1;  // The bits so far, behind a 1.
    for (int bit = 7; bit >= 0; --bit) {
        const bool foretold =
            expected < 256 && (expected | 256U) >> static_cast<unsigned>(bit + 1) == node;
        const std::uint64_t next = foretold ? 1 + (expected >> static_cast<unsigned>(bit) & 1U) : 0;
        Mixer::Question question;
        question.contexts = {node,
                             field << 8U | node,
                             one << 8U | node,
                             two << 8U | node,
                             three << 8U | node,
                             next << 8U | std::min<std::size_t>(before.size(), 15)};
        question.choices = {static_cast<std::size_t>(node), static_cast<std::size_t>(next)};
        const bool set = m_mixer.code(
            coder, (unsigned{letter} >> static_cast<unsigned>(bit) & 1U) != 0, question);
        node = node << 1U | (set ? 1U : 0U);
    }
    return static_cast<std::uint8_t>(node & 0xFFU);
}

std::optional<std::string> WordsModel::codeText(BitCoder& coder, std::size_t field,
                                                std::string_view text, std::size_t mostBytes) {
    std::string coded;
    while (true) {
        if (m_letters == kMostLetters) return std::nullopt;
        ++m_letters;
        const std::uint8_t letter =
            coded.size() < text.size() ? static_cast<std::uint8_t>(text[coded.size()]) : 0;
        const std::uint8_t got = codeLetter(coder, field, coded, letter);
        if (got == 0) break;
        if (coded.size() == mostBytes) return std::nullopt;
        coded.push_back(static_cast<char>(got));
    }
    m_previous[field] = coded;
    return coded;
}

std::optional<core::TextureText> WordsModel::code(BitCoder& coder, const core::TextureText& text) {
    core::TextureText coded;
    const std::array<std::pair<std::string core::TextureText::*, std::size_t>, 3> fields = {
        {{&core::TextureText::title, core::kMaxTitleCharacters},
         {&core::TextureText::author, core::kMaxAuthorCharacters},
         {&core::TextureText::licence, core::kMaxLicenceCharacters}}};
    for (std::size_t i = 0; i < fields.size(); ++i) {
        const auto [field, mostCharacters] = fields[i];
        std::optional<std::string> read =
            codeText(coder, i, text.*field, mostCharacters * kMostUtf8Bytes);
        if (!read) return std::nullopt;
        coded.*field = std::move(*read);
    }
    const std::uint32_t tags =
        coder.codeCount(static_cast<std::uint32_t>(text.tags.size()) + 1) - 1;
    if (tags > core::kMaxTags) return std::nullopt;
    for (std::size_t i = 0; i < tags; ++i) {
        std::optional<std::string> tag =
            codeText(coder, kTagField, coder.isReading() ? std::string_view() : text.tags[i],
                     core::kMaxTagCharacters * kMostUtf8Bytes);
        const bool inOrder = tag && (coded.tags.empty() || *tag > coded.tags.back());
        if (!inOrder) return std::nullopt;
        coded.tags.push_back(std::move(*tag));
    }
    if (!core::checkTextureText(coded)) return std::nullopt;
    return coded;
}

}  // namespace pantile::codec
