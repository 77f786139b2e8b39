#include "catalogue/row_changes.h"

#include <limits>

#include "catalogue/recorded_tables.h"
#include "catalogue/sqlite_error.h"

namespace pantile::catalogue {
namespace {

using core::Result;

constexpr unsigned kKindShift = 6;
constexpr unsigned kTableMask = 63;
constexpr std::uint64_t kLongNumber = 4;
constexpr unsigned kLongNumberBits = 64;

enum ValueTag : unsigned char { kNull = 0, kWhole = 1, kText = 2, kBytes = 3 };

void putNumber(std::string& out, std::uint64_t number) {
    for (; number >= 128; number >>= 7U) out += static_cast<char>((number & 127U) | 128U);
    out += static_cast<char>(number);
}

std::uint64_t zigzag(std::int64_t number) {
    const auto bits = static_cast<std::uint64_t>(number);
    return number < 0 ? ~(bits << 1U) : bits << 1U;
}

std::int64_t unzigzag(std::uint64_t number) {
    const std::uint64_t half = number >> 1U;
    return static_cast<std::int64_t>((number & 1U) != 0 ? ~half : half);
}

void putWhole(std::string& out, std::int64_t number) {
    const std::uint64_t bits = zigzag(number);
    if (bits <= std::numeric_limits<std::uint64_t>::max() >> 2U) {
        putNumber(out, bits << 2U | kWhole);
        return;
    }
    putNumber(out, kLongNumber);
    for (unsigned shift = 0; shift < kLongNumberBits; shift += 8) {
        out += static_cast<char>(static_cast<std::uint64_t>(number) >> shift & 255U);
    }
}

void putValue(std::string& out, const RowValue& value) {
    if (const auto* const number = std::get_if<std::int64_t>(&value)) {
        putWhole(out, *number);
    } else if (const auto* const text = std::get_if<std::string_view>(&value)) {
        putNumber(out, std::uint64_t{text->size()} << 2U | kText);
        out += *text;
    } else if (const auto* const bytes = std::get_if<std::span<const std::uint8_t>>(&value)) {
        putNumber(out, std::uint64_t{bytes->size()} << 2U | kBytes);
        out.append(bytes->begin(), bytes->end());
    } else {
        putNumber(out, kNull);
    }
}

core::Error damagedChanges() {
    return corruptError("what is kept to undo an action");
}

class ChangeReader {
public:
    explicit ChangeReader(std::string_view bytes) : m_rest(bytes) {}

    Result<std::vector<RowChange>> all() {
        std::vector<RowChange> changes;
        while (!m_rest.empty()) {
            PANTILE_ASSIGN_OR_RETURN(RowChange change, one());
            changes.push_back(std::move(change));
        }
        return changes;
    }

private:
    Result<RowChange> one() {
        const auto head = static_cast<unsigned char>(m_rest.front());
        m_rest.remove_prefix(1);
        RowChange change;
        change.table = head & kTableMask;
        change.kind = static_cast<RowChangeKind>(head >> kKindShift);
        const bool isKnown =
            change.table < recordedTables().size() && change.kind <= RowChangeKind::Dropped;
        if (!isKnown) return damagedChanges();
        const RecordedTable& table = recordedTables()[change.table];
        std::uint64_t count = table.keys;
        if (change.kind == RowChangeKind::Dropped) {
            PANTILE_ASSIGN_OR_RETURN(count, number());
        }
        // Each value takes a byte at least.
        if (count > m_rest.size()) return damagedChanges();
        for (; count > 0; --count) {
            PANTILE_ASSIGN_OR_RETURN(const RowValue read, value());
            change.values.push_back(read);
        }
        if (change.kind == RowChangeKind::Dropped || table.columns == table.keys) return change;
        PANTILE_ASSIGN_OR_RETURN(change.seal, number());
        if (change.kind == RowChangeKind::Changed) {
            PANTILE_RETURN_IF_ERROR(readBefore(change, table));
        }
        return change;
    }

    Result<void> readBefore(RowChange& change, const RecordedTable& table) {
        PANTILE_ASSIGN_OR_RETURN(std::uint64_t count, number());
        for (; count > 0; --count) {
            PANTILE_ASSIGN_OR_RETURN(const std::uint64_t column, number());
            if (column >= table.columns) return damagedChanges();
            PANTILE_ASSIGN_OR_RETURN(const RowValue read, value());
            change.before.emplace_back(static_cast<std::size_t>(column), read);
        }
        return {};
    }

    Result<std::uint64_t> number() {
        std::uint64_t number = 0;
        for (unsigned shift = 0; shift < kLongNumberBits; shift += 7) {
            if (m_rest.empty()) return damagedChanges();
            const auto byte = static_cast<unsigned char>(m_rest.front());
            m_rest.remove_prefix(1);
            number |= std::uint64_t{byte & 127U} << shift;
            if (byte < 128) return number;
        }
        return damagedChanges();
    }

    Result<RowValue> value() {
        PANTILE_ASSIGN_OR_RETURN(const std::uint64_t head, number());
        const auto tag = static_cast<ValueTag>(head & 3U);
        if (tag == kWhole) return RowValue(unzigzag(head >> 2U));
        if (tag == kNull) return head == kLongNumber ? longNumber() : nothing(head);
        const std::uint64_t length = head >> 2U;
        if (length > m_rest.size()) return damagedChanges();
        const std::string_view taken = m_rest.substr(0, static_cast<std::size_t>(length));
        m_rest.remove_prefix(taken.size());
        if (tag == kText) return RowValue(taken);
        const auto* const bytes =
            static_cast<const std::uint8_t*>(static_cast<const void*>(taken.data()));
        return RowValue(std::span<const std::uint8_t>(bytes, taken.size()));
    }

    static Result<RowValue> nothing(std::uint64_t head) {
        if (head != kNull) return damagedChanges();
        return RowValue();
    }

    Result<RowValue> longNumber() {
        constexpr std::size_t kLength = kLongNumberBits / 8;
        if (m_rest.size() < kLength) return damagedChanges();
        std::uint64_t bits = 0;
        for (std::size_t i = 0; i < kLength; ++i) {
            bits |= std::uint64_t{static_cast<unsigned char>(m_rest[i])} << (8 * i);
        }
        m_rest.remove_prefix(kLength);
        return RowValue(static_cast<std::int64_t>(bits));
    }

    std::string_view m_rest;
};

}  // namespace

void packChange(std::string& out, const RowChange& change) {
    const RecordedTable& table = recordedTables()[change.table];
    out += static_cast<char>(static_cast<unsigned>(change.kind) << kKindShift | change.table);
    if (change.kind == RowChangeKind::Dropped) putNumber(out, change.values.size());
    for (const RowValue& value : change.values) putValue(out, value);
    if (change.kind == RowChangeKind::Dropped || table.columns == table.keys) return;
    putNumber(out, change.seal);
    if (change.kind == RowChangeKind::New) return;
    putNumber(out, change.before.size());
    for (const auto& [column, value] : change.before) {
        putNumber(out, column);
        putValue(out, value);
    }
}

Result<std::vector<RowChange>> unpackChanges(std::string_view bytes) {
    return ChangeReader(bytes).all();
}

}  // namespace pantile::catalogue
