#include "codec/contents.h"

#include <utility>

#include "codec/modelled_form.h"

namespace pantile::codec {

Container packContents(const core::Texture& texture, const EncodeOptions& options) {
    Container container = packTexture(texture, options);
    if (options.method == MethodChoice::PlainRunsOnly) return container;
    auto modelled = packModelled({&texture, 1}, options.palette == PaletteForm::ByFingerprint);
    if (!modelled || modelled->size() >= container.bytes.size()) return container;
    return {Method::ModelledRuns, std::move(*modelled)};
}

core::Result<Container> packSet(std::span<const core::Texture> textures,
                                const EncodeOptions& options) {
    using core::Error;
    using core::ErrorKind;
    if (textures.empty()) {
        return Error{ErrorKind::InvalidInput, "a set needs at least one texture",
                     "choose the textures of the set"};
    }
    if (options.method == MethodChoice::PlainRunsOnly) {
        return Error{ErrorKind::Unsupported, "plain runs hold one texture, not a set",
                     "share the textures one by one, or the set without plain runs"};
    }
    PANTILE_ASSIGN_OR_RETURN(std::vector<std::uint8_t> bytes,
                             packModelled(textures, options.palette == PaletteForm::ByFingerprint));
    return Container{Method::ModelledRuns, std::move(bytes)};
}

core::Result<std::vector<core::Texture>> unpackTextures(std::span<const std::uint8_t> bytes,
                                                        const PaletteLookup& lookup,
                                                        std::size_t* decisions) {
    if (!bytes.empty() && bytes.front() == kModelledForm) {
        return unpackModelled(bytes, lookup, decisions);
    }
    PANTILE_ASSIGN_OR_RETURN(core::Texture texture, unpackTexture(bytes, lookup));
    return std::vector<core::Texture>{std::move(texture)};
}

}  // namespace pantile::codec
