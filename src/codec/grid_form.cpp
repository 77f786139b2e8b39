#include "codec/grid_form.h"

#include <cassert>
#include <memory>
#include <optional>
#include <string>

#include <zlib.h>

#include "codec/plain_runs.h"
#include "core/palette.h"
#include "core/range_check.h"

namespace pantile::codec {
namespace {

constexpr int kRawDeflate = -15;  // RFC 1951 with its largest window and no header around it.
constexpr int kMostMemory = 9;

struct DeflateEnder {
    void operator()(z_stream* stream) const {
        deflateEnd(stream);
        delete stream;
    }
};

using Deflater = std::unique_ptr<z_stream, DeflateEnder>;

Deflater makeDeflater() {
    auto stream = std::make_unique<z_stream>();
    const int started = deflateInit2(stream.get(), Z_BEST_COMPRESSION, Z_DEFLATED, kRawDeflate,
                                     kMostMemory, Z_DEFAULT_STRATEGY);
    return Deflater(started == Z_OK ? stream.release() : nullptr);
}

std::optional<std::vector<std::uint8_t>> deflated(std::span<const std::uint8_t> bytes) {
    // Its quarter of a megabyte takes longer to get than a small grid takes to pack.
    thread_local const Deflater kDeflater = makeDeflater();
    if (!kDeflater || deflateReset(kDeflater.get()) != Z_OK) return std::nullopt;
    z_stream& stream = *kDeflater;
    const auto size = static_cast<uInt>(bytes.size());
    std::vector<std::uint8_t> packed(deflateBound(&stream, size));
    stream.next_in = bytes.data();
    stream.avail_in = size;
    stream.next_out = packed.data();
    stream.avail_out = static_cast<uInt>(packed.size());
    if (deflate(&stream, Z_FINISH) != Z_STREAM_END) return std::nullopt;
    packed.resize(packed.size() - stream.avail_out);
    return packed;
}

/// Nothing if `bytes` are no whole deflate stream, something follows it, or it holds above `most`.
std::optional<std::vector<std::uint8_t>> inflated(std::span<const std::uint8_t> bytes,
                                                  std::size_t most) {
    z_stream stream = {};
    if (inflateInit2(&stream, kRawDeflate) != Z_OK) return std::nullopt;
    const std::unique_ptr<z_stream, int (*)(z_stream*)> closer(&stream, inflateEnd);
    std::vector<std::uint8_t> unpacked(most);
    stream.next_in = bytes.data();
    stream.avail_in = static_cast<uInt>(bytes.size());
    stream.next_out = unpacked.data();
    stream.avail_out = static_cast<uInt>(unpacked.size());
    if (inflate(&stream, Z_FINISH) != Z_STREAM_END || stream.avail_in != 0) return std::nullopt;
    unpacked.resize(most - stream.avail_out);
    return unpacked;
}

core::Result<core::Grid> unpackDeflatedRuns(std::span<const std::uint8_t> bytes, core::Size size,
                                            int paletteSize) {
    PANTILE_RETURN_IF_ERROR(core::checkGridSize(size.width, size.height));
    PANTILE_RETURN_IF_ERROR(core::checkRange("the number of colours", paletteSize,
                                             core::kMinPaletteColours, core::kMaxPaletteColours));
    const auto cells = static_cast<std::size_t>(size.width) * static_cast<std::size_t>(size.height);
    const std::size_t most = mostPlainRunsBytes(cells, paletteSize);
    // Deflating is chosen only where it makes the bytes fewer.
    const std::optional<std::vector<std::uint8_t>> runs =
        bytes.size() < most ? inflated(bytes, most) : std::nullopt;
    if (!runs) {
        return core::Error{core::ErrorKind::Corrupt,
                           "the deflated runs (" + std::to_string(bytes.size()) +
                               " bytes) are damaged, or hold more than " + std::to_string(cells) +
                               " cells",
                           "ask for the texture again"};
    }
    return unpackPlainRuns(*runs, size, paletteSize);
}

}  // namespace

GridForm packGrid(const core::Grid& grid, int paletteSize, MethodChoice choice) {
    GridForm plain{Method::PlainRuns, packPlainRuns(grid, paletteSize)};
    if (choice == MethodChoice::PlainRunsOnly) return plain;
    std::optional<std::vector<std::uint8_t>> shorter = deflated(plain.bytes);
    if (!shorter || shorter->size() >= plain.bytes.size()) return plain;
    return {Method::DeflatedRuns, std::move(*shorter)};
}

core::Result<core::Grid> unpackGrid(Method method, std::span<const std::uint8_t> bytes,
                                    core::Size size, int paletteSize) {
    switch (method) {
        case Method::PlainRuns:
            return unpackPlainRuns(bytes, size, paletteSize);
        case Method::DeflatedRuns:
            return unpackDeflatedRuns(bytes, size, paletteSize);
        case Method::ModelledRuns:
            break;
    }
    return core::Error{core::ErrorKind::Unsupported,
                       "made by a newer Pantile: its grid is packed by method " +
                           std::to_string(static_cast<int>(method)) + ", which is not known here",
                       "get a newer Pantile, or ask for a code in plain runs"};
}

std::string_view methodName(Method method) {
    switch (method) {
        case Method::PlainRuns:
            return "plain runs";
        case Method::DeflatedRuns:
            return "deflated runs";
        case Method::ModelledRuns:
            return "modelled runs";
    }
    return "unknown";
}

}  // namespace pantile::codec
