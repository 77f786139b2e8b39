#pragma once

// Words that are ordinary text to the library, and something else to a spreadsheet, a compiler, a
// browser, a forum, a shell or a file system: every way out is tried with each.

#include <string>
#include <vector>

namespace pantile::tests {

struct HostileText {
    std::string name;  ///< Letters and digits.
    std::string text;  ///< What a title may hold: no control or direction-changing characters.
};

/// Text that no reader would take for anything if it only knew its place: the sources are common
/// practice in trials of spreadsheets, HTML and C, and the pages named beside each way out.
inline const std::vector<HostileText>& hostileTexts() {
    static const auto repeated = [](const std::string& text, int times) {
        std::string all;
        for (int i = 0; i < times; ++i) all += text;
        return all;
    };
    static const std::vector<HostileText> texts = {
        {"Formula", "=1+1"},
        {"Plus", "+1+1"},
        {"Minus", "-2+3"},
        {"At", "@SUM(1)"},
        {"FormulaBehindComma", "Kelp,=1+1"},
        {"FormulaBehindSemicolon", "Kelp;@SUM(1)"},
        {"FormulaBehindQuote", "Kelp\",=1+1,\""},
        {"CommentEnd", "*/ int main(){} /*"},
        {"CommentInComment", "/* // kelp"},
        {"BackslashAtTheEnd", "kelp\\"},
        {"Trigraph", "kelp ?\?/"},
        {"Preprocessor", "#error kelp"},
        {"Element", "<img src=\"kelp.png\" onerror=\"x()\">"},
        {"ClosingElement", "</title><script>x()</script>"},
        {"Bold", "<b>Kelp</b>"},
        {"Entity", "a &lt; b &amp; c &#65;"},
        {"Ampersand", "Rope & net"},
        {"CdataEnd", "]]><x/>"},
        {"MarkdownLink", "[kelp](http://kelp.example)"},
        {"MarkdownPicture", "![kelp](http://kelp.example/x.png)"},
        {"MarkdownFence", "``` ~~~ `x`"},
        {"MarkdownMarks", "*a* _b_ ~~c~~ __d__ **e**"},
        {"MarkdownHeading", "# kelp"},
        {"MarkdownItem", "1. kelp"},
        {"MarkdownTable", "a|b|c"},
        {"Bbcode", "[/code][url=http://kelp.example]x[/url]"},
        {"Address", "http://kelp.example www.kelp.example mara@kelp.example"},
        {"Mention", "@everyone <@12> #12 :foam:"},
        {"Parent", "../../etc/kelp"},
        {"Root", "/etc/kelp"},
        {"Drive", "C:\\kelp\\..\\x"},
        {"Stream", "kelp.txt:x"},
        {"Device", "NUL"},
        {"NumberedDevice", "com1"},
        {"RaisedDevice", "COM\u00B9"},
        {"DeviceWithEnding", "aux.txt"},
        {"TrailingDots", "kelp..."},
        {"Dots", ".."},
        {"Option", "--replace"},
        {"Shell", "$(x) `x` ; x | x > x && x 'x' \"x\""},
        {"Format", "%s%n %1 %2 {0}"},
        {"JsonEnd", "\",\"id\":7,\"x\":[{"},
        {"Code", "0I211E1Ahg1or52vKRTZABXv147C3P7I"},
        {"Wide", "帆 🪸 ﬀ"},
        {"Combining", "a\u0301\u0323\u0307 o\u0308"},
        {"LongWide", repeated("🪸", 120)},
        {"LongNarrow", repeated("W", 120)},
    };
    return texts;
}

/// Sequences that act on a terminal or turn the order of letters: no way in lets them be.
inline const std::vector<HostileText>& refusedTexts() {
    static const std::vector<HostileText> texts = {
        {"Escape", "kelp\x1b[2J"},
        {"TitleOfTheTerminal", "kelp\x1b]0;x\x07"},
        {"OneByteEscape", "kelp\u009b31m"},
        {"Nul", std::string("kelp\0x", 6)},
        {"NewLine", "kelp\nx"},
        {"Return", "kelp\rx"},
        {"Tab", "kelp\t=1"},
        {"Backspace", "kelp\b\b"},
        {"Delete", "kelp\x7f"},
        {"NextLine", "kelp\u0085x"},
        {"LineSeparator", "kelp\u2028x"},
        {"RightToLeft", "kelp\u202egnp.exe"},
        {"Isolate", "kelp\u2066x\u2069"},
        {"Mark", "kelp\u200fx"},
        {"NotUtf8", "kelp\xff\xc0\xaf"},
    };
    return texts;
}

/// Whether `text` does nothing to a terminal but begin new lines: UTF-8 without control characters
/// (ECMA-48) and without characters that change the direction (UAX #9).
inline bool isHarmlessOnTerminal(const std::string& text) {
    for (std::size_t i = 0; i < text.size(); ++i) {
        const auto byte = static_cast<unsigned char>(text[i]);
        const auto next = static_cast<unsigned char>(i + 1 < text.size() ? text[i + 1] : 0);
        const auto third = static_cast<unsigned char>(i + 2 < text.size() ? text[i + 2] : 0);
        if (byte == 0x7F || (byte < 0x20 && byte != '\n')) return false;
        if (byte == 0xC2 && next < 0xA0) return false;
        if (byte == 0xE2 && next == 0x80 && (third == 0x8E || third == 0x8F)) return false;
        if (byte == 0xE2 && next == 0x80 && third >= 0xA8 && third <= 0xAE) return false;
        if (byte == 0xE2 && next == 0x81 && third >= 0xA6 && third <= 0xA9) return false;
    }
    return true;
}

}  // namespace pantile::tests
