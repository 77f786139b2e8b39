#include "core/palette.h"

namespace pantile::core {

Result<Palette> Palette::create(std::vector<Rgb8> colours,
                                std::optional<PaletteIndex> transparent) {
    const auto count = colours.size();
    if (count < kMinPaletteColours || count > kMaxPaletteColours) {
        return Error{ErrorKind::InvalidInput,
                     "a palette has 2 to 256 colours, not " + std::to_string(count),
                     "add or remove colours"};
    }
    if (transparent && *transparent >= count) {
        return Error{ErrorKind::InvalidInput,
                     "transparent index " + std::to_string(*transparent) +
                         " is outside a palette of " + std::to_string(count) + " colours",
                     "choose an index from 0 to " + std::to_string(count - 1)};
    }
    return Palette(std::move(colours), transparent);
}

Fingerprint Palette::fingerprint() const {
    FingerprintBuilder builder;
    builder.addByte(static_cast<std::uint8_t>(m_colours.size() - 1));
    builder.addByte(m_transparent ? 1 : 0);
    builder.addByte(m_transparent.value_or(0));
    for (const Rgb8 colour : m_colours) {
        builder.addByte(colour.r);
        builder.addByte(colour.g);
        builder.addByte(colour.b);
    }
    return builder.finish();
}

}  // namespace pantile::core
