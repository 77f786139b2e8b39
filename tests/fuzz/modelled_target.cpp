// Bytes from anywhere as modelled runs, one texture or a set: container form 2. The input stands
// behind the form's number.

#include <cstdint>
#include <optional>
#include <vector>

#include "codec/modelled_form.h"
#include "fuzz/known_palette.h"
#include "fuzz/targets.h"

namespace pantile::fuzz {
namespace {

// Tables of what was learned take 128 bytes a cell, of which a set has at most 32768, and 220 KB;
// then cells, words and palettes.
constexpr std::size_t kModelledMostMemory = std::size_t{6} << 20U;

}  // namespace

void tryModelled(Bytes input) {
    std::vector<std::uint8_t> bytes = {codec::kModelledForm};
    bytes.insert(bytes.end(), input.begin(), input.end());
    const codec::PaletteLookup lookup = knownPaletteOf;
    const MemoryWatch watch;
    const auto textures = codec::unpackModelled(bytes, lookup);
    require(watch.most() <= kModelledMostMemory,
            "unpacking takes no more memory than the largest set needs");
    if (!textures) {
        requireDecodeError(textures.error());
        return;
    }
    require(!textures->empty() && textures->size() <= codec::kMostTexturesInSet,
            "a set has as many textures as it may have");
    const auto packed = codec::packModelled(*textures, false);
    if (!packed) return;  // A set that names its palettes may be too noisy with them inside.
    const auto again = codec::unpackModelled(*packed, lookup);
    require(again.has_value() && *again == *textures, "a set comes back from its modelled runs");
}

}  // namespace pantile::fuzz
