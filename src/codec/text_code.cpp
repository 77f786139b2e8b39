#include "codec/text_code.h"

#include <utility>

#include "codec/armour.h"

namespace pantile::codec {

core::Result<TextCode> encodeTextCode(const core::Texture& texture, const EncodeOptions& options) {
    Container container = packContents(texture, options);
    PANTILE_ASSIGN_OR_RETURN(std::string text, armoured(container.bytes));
    const std::size_t size = container.bytes.size();
    return TextCode{std::move(text), size, container.method, std::move(container.bytes)};
}

}  // namespace pantile::codec
