#include "tasks/code_posts.h"

#include <algorithm>
#include <array>
#include <utility>

#include "codec/armour.h"
#include "codec/harvest.h"
#include "codec/parts.h"
#include "core/text.h"

namespace pantile::tasks {

using core::Result;

namespace {

constexpr std::string_view kNothing = "\xE2\x80\x8B";  // U+200B, a blank without width.

/// How a place marks a block of letters that it must leave alone, and what its words must not hold
/// bare.
struct SyntaxRules {
    std::string_view lead;     ///< In front of the words, so that none of them begins a line.
    std::string_view open;     ///< Between the words and the code.
    std::string_view close;    ///< Behind the code.
    std::string_view escaped;  ///< Characters that get a backslash in front.
    std::string_view parted;   ///< Characters that get an invisible one behind.
};

const SyntaxRules& rulesOf(PostSyntax syntax) {
    // Sources: CommonMark 0.30, 2.4 (backslash escapes) and 4.5 (fences); for BBCode and for
    // mentions, which know no escapes, common practice.
    static constexpr SyntaxRules kPlain{"", ":\n", "", "", ""};
    static constexpr SyntaxRules kChat{"Texture ", ":\n```\n", "\n```", "\\`*_~|[]()<>#!:&",
                                       "@#:/."};
    static constexpr SyntaxRules kMarkdown{"Texture ", ":\n\n```\n", "\n```",
                                           "\\`*_~|[]()<>#!:&$^=", "@#:/."};
    static constexpr SyntaxRules kBbcode{"Texture ", ":\n[code]\n", "\n[/code]", "", "[@#:/.<"};
    switch (syntax) {
        case PostSyntax::Plain:
            return kPlain;
        case PostSyntax::Chat:
            return kChat;
        case PostSyntax::Markdown:
            return kMarkdown;
        case PostSyntax::Bbcode:
            return kBbcode;
    }
    return kPlain;
}

/// `words` so that the place shows them as they are, and makes nothing of them.
std::string escaped(std::string_view words, const SyntaxRules& rules) {
    std::string text;
    for (std::size_t at = 0; at < words.size(); ++at) {
        const char c = words[at];
        if (rules.escaped.find(c) != std::string_view::npos) text += '\\';
        text += c;
        // A blank or the end behind it keeps it from joining anything, and 1.0 is no address.
        const char next = at + 1 < words.size() ? words[at + 1] : ' ';
        const bool joins = next != ' ' && !(c == '.' && next >= '0' && next <= '9');
        if (joins && rules.parted.find(c) != std::string_view::npos) text += kNothing;
    }
    return text;
}

/// The first `most` characters, with "…" if more followed.
std::string shortened(std::string_view text, std::size_t most) {
    std::size_t at = 0;
    for (std::size_t count = 0; at < text.size() && count < most; ++count) {
        at += core::codePointAt(text, at).length;
    }
    return std::string(text.substr(0, at)) + (at < text.size() && most > 0 ? "…" : "");
}

bool looksLikeCode(const std::string& words) {
    const codec::Harvest harvest = codec::harvestCodes(words);
    return !harvest.found.empty() || !harvest.damaged.empty();
}

/// The same words made visible, and none that a reader of codes sees anything in.
Credit harmless(const Credit& credit) {
    const std::string instead = "(words like a code)";
    const auto cleaned = [&](const std::string& words) {
        const std::string visible = core::visibleText(words);
        return looksLikeCode(visible) ? instead : visible;
    };
    Credit clean{cleaned(credit.title), cleaned(credit.author), cleaned(credit.licence),
                 credit.textures};
    const bool together = looksLikeCode(clean.title + " " + clean.author + " " + clean.licence);
    return together ? Credit{instead, {}, {}} : clean;
}

/// Title, author and licence in one line, each of at most that many characters, and escaped.
std::string words(const Credit& credit, std::size_t most, const SyntaxRules& rules) {
    const auto part = [&](std::string_view lead, const std::string& text) {
        const std::string some = shortened(text, most);
        return some.empty() ? std::string() : std::string(lead) + escaped(some, rules);
    };
    const std::string title = part("", credit.title);
    return (title.empty() ? "(no title)" : title) + part(", by ", credit.author) +
           part(", ", credit.licence);
}

/// What stands around each code of a row of posts.
class Frame {
public:
    /// `most`: characters that it may take in all; its words are shortened until it does.
    Frame(const Credit& credit, const PostOptions& options) {
        if (!options.syntax) return;
        m_rules = &rulesOf(*options.syntax);
        // "3 textures" says what it is, and begins with a letter that no place makes anything of.
        if (credit.textures == 1) m_lead = m_rules->lead;
        constexpr std::size_t kMostWords = core::kMaxTitleCharacters;
        const std::size_t most = options.limit ? *options.limit / 2 : std::string::npos;
        for (std::size_t length = kMostWords; true; --length) {
            m_words = words(credit, length, *m_rules);
            if (length == 0 || this->length(codec::kMaxParts) <= most) return;
        }
    }

    /// Characters that it takes around a part of that many; around a whole code if it is one.
    std::size_t length(std::size_t parts) const { return postLength(around("", parts, parts)); }

    std::string around(std::string_view code, std::size_t number, std::size_t parts) const {
        if (m_rules == nullptr) return std::string(code);
        std::string text = std::string(m_lead) + m_words;
        if (parts > 1) text += ", " + codec::PartHead{number, parts, 0}.name();
        return text + std::string(m_rules->open) + std::string(code) + std::string(m_rules->close);
    }

private:
    const SyntaxRules* m_rules = nullptr;
    std::string_view m_lead;
    std::string m_words;
};

/// The fewest parts that fit; 1 if the whole code does.
std::size_t partsNeeded(const Frame& frame, std::size_t bytes, std::size_t limit) {
    const std::size_t whole = codec::CodeShape::of(bytes).characters();
    if (frame.length(1) + whole <= limit) return 1;
    for (std::size_t parts = 2; parts < std::min(codec::kMaxParts, bytes); ++parts) {
        if (frame.length(parts) + codec::longestPart(bytes, parts) <= limit) return parts;
    }
    return std::min(codec::kMaxParts, bytes);
}

}  // namespace

std::size_t postLength(std::string_view validUtf8) {
    const auto beyondTheBasicPlane = std::count_if(validUtf8.begin(), validUtf8.end(), [](char c) {
        return static_cast<unsigned char>(c) >= 0xF0;
    });
    return core::codePointCount(validUtf8) + static_cast<std::size_t>(beyondTheBasicPlane);
}

std::string creditWords(const Credit& credit) {
    return words(harmless(credit), core::kMaxTitleCharacters, rulesOf(PostSyntax::Plain));
}

Result<std::vector<std::string>> codePosts(std::span<const std::uint8_t> container,
                                           const Credit& credit, const PostOptions& options) {
    if (options.limit && *options.limit < kLeastPostLimit) {
        return core::Error{
            core::ErrorKind::Usage,
            "a post of " + std::to_string(*options.limit) + " characters is too short",
            "give a limit of " + std::to_string(kLeastPostLimit) + " or more"};
    }
    const Frame frame(options.syntax ? harmless(credit) : Credit{}, options);
    const std::size_t parts =
        options.limit ? partsNeeded(frame, container.size(), *options.limit) : 1;
    std::vector<std::string> codes;
    if (parts == 1) {
        PANTILE_ASSIGN_OR_RETURN(std::string whole, codec::armoured(container));
        codes.push_back(std::move(whole));
    } else {
        PANTILE_ASSIGN_OR_RETURN(codes, codec::armouredParts(container, parts));
    }
    for (std::size_t i = 0; i < codes.size(); ++i) {
        codes[i] = frame.around(codes[i], i + 1, parts);
    }
    return codes;
}

}  // namespace pantile::tasks
