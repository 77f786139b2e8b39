#include "codec/palette_lookup.h"

#include <utility>

#include "core/text.h"

namespace pantile::codec {

core::Result<core::Palette> paletteFor(core::Fingerprint fingerprint, const std::string& title,
                                       const PaletteLookup& lookup) {
    std::optional<core::Palette> palette = lookup ? lookup(fingerprint) : std::nullopt;
    if (palette && palette->fingerprint() == fingerprint) return std::move(*palette);
    const std::string name = title.empty() ? "it" : "'" + core::excerpt(title) + "'";
    return core::Error{core::ErrorKind::NotFound,
                       name + " needs the palette " + core::toHex(fingerprint) +
                           ", which is not in the code and not known here",
                       "ask for that palette, or for a code with the palette inside"};
}

}  // namespace pantile::codec
