#include "fuzz/checking.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <malloc.h>
#include <new>

namespace {

// Targets have one thread.
std::size_t inUse = 0;
std::size_t mostInUse = 0;
std::size_t inUseAtStart = 0;

}  // namespace

void* operator new(std::size_t size, const std::nothrow_t&) noexcept {
    void* const memory = std::malloc(size);
    if (memory == nullptr) return nullptr;
    inUse += malloc_usable_size(memory);
    mostInUse = std::max(mostInUse, inUse);
    return memory;
}

void* operator new(std::size_t size) {
    void* const memory = operator new(size, std::nothrow);
    if (memory == nullptr) throw std::bad_alloc();
    return memory;
}

void operator delete(void* memory) noexcept {
    inUse -= malloc_usable_size(memory);
    std::free(memory);
}

void operator delete(void* memory, std::size_t) noexcept {
    operator delete(memory);
}

namespace pantile::fuzz {

void require(bool holds, const char* property) {
    if (holds) return;
    std::fprintf(stderr, "does not hold: %s\n", property);
    std::abort();
}

void requireDecodeError(const core::Error& error) {
    using core::ErrorKind;
    const bool expected =
        error.kind == ErrorKind::Corrupt || error.kind == ErrorKind::Unsupported ||
        error.kind == ErrorKind::NotFound || error.kind == ErrorKind::ChecksumMismatch;
    require(expected, "bytes from outside lead to an error that says so");
    require(!error.message.empty() && !error.hint.empty(),
            "an error says what is wrong and what to do");
}

MemoryWatch::MemoryWatch() {
    inUseAtStart = inUse;
    mostInUse = inUse;
}

std::size_t MemoryWatch::most() const {
    return mostInUse - inUseAtStart;
}

}  // namespace pantile::fuzz
