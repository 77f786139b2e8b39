#include "codec/check_search.h"

#include <algorithm>
#include <cassert>
#include <utility>

#include "codec/armour.h"
#include "codec/checksum.h"

namespace pantile::codec {
namespace {

std::int64_t numberOf(SymbolSpan symbols) {
    // Six symbols at most, so that it cannot be too large.
    return static_cast<std::int64_t>(*readNumber(symbols));
}

}  // namespace

CheckSearch::CheckSearch(Symbols stream)
    : m_stream(std::move(stream)), m_checked(m_stream.size() - kCheckSymbols) {
    assert(m_stream.size() > kCheckSymbols);
    m_computed = crc32OfLetters(SymbolSpan(m_stream).first(m_checked));
    m_told = numberOf(SymbolSpan(m_stream).last(kCheckSymbols));
}

std::vector<CheckSearch::Effect> CheckSearch::effectsOf(const OpenLine& line) const {
    if (line.readings.empty()) return {};
    const std::size_t size = line.readings.front().symbols.size() - 1;
    const std::size_t inside = m_checked - std::min(m_checked, line.begin);
    const std::size_t checked = std::min(size, inside);  // The rest belongs to the check value.
    const SymbolSpan present = SymbolSpan(m_stream).subspan(line.begin, size);
    const CrcShift shift(m_checked - std::min(m_checked, line.begin + checked));
    const std::uint32_t presentCrc = crc32OfLetters(present.first(checked));
    const std::size_t behind = m_stream.size() - line.begin - size;  // Symbols of the check value.
    std::int64_t weight = 1;
    for (std::size_t i = 0; i < behind && checked < size; ++i) weight *= kBase;

    std::vector<Effect> effects;
    effects.reserve(line.readings.size());
    for (const LineReading& reading : line.readings) {
        const SymbolSpan data = SymbolSpan(reading.symbols).first(size);
        Effect effect;
        effect.computed = shift(presentCrc ^ crc32OfLetters(data.first(checked)));
        effect.told =
            weight * (numberOf(data.subspan(checked)) - numberOf(present.subspan(checked)));
        effects.push_back(effect);
    }
    return effects;
}

void CheckSearch::put(Symbols& stream, const OpenLine& line, const LineReading& reading) const {
    std::copy(reading.symbols.begin(), reading.symbols.end() - 1,
              stream.begin() + static_cast<std::ptrdiff_t>(line.begin));
}

void CheckSearch::tryOne(const OpenLine& line, const Found& found) const {
    const std::vector<Effect> effects = effectsOf(line);
    for (std::size_t i = 0; i < effects.size(); ++i) {
        if ((m_computed ^ effects[i].computed) != m_told + effects[i].told) continue;
        Symbols stream = m_stream;
        put(stream, line, line.readings[i]);
        found(stream, {line.readings[i]});
    }
}

void CheckSearch::tryTwo(const OpenLine& one, const OpenLine& two, const Found& found) const {
    const std::vector<Effect> effectsOfOne = effectsOf(one);
    const std::vector<Effect> effectsOfTwo = effectsOf(two);
    for (std::size_t i = 0; i < effectsOfOne.size(); ++i) {
        const std::uint32_t computed = m_computed ^ effectsOfOne[i].computed;
        const std::int64_t told = m_told + effectsOfOne[i].told;
        for (std::size_t j = 0; j < effectsOfTwo.size(); ++j) {
            if ((computed ^ effectsOfTwo[j].computed) != told + effectsOfTwo[j].told) continue;
            Symbols stream = m_stream;
            put(stream, one, one.readings[i]);
            put(stream, two, two.readings[j]);
            found(stream, {one.readings[i], two.readings[j]});
        }
    }
}

}  // namespace pantile::codec
