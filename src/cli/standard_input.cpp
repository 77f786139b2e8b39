#include "cli/standard_input.h"

#include <array>
#include <cstdint>
#include <istream>

namespace pantile::cli {

using core::Error;
using core::ErrorKind;
using core::Result;

namespace {

constexpr std::uint64_t kMaxStandardInputBytes = std::uint64_t{64} << 20U;

}  // namespace

Result<std::string> readStandardInput(std::istream& in) {
    std::string bytes;
    std::array<char, 65536> block{};
    while (in.read(block.data(), block.size()) || in.gcount() > 0) {
        bytes.append(block.data(), static_cast<std::size_t>(in.gcount()));
        if (bytes.size() > kMaxStandardInputBytes) {
            return Error{ErrorKind::TooLarge, "standard input gives more than 64 MiB",
                         "save it as files and name those"};
        }
    }
    return bytes;
}

}  // namespace pantile::cli
