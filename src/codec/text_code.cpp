#include "codec/text_code.h"

#include <utility>

#include "codec/armour.h"

namespace pantile::codec {

namespace {

core::Result<TextCode> inArmour(Container container) {
    PANTILE_ASSIGN_OR_RETURN(std::string text, armoured(container.bytes));
    const std::size_t size = container.bytes.size();
    return TextCode{std::move(text), size, container.method, std::move(container.bytes)};
}

}  // namespace

core::Result<TextCode> encodeTextCode(const core::Texture& texture, const EncodeOptions& options) {
    return inArmour(packContents(texture, options));
}

core::Result<TextCode> encodeSetCode(std::span<const core::Texture> textures,
                                     const EncodeOptions& options) {
    PANTILE_ASSIGN_OR_RETURN(Container container, packSet(textures, options));
    return inArmour(std::move(container));
}

}  // namespace pantile::codec
