#pragma once

// Finds, among several readings of one or two lines of a code, those with which the check value of
// the whole fits.

#include <cstddef>
#include <cstdint>
#include <functional>
#include <vector>

#include "codec/base58.h"
#include "codec/line_readings.h"

namespace pantile::codec {

/// A line whose reading is not settled.
struct OpenLine {
    std::size_t begin = 0;  ///< Its first symbol in the stream.
    std::vector<LineReading> readings;
};

class CheckSearch {
public:
    /// `stream` is that of a whole code, check value included, with anything in the open lines.
    explicit CheckSearch(Symbols stream);

    /// Called with a stream whose check value fits, and the readings that made it.
    using Found = std::function<void(const Symbols& stream, const std::vector<LineReading>& used)>;

    /// Cost: the number of readings.
    void tryOne(const OpenLine& line, const Found& found) const;

    /// All pairs. The lines must be two. Cost: the product of the numbers of readings, a few
    /// instructions each, because the effect of each reading on the check value is known before.
    void tryTwo(const OpenLine& one, const OpenLine& two, const Found& found) const;

private:
    /// What a reading changes, compared with what stands in the stream.
    struct Effect {
        std::uint32_t computed = 0;  ///< In the CRC-32 of the symbols, by exclusive or.
        std::int64_t told = 0;       ///< In the check value that the last symbols tell, as a sum.
    };

    std::vector<Effect> effectsOf(const OpenLine& line) const;
    void put(Symbols& stream, const OpenLine& line, const LineReading& reading) const;

    Symbols m_stream;
    std::size_t m_checked;  ///< Symbols before the check value.
    std::uint32_t m_computed = 0;
    std::int64_t m_told = 0;
};

}  // namespace pantile::codec
