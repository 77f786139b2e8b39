#include "catalogue/sql_functions.h"

#include <cstdint>
#include <memory>
#include <span>

#include <sqlite3.h>

#include "catalogue/entry_sets.h"
#include "catalogue/id_set.h"
#include "core/error.h"

namespace pantile::catalogue {
namespace {

using core::Result;
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

void keepEntries(sqlite3_context* context, int /*count*/, sqlite3_value** values) {
    auto* const entries = objectIn<EntrySets>(values[0]);
    if (entries != nullptr) {
        entries->addPalette(sqlite3_value_int64(values[1]), bytesOf(values[2]));
    }
    sqlite3_result_null(context);
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
    return add(connection, "keep_entries", 3, keepEntries);
}

}  // namespace pantile::catalogue
