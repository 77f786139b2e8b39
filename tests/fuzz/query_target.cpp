// A query from anywhere: refused with a column, or asked of a small library, and the same with
// blanks around it.

#include <string>

#include "catalogue/query_parser.h"
#include "catalogue/reader.h"
#include "catalogue/shelves.h"
#include "catalogue/writer.h"
#include "fuzz/empty_library.h"
#include "fuzz/targets.h"

namespace pantile::fuzz {
namespace {

core::Texture textureNamed(const std::string& title, int seed) {
    std::vector<core::PaletteIndex> cells;
    for (int i = 0; i < 16; ++i) cells.push_back(static_cast<core::PaletteIndex>(i * seed / 3 % 3));
    core::TextureText text;
    text.title = title;
    text.author = "Mara Quill";
    text.licence = "CC0-1.0";
    text.note = "laid left\nwet";
    text.tags = {"shore", "shore/wet"};
    return *core::Texture::create(
        *core::Grid::create(4, 4, std::move(cells)),
        *core::Palette::create({{27, 38, 49}, {184, 170, 120}, {90, 120, 80}}), std::move(text));
}

const catalogue::Library& stockedLibrary() {
    static const catalogue::Library library = [] {
        catalogue::Library stocked = emptyLibrary("stocked");
        int seed = 0;
        for (const char* title : {"Wet sand", "Kelp",
                                  "\xC3\x89"
                                  "b\xC3\xA8ne 100%",
                                  ""}) {
            const auto added = catalogue::addTexture(stocked, textureNamed(title, ++seed));
            require(added.has_value(), "a texture can be added");
            require(catalogue::putOnShelf(stocked, std::vector{added->id}, "Tidewrack").has_value(),
                    "a texture can be put on a shelf");
        }
        return stocked;
    }();
    return library;
}

bool asksForLikeness(std::string text) {
    for (char& letter : text)
        if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
    return text.find("like:") != std::string::npos;
}

}  // namespace

void tryQuery(Bytes input) {
    const std::string text(asText(input));
    const auto query = catalogue::parseQuery(text);
    if (!query) {
        require(query.error().kind == core::ErrorKind::InvalidInput ||
                    query.error().kind == core::ErrorKind::TooLarge,
                "a query is refused as one");
        require(!query.error().message.empty() && !query.error().hint.empty(),
                "an error says what is wrong and what to do");
        return;
    }
    const auto found = catalogue::findTextures(stockedLibrary(), *query);
    if (!found) {
        // `like:` needs to be told by the caller what it finds.
        require(found.error().kind == core::ErrorKind::Internal && asksForLikeness(text),
                "what is read as a query can be asked");
        return;
    }
    require(static_cast<std::size_t>(found->total) == found->rows.size(), "all rows are given");
    const auto again = catalogue::parseQuery(" " + text + " ");
    if (!again) return;  // One character more than fits, or a quote that takes the blank in.
    const auto same = catalogue::findTextures(stockedLibrary(), *again);
    require(same.has_value() && same->total == found->total, "blanks around a query mean nothing");
}

}  // namespace pantile::fuzz
