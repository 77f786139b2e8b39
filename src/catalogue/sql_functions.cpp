#include "catalogue/sql_functions.h"

#include <algorithm>
#include <cstdint>
#include <memory>
#include <span>
#include <vector>

#include <sqlite3.h>

#include "catalogue/id_set.h"
#include "catalogue/match_list.h"
#include "catalogue/near_entries.h"
#include "core/error.h"

namespace pantile::catalogue {
namespace {

using core::Result;
using core::Rgb8;
using Bytes = std::span<const std::uint8_t>;
using Function = void (*)(sqlite3_context*, int, sqlite3_value**);

Bytes bytesOf(sqlite3_value* value) {
    const auto* data = static_cast<const std::uint8_t*>(sqlite3_value_blob(value));
    return {data, static_cast<std::size_t>(sqlite3_value_bytes(value))};
}

void foldText(sqlite3_context* context, int /*count*/, sqlite3_value** values) {
    const auto& folding = *static_cast<const TextFolding*>(sqlite3_user_data(context));
    const Bytes bytes = bytesOf(*values);
    const std::string folded = folding.fold(
        {static_cast<const char*>(static_cast<const void*>(bytes.data())), bytes.size()});
    sqlite3_result_text64(context, folded.data(), folded.size(), SQLITE_TRANSIENT, SQLITE_UTF8);
}

/// Calls `visit` with the colour of each used entry until it says true; whether it did.
template <typename Visit>
bool anyUsed(sqlite3_value* colours, sqlite3_value* used, Visit visit) {
    constexpr std::size_t kBits = 8;
    const bool all = sqlite3_value_type(used) == SQLITE_NULL;
    const Bytes bytes = bytesOf(colours);
    const Bytes mask = bytesOf(used);
    for (std::size_t i = 0; 3 * i + 2 < bytes.size(); ++i) {
        const bool inMask =
            i / kBits < mask.size() && (unsigned{mask[i / kBits]} >> (i % kBits) & 1U) != 0;
        if ((all || inMask) && visit(Rgb8{bytes[3 * i], bytes[3 * i + 1], bytes[3 * i + 2]})) {
            return true;
        }
    }
    return false;
}

void usesOnly(sqlite3_context* context, int /*count*/, sqlite3_value** values) {
    const Bytes allowed = bytesOf(values[2]);
    const auto isForeign = [&](Rgb8 colour) {
        for (std::size_t i = 0; i + 2 < allowed.size(); i += 3) {
            if (Rgb8{allowed[i], allowed[i + 1], allowed[i + 2]} == colour) return false;
        }
        return true;
    };
    sqlite3_result_int(context, anyUsed(values[0], values[1], isForeign) ? 0 : 1);
}

/// NULL where another type was bound.
template <typename Object>
Object* objectIn(sqlite3_value* value) {
    return static_cast<Object*>(sqlite3_value_pointer(value, Object::kType));
}

void isOneOf(sqlite3_context* context, int /*count*/, sqlite3_value** values) {
    const auto* const ids = objectIn<IdSet>(values[0]);
    const bool found = ids != nullptr && ids->has(sqlite3_value_int64(values[1]));
    sqlite3_result_int(context, found ? 1 : 0);
}

void keepIn(sqlite3_context* context, int /*count*/, sqlite3_value** values) {
    auto* const ids = objectIn<IdSet>(values[0]);
    if (ids != nullptr) ids->add(sqlite3_value_int64(values[1]));
    sqlite3_result_null(context);
}

void keepMatch(sqlite3_context* context, int /*count*/, sqlite3_value** values) {
    auto* const matches = objectIn<MatchList>(values[0]);
    if (matches != nullptr) {
        matches->add({sqlite3_value_int64(values[2]), sqlite3_value_int64(values[1])});
    }
    sqlite3_result_null(context);
}

void keepNear(sqlite3_context* context, int /*count*/, sqlite3_value** values) {
    auto* const near = objectIn<NearEntries>(values[0]);
    if (near != nullptr) near->addPalette(sqlite3_value_int64(values[1]), bytesOf(values[2]));
    sqlite3_result_null(context);
}

/// Where it is not known what is painted, all may be.
void paintsNear(sqlite3_context* context, int /*count*/, sqlite3_value** values) {
    const auto* const near = objectIn<NearEntries>(values[0]);
    const std::int64_t palette = sqlite3_value_int64(values[1]);
    const bool isKnown = sqlite3_value_type(values[2]) != SQLITE_NULL;
    const bool found = near != nullptr && (isKnown ? near->isPainted(palette, bytesOf(values[2]))
                                                   : near->hasOne(palette));
    sqlite3_result_int(context, found ? 1 : 0);
}

/// Registers a function with data of its own, which goes with the connection.
template <typename Data = int>
Result<void> add(Connection& connection, const char* name, int arguments, Function function,
                 std::unique_ptr<Data> data = nullptr) {
    const int code = sqlite3_create_function_v2(
        connection.handle(), name, arguments,
        SQLITE_UTF8 | SQLITE_DETERMINISTIC | SQLITE_DIRECTONLY, data.release(), function, nullptr,
        nullptr, [](void* owned) { delete static_cast<Data*>(owned); });
    if (code != SQLITE_OK) return connection.error(code);
    return {};
}

}  // namespace

Result<void> addSqlFunctions(Connection& connection, const TextFolding& folding) {
    if (!folding.fold || folding.version.empty()) {
        return core::Error{core::ErrorKind::Internal, "a library needs a way to fold text",
                           "report this as a fault of the program"};
    }
    PANTILE_RETURN_IF_ERROR(
        add(connection, "fold", 1, foldText, std::make_unique<TextFolding>(folding)));
    PANTILE_RETURN_IF_ERROR(add(connection, "is_one_of", 2, isOneOf));
    PANTILE_RETURN_IF_ERROR(add(connection, "keep_in", 2, keepIn));
    PANTILE_RETURN_IF_ERROR(add(connection, "keep_match", 3, keepMatch));
    PANTILE_RETURN_IF_ERROR(add(connection, "keep_near", 3, keepNear));
    PANTILE_RETURN_IF_ERROR(add(connection, "paints_near", 3, paintsNear));
    return add(connection, "uses_only", 3, usesOnly);
}

}  // namespace pantile::catalogue
