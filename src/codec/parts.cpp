#include "codec/parts.h"

#include <algorithm>
#include <array>
#include <cassert>

#include "codec/armour.h"
#include "codec/checksum.h"
#include "codec/varint.h"

namespace pantile::codec {
namespace {

using Bytes = std::vector<std::uint8_t>;
using ByteSpan = std::span<const std::uint8_t>;

constexpr std::size_t kCheckBytes = 4;

core::Error corruptParts(std::string message) {
    return {core::ErrorKind::Corrupt, std::move(message), "ask for all parts of the code again"};
}

Bytes headBytes(const PartHead& head) {
    Bytes bytes;
    appendVarint(bytes, static_cast<std::uint32_t>(head.number - 1));
    appendVarint(bytes, static_cast<std::uint32_t>(head.parts - 1));
    for (std::size_t i = kCheckBytes; i > 0; --i) {
        bytes.push_back(static_cast<std::uint8_t>(head.whole >> (8 * (i - 1))));
    }
    return bytes;
}

std::optional<PartHead> takeHead(ByteSpan& bytes) {
    const std::optional<std::uint32_t> before = takeVarint(bytes);
    const std::optional<std::uint32_t> further = before ? takeVarint(bytes) : std::nullopt;
    const bool right = further && *further >= 1 && *further < kMaxParts && *before <= *further;
    if (!right || bytes.size() < kCheckBytes) return std::nullopt;
    PartHead head{*before + std::size_t{1}, *further + std::size_t{1}, 0};
    for (const std::uint8_t byte : bytes.first(kCheckBytes)) head.whole = head.whole << 8U | byte;
    bytes = bytes.subspan(kCheckBytes);
    return head;
}

/// The slices are as equal as can be, so that number and parts alone say how one was cut.
std::size_t sliceBytes(std::size_t container, std::size_t parts, std::size_t number) {
    return container / parts + (number <= container % parts ? 1 : 0);
}

}  // namespace

std::string PartHead::name() const {
    return "part " + std::to_string(number) + " of " + std::to_string(parts);
}

core::Result<std::vector<std::string>> armouredParts(ByteSpan container, std::size_t parts) {
    if (container.size() > kMaxArmouredBytes) {
        return core::Error{core::ErrorKind::TooLarge,
                           "a code holds at most " + std::to_string(kMaxArmouredBytes) +
                               " bytes, also in parts, not " + std::to_string(container.size()),
                           "share fewer or smaller textures at once"};
    }
    if (parts < 2 || parts > kMaxParts || parts > container.size()) {
        return core::Error{core::ErrorKind::InvalidInput,
                           "a code of " + std::to_string(container.size()) +
                               " bytes cannot be cut into " + std::to_string(parts) + " parts",
                           "take 2 to " + std::to_string(kMaxParts) + " parts"};
    }
    PartHead head{1, parts, crc32Of(container)};
    std::vector<std::string> codes;
    ByteSpan rest = container;
    for (; head.number <= parts; ++head.number) {
        const ByteSpan slice = rest.first(sliceBytes(container.size(), parts, head.number));
        rest = rest.subspan(slice.size());
        Bytes bytes = headBytes(head);
        bytes.insert(bytes.end(), slice.begin(), slice.end());
        PANTILE_ASSIGN_OR_RETURN(std::string code, armoured(bytes, ArmourForm::Part));
        codes.push_back(std::move(code));
    }
    return codes;
}

std::size_t longestPart(std::size_t containerBytes, std::size_t parts) {
    assert(parts > 0);
    const std::size_t head = headBytes({parts, parts, 0}).size();
    return CodeShape::of(head + sliceBytes(containerBytes, parts, 1)).characters();
}

core::Result<Part> readPart(ByteSpan bytes) {
    const std::optional<PartHead> head = takeHead(bytes);
    if (!head) return corruptParts("the head of a part is malformed");
    if (bytes.empty()) return corruptParts(head->name() + " of the code is empty");
    return Part{*head, Bytes(bytes.begin(), bytes.end())};
}

std::optional<PartHead> readPartHead(SymbolSpan firstLine) {
    constexpr std::size_t kHeadBytes = 8;  // Two varints and the check value take at most that.
    const std::size_t symbols = blockSymbols(kHeadBytes);
    if (firstLine.size() < kHeadSymbols + symbols) return std::nullopt;
    if (firstLine.front() != static_cast<std::uint8_t>(ArmourForm::Part)) return std::nullopt;
    if (toldBytes(firstLine) < kHeadBytes) return std::nullopt;
    const auto block = readBlocks(firstLine.subspan(kHeadSymbols, symbols), kHeadBytes);
    if (!block) return std::nullopt;
    ByteSpan bytes = *block;
    return takeHead(bytes);
}

core::Result<Bytes> joinParts(const PartHead& head, const std::map<std::size_t, Bytes>& slices) {
    std::size_t size = 0;
    for (const auto& [number, slice] : slices) size += slice.size();
    if (size > kMaxArmouredBytes) {
        return core::Error{core::ErrorKind::TooLarge,
                           "the parts of the code hold " + std::to_string(size) +
                               " bytes, and a code holds at most " +
                               std::to_string(kMaxArmouredBytes),
                           ""};
    }
    Bytes container;
    container.reserve(size);
    for (const auto& [number, slice] : slices) {
        if (slice.size() != sliceBytes(size, head.parts, number)) {
            return corruptParts("the parts of the code were not cut evenly");
        }
        container.insert(container.end(), slice.begin(), slice.end());
    }
    if (crc32Of(ByteSpan(container)) == head.whole) return container;
    return corruptParts("every part of the code checks, but together they do not");
}

}  // namespace pantile::codec
