// A grid as CSV from anywhere: refused, or read, written, and read as the same.

#include <string>

#include "fuzz/targets.h"
#include "tasks/grid_csv.h"

namespace pantile::fuzz {

void tryCsv(Bytes input) {
    const std::string_view text = asText(input);
    const auto csv = tasks::parseGridCsv(text);
    if (!csv) {
        require(csv.error().kind == core::ErrorKind::InvalidInput ||
                    csv.error().kind == core::ErrorKind::TooLarge,
                "a text is refused as one that is no grid");
        require(!csv.error().message.empty() && !csv.error().hint.empty(),
                "an error says what is wrong and what to do");
        return;
    }
    if (!csv->palette) return;
    core::TextureText words;
    words.title = csv->title;
    const auto texture = core::Texture::create(csv->grid, *csv->palette, words);
    if (!texture) return;  // Cells beyond the palette.
    const std::string written = tasks::writeGridCsv(*texture);
    require(tasks::looksLikeGridCsv(written), "what is written is known as a grid");
    const auto again = tasks::parseGridCsv(written);
    require(again.has_value(), "what is written can be read");
    require(
        again->grid == csv->grid && again->palette == csv->palette && again->title == csv->title,
        "what was read and written is read as the same");
}

}  // namespace pantile::fuzz
