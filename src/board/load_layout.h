#pragma once

// The numbers of docs/load-format.md that writer and reader share. Stored on boards and cards:
// never change them within version 1.

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>

namespace pantile::board::layout {

inline constexpr std::array<std::uint8_t, 4> kMagic = {0x50, 0x54, 0x4C, 0x44};
inline constexpr std::uint8_t kVersion = 1;
inline constexpr std::size_t kHeaderBytes = 64;
inline constexpr std::size_t kEntryBytes = 96;
inline constexpr std::size_t kChecksumBytes = 4;
inline constexpr std::size_t kColourBytes = 3;
inline constexpr std::size_t kNameBytes = 32;
inline constexpr std::size_t kTitleBytes = 46;
inline constexpr int kMaxSlots = 255;
inline constexpr std::uint8_t kScriptEncoding = 2;
inline constexpr std::size_t kMaxScriptBytes = 262144;
inline constexpr std::size_t kMaxLoadBytes = std::size_t{1} << 30U;
inline constexpr int kMaxPictureSide = 128;

/// An entry's pen byte: the pen model, and bits for the rules.
inline constexpr std::uint8_t kPenModelBits = 15;
inline constexpr std::uint8_t kNoTurns = 16;
inline constexpr std::uint8_t kNoCovering = 32;
inline constexpr std::uint8_t kUndoneOutside = 64;
inline constexpr std::uint8_t kFills = 128;
inline constexpr std::size_t kFillBytes = 5;

inline constexpr int kMaxCornerReports = 8192;

/// Corner reports push this far: twice the width of the largest usual screens.
inline constexpr int kCornerCounts = 8192;

inline constexpr std::size_t kBaseBytes = kHeaderBytes + kChecksumBytes;

/// CRC-32 of RFC 1952.
std::uint32_t checksumOf(std::span<const std::uint8_t> bytes);

}  // namespace pantile::board::layout
