#include "codec/text_code.h"

#include <utility>

#include "codec/armour.h"

namespace pantile::codec {

core::Result<TextCode> encodeTextCode(const core::Texture& texture, const EncodeOptions& options) {
    const Container container = packContents(texture, options);
    PANTILE_ASSIGN_OR_RETURN(std::string text, armoured(container.bytes));
    return TextCode{std::move(text), container.bytes.size(), container.method};
}

}  // namespace pantile::codec
