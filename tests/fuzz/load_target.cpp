// Loads from anywhere, with their checksums made right, so that all that stands behind these is
// looked at: by the reader, and by the player, which has to take what the reader takes.

#include <algorithm>
#include <vector>

#include "board/load_layout.h"
#include "board/load_reader.h"
#include "board/load_writer.h"
#include "fuzz/targets.h"
#include "player/load_player.h"

namespace pantile::fuzz {
namespace {

namespace layout = board::layout;

using Load = std::vector<std::uint8_t>;

std::size_t u32At(const Load& load, std::size_t at) {
    return load[at] | std::size_t{load[at + 1]} << 8U | std::size_t{load[at + 2]} << 16U |
           std::size_t{load[at + 3]} << 24U;
}

void putSum(Load& load, std::size_t at, std::size_t from, std::size_t count) {
    const std::uint32_t sum = layout::checksumOf(Bytes(load).subspan(from, count));
    for (unsigned i = 0; i < layout::kChecksumBytes; ++i) {
        load[at + i] = static_cast<std::uint8_t>(sum >> 8U * i);
    }
}

/// Shape: the load has a header at least.
void rightenSums(Load& load) {
    constexpr std::size_t kSlotsAt = 6;
    constexpr std::size_t kDataSumAt = 8;
    const std::size_t entrySumAt = layout::kEntryBytes - layout::kChecksumBytes;
    for (std::size_t i = 0; i < load[kSlotsAt]; ++i) {
        const std::size_t entry = layout::kHeaderBytes + layout::kEntryBytes * i;
        if (entry + layout::kEntryBytes > load.size()) break;
        const std::size_t offset = u32At(load, entry);
        const std::size_t length = u32At(load, entry + 4);
        if (offset <= load.size() && length <= load.size() - offset) {
            putSum(load, entry + kDataSumAt, offset, length);
        }
        putSum(load, entry + entrySumAt, entry, entrySumAt);
    }
    const std::size_t headerSumAt = layout::kHeaderBytes - layout::kChecksumBytes;
    putSum(load, headerSumAt, 0, headerSumAt);
    const std::size_t body = load.size() - layout::kChecksumBytes;
    putSum(load, body, 0, body);
}

std::uint8_t readLoadBytes(void* context, std::uint32_t offset, std::uint8_t* buffer,
                           std::uint8_t length) {
    const Load& load = *static_cast<Load*>(context);
    if (offset > load.size() || length > load.size() - offset) return 0;
    std::copy_n(load.begin() + offset, length, buffer);
    return 1;
}

/// Whether the player would draw each slot.
bool playerTakes(Load& load) {
    load_player player = {};
    if (load_player_open(&player, readLoadBytes, &load) != LOAD_PLAYER_OK) return false;
    for (std::uint8_t slot = 0; slot < load_player_slots(&player); ++slot) {
        if (load_player_choose(&player, slot) != LOAD_PLAYER_OK) return false;
    }
    return true;
}

}  // namespace

void tryLoad(Bytes input) {
    // A run may take two bits of a script, and is a stroke with a path of its own.
    constexpr std::size_t kMemoryPerByte = 1000;
    constexpr std::size_t kMemoryAtLeast = 1U << 20U;
    Load load(input.begin(), input.end());
    if (load.size() >= layout::kBaseBytes) rightenSums(load);
    const MemoryWatch watch;
    const auto read = board::readLoad(load);
    require(watch.most() <= kMemoryAtLeast + kMemoryPerByte * load.size(),
            "memory is bounded by the load's size");
    const bool taken = playerTakes(load);
    if (!read) return requireDecodeError(read.error());
    require(taken, "the player takes what the reader takes");
}

}  // namespace pantile::fuzz
