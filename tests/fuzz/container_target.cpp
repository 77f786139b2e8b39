// Bytes from anywhere as unpackTexture takes them: container form 1.

#include <algorithm>
#include <cstdint>
#include <vector>

#include "codec/container.h"
#include "fuzz/known_palette.h"
#include "fuzz/targets.h"

namespace pantile::fuzz {
namespace {

constexpr std::size_t kGridSizeBytes = 2;  // Behind form and flags.
// Plain runs of two bytes a cell, and the cells.
constexpr std::size_t kContainerMostMemoryPerCell = 3;
// The words, and the vector of tags as it grows.
constexpr std::size_t kContainerMostMemoryPerByte = 64;
constexpr std::size_t kContainerMostMemoryBeside = 8192;

std::size_t statedCells(Bytes bytes) {
    if (bytes.size() < 2 + kGridSizeBytes) return 0;
    return (std::size_t{bytes[2]} + 1) * (std::size_t{bytes[3]} + 1);
}

/// The form that the bytes have: bits 0 and 1 of the flags (docs/code-format.md, section 3).
codec::PaletteForm paletteFormOf(Bytes bytes) {
    return (bytes[1] & 3U) == 1 ? codec::PaletteForm::ByFingerprint : codec::PaletteForm::Inside;
}

/// Whether `bytes` begin as the container of `texture` does, up to the method of the grid.
bool isHeadOf(const core::Texture& texture, codec::PaletteForm form, Bytes bytes) {
    constexpr auto kPlain = codec::MethodChoice::PlainRunsOnly;
    const codec::Container packed = codec::packTexture(texture, {kPlain, form});
    const codec::GridForm grid = codec::packGrid(texture.grid(), texture.palette().size(), kPlain);
    const Bytes head = Bytes(packed.bytes).first(packed.bytes.size() - grid.bytes.size() - 1);
    return head.size() < bytes.size() && std::equal(head.begin(), head.end(), bytes.begin());
}

}  // namespace

void tryContainer(Bytes bytes) {
    const codec::PaletteLookup lookup = knownPaletteOf;
    const MemoryWatch watch;
    const auto texture = codec::unpackTexture(bytes, lookup);
    require(watch.most() <= kContainerMostMemoryPerCell * statedCells(bytes) +
                                kContainerMostMemoryPerByte * bytes.size() +
                                kContainerMostMemoryBeside,
            "unpacking takes no more memory than the stated size needs");
    if (!texture) {
        requireDecodeError(texture.error());
        return;
    }
    const codec::PaletteForm form = paletteFormOf(bytes);
    require(isHeadOf(*texture, form, bytes), "what stands before the grid has one form");
    for (const auto method : {codec::MethodChoice::PlainRunsOnly, codec::MethodChoice::Shortest}) {
        const codec::Container packed = codec::packTexture(*texture, {method, form});
        const auto again = codec::unpackTexture(packed.bytes, lookup);
        require(again.has_value() && *again == *texture, "a texture comes back from its container");
    }
}

}  // namespace pantile::fuzz
