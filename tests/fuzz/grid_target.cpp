// Packed cells from anywhere as unpackGrid takes them. The input begins with the method's number,
// width
// - 1, height - 1 and colours - 1, as in a container; every number of a method is tried, known or
// not.

#include <algorithm>
#include <cstdint>
#include <vector>

#include "codec/grid_form.h"
#include "fuzz/targets.h"

namespace pantile::fuzz {
namespace {

constexpr std::size_t kGridHeadBytes = 4;
// Plain runs of two bytes a cell, and the cells.
constexpr std::size_t kGridMostMemoryPerCell = 3;
constexpr std::size_t kGridMostMemoryBeside = 1024;

}  // namespace

void tryGrid(Bytes input) {
    if (input.size() < kGridHeadBytes) return;
    const auto method = static_cast<codec::Method>(input[0]);
    const core::Size size{input[1] + 1, input[2] + 1};
    const int colours = input[3] + 1;
    const Bytes bytes = input.subspan(kGridHeadBytes);
    const auto cells = static_cast<std::size_t>(size.width) * static_cast<std::size_t>(size.height);
    const MemoryWatch watch;
    const auto grid = codec::unpackGrid(method, bytes, size, colours);
    require(watch.most() <= kGridMostMemoryPerCell * cells + kGridMostMemoryBeside,
            "unpacking takes no more memory than the size needs");
    if (!grid) {
        if (colours > 1) requireDecodeError(grid.error());
        return;
    }
    require(grid->size() == size && grid->largestIndex() < colours,
            "a grid has the size that was asked for, and colours of its palette");
    for (const auto choice : {codec::MethodChoice::PlainRunsOnly, codec::MethodChoice::Shortest}) {
        const codec::GridForm form = codec::packGrid(*grid, colours, choice);
        const auto again = codec::unpackGrid(form.method, form.bytes, size, colours);
        require(again.has_value() && *again == *grid, "a grid comes back from its packed form");
        if (method == codec::Method::PlainRuns && form.method == method) {
            require(std::equal(bytes.begin(), bytes.end(), form.bytes.begin(), form.bytes.end()),
                    "a grid has one form in plain runs");
        }
    }
}

}  // namespace pantile::fuzz
