#include "catalogue/json_text.h"

namespace pantile::catalogue {
namespace {

void appendEscape(std::string& out, char control) {
    constexpr std::string_view kHex = "0123456789abcdef";
    const auto byte = static_cast<unsigned char>(control);
    out += "\\u00";
    out += kHex[byte >> 4U];
    out += kHex[byte & 15U];
}

}  // namespace

void appendJsonText(std::string& out, std::string_view text) {
    constexpr unsigned char kFirstPrintable = 0x20;
    out += '"';
    for (const char c : text) {
        if (c == '"' || c == '\\') {
            out += '\\';
            out += c;
        } else if (c == '\n') {
            out += "\\n";
        } else if (static_cast<unsigned char>(c) < kFirstPrintable) {
            appendEscape(out, c);
        } else {
            out += c;
        }
    }
    out += '"';
}

}  // namespace pantile::catalogue
