#include "catalogue/seal.h"

#include <cstdint>
#include <span>

#include <sqlite3.h>

#include "catalogue/statement.h"
#include "core/fingerprint.h"

namespace pantile::catalogue {
namespace {

constexpr unsigned kSealBits = 38;

void addValue(core::FingerprintBuilder& builder, sqlite3_value* value) {
    const int type = sqlite3_value_type(value);
    builder.addByte(static_cast<std::uint8_t>(type));
    if (type == SQLITE_NULL) return;
    if (type == SQLITE_INTEGER) {
        builder.addNumber(sqlite3_value_int64(value));
        return;
    }
    const auto* const bytes = static_cast<const std::uint8_t*>(sqlite3_value_blob(value));
    const auto length = static_cast<std::size_t>(sqlite3_value_bytes(value));
    builder.addNumber(static_cast<std::int64_t>(length));
    builder.addBytes(std::span(bytes, length));
}

void seal(sqlite3_context* context, int count, sqlite3_value** values) {
    const std::span row(values, static_cast<std::size_t>(count));
    sqlite3_result_int64(context, static_cast<std::int64_t>(sealOf(row)));
}

}  // namespace

std::uint64_t sealOf(std::span<sqlite3_value* const> values) {
    core::FingerprintBuilder builder;
    for (sqlite3_value* const value : values) addValue(builder, value);
    const std::uint64_t bits = builder.finish().value;
    constexpr std::uint64_t kMask = (std::uint64_t{1} << kSealBits) - 1;
    // The upper half is the better mixed one; both are used.
    return (bits ^ (bits >> (64 - kSealBits))) & kMask;
}

core::Result<void> addSealFunction(Connection& connection) {
    const int code = sqlite3_create_function_v2(
        connection.handle(), "seal", -1, SQLITE_UTF8 | SQLITE_DETERMINISTIC | SQLITE_INNOCUOUS,
        nullptr, seal, nullptr, nullptr, nullptr);
    if (code != SQLITE_OK) return connection.error(code);
    return {};
}

core::Result<std::vector<std::string>> brokenSeals(Connection& connection) {
    return allTexts(connection,
                    "SELECT sealed.name FROM sealed LEFT JOIN seals ON seals.name = sealed.name "
                    "WHERE seals.sum IS NOT sealed.sum");
}

}  // namespace pantile::catalogue
