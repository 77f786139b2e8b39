#include "codec/contents.h"

#include <optional>
#include <string>
#include <utility>

#include "codec/modelled_form.h"

namespace pantile::codec {

Container packContents(const core::Texture& texture, const EncodeOptions& options) {
    Container container = packTexture(texture, options);
    if (options.method == MethodChoice::PlainRunsOnly) return container;
    std::optional<std::vector<std::uint8_t>> modelled =
        packModelled({&texture, 1}, options.palette == PaletteForm::ByFingerprint);
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
    std::size_t cells = 0;
    for (const core::Texture& texture : textures) cells += texture.grid().cellCount();
    if (textures.size() > kMostTexturesInSet || cells > kMostModelledCells) {
        return Error{ErrorKind::TooLarge,
                     "the set has " + std::to_string(textures.size()) + " textures with " +
                         std::to_string(cells) + " cells; one code holds at most " +
                         std::to_string(kMostTexturesInSet) + " textures and " +
                         std::to_string(kMostModelledCells) + " cells",
                     "make several sets of it"};
    }
    std::optional<std::vector<std::uint8_t>> modelled =
        packModelled(textures, options.palette == PaletteForm::ByFingerprint);
    if (modelled) return Container{Method::ModelledRuns, std::move(*modelled)};
    return Error{ErrorKind::DoesNotFit, "the textures of the set are too noisy to share one code",
                 "share them one by one"};
}

core::Result<std::vector<core::Texture>> unpackTextures(std::span<const std::uint8_t> bytes,
                                                        const PaletteLookup& lookup) {
    if (!bytes.empty() && bytes.front() == kModelledForm) return unpackModelled(bytes, lookup);
    PANTILE_ASSIGN_OR_RETURN(core::Texture texture, unpackTexture(bytes, lookup));
    return std::vector<core::Texture>{std::move(texture)};
}

}  // namespace pantile::codec
