// What libFuzzer calls with each input, for the target that PANTILE_FUZZ_TARGET names: one program
// for all of them, for libFuzzer keeps the command line to itself.

#include <cstdlib>

#include "fuzz/targets.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const pantile::fuzz::Target target = [] {
        const char* const name = std::getenv("PANTILE_FUZZ_TARGET");
        return pantile::fuzz::targetNamed(name == nullptr ? "" : name);
    }();
    target({data, size});
    return 0;
}
