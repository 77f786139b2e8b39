#include "catalogue/sql_functions.h"

#include <algorithm>
#include <cstdint>
#include <memory>
#include <span>
#include <vector>

#include <sqlite3.h>

#include "catalogue/id_set.h"
#include "catalogue/statement.h"
#include "core/colour_neighbourhood.h"
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

std::uint32_t packed(Rgb8 colour) {
    return static_cast<std::uint32_t>(colour.r) << 16U |
           static_cast<std::uint32_t>(colour.g) << 8U | colour.b;
}

/// Libraries hold the same few colours over and over: those compared lately are kept.
class Nearness {
public:
    bool isNear(std::uint32_t target, std::int64_t thousandths, Rgb8 colour) {
        if (target != m_target || thousandths != m_thousandths) {
            m_known.assign(kKept, {});
            m_target = target;
            m_thousandths = thousandths;
            m_neighbourhood = neighbourhoodOf(target, thousandths);
        }
        if (!m_neighbourhood.mayHold(colour)) return false;
        const std::uint32_t wanted = packed(colour) + 1;
        Known& known = m_known[(wanted * kSpread) >> kKeptShift];
        if (known.colourAndOne != wanted) known = {wanted, m_neighbourhood.holds(colour)};
        return known.isNear;
    }

private:
    // Each colour has one place, which the next of that place takes over.
    struct Known {
        std::uint32_t colourAndOne = 0;
        bool isNear = false;
    };

    static constexpr std::size_t kKept = 1U << 16U;
    static constexpr unsigned kKeptShift = 16;
    static constexpr std::uint32_t kSpread = 2654435761U;  // 2^32 by the golden ratio.

    static core::ColourNeighbourhood neighbourhoodOf(std::uint32_t target,
                                                     std::int64_t thousandths) {
        constexpr double kThousandths = 1000;
        const Rgb8 centre{static_cast<std::uint8_t>(target >> 16U),
                          static_cast<std::uint8_t>(target >> 8U),
                          static_cast<std::uint8_t>(target)};
        return {centre, static_cast<double>(thousandths) / kThousandths};
    }

    std::uint32_t m_target = 0;
    std::int64_t m_thousandths = 0;
    core::ColourNeighbourhood m_neighbourhood = neighbourhoodOf(0, 0);
    std::vector<Known> m_known = std::vector<Known>(kKept);
};

void usesNear(sqlite3_context* context, int /*count*/, sqlite3_value** values) {
    auto& nearness = *static_cast<Nearness*>(sqlite3_user_data(context));
    const auto target = static_cast<std::uint32_t>(sqlite3_value_int64(values[2]));
    const std::int64_t thousandths = sqlite3_value_int64(values[3]);
    const bool found = anyUsed(values[0], values[1], [&](Rgb8 colour) {
        return nearness.isNear(target, thousandths, colour);
    });
    sqlite3_result_int(context, found ? 1 : 0);
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

IdSet* setOf(sqlite3_value* value) {
    return static_cast<IdSet*>(sqlite3_value_pointer(value, kIdSetType));
}

void isOneOf(sqlite3_context* context, int /*count*/, sqlite3_value** values) {
    const IdSet* const ids = setOf(values[0]);
    const bool found = ids != nullptr && ids->has(sqlite3_value_int64(values[1]));
    sqlite3_result_int(context, found ? 1 : 0);
}

void keepIn(sqlite3_context* context, int /*count*/, sqlite3_value** values) {
    IdSet* const ids = setOf(values[0]);
    if (ids != nullptr) ids->add(sqlite3_value_int64(values[1]));
    sqlite3_result_null(context);
}

/// Registers a function with data of its own, which goes with the connection.
template <typename Data>
Result<void> add(Connection& connection, const char* name, int arguments, Function function,
                 std::unique_ptr<Data> data) {
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
    PANTILE_RETURN_IF_ERROR(
        add(connection, "uses_near", 4, usesNear, std::make_unique<Nearness>()));
    PANTILE_RETURN_IF_ERROR(add(connection, "is_one_of", 2, isOneOf, std::make_unique<int>()));
    PANTILE_RETURN_IF_ERROR(add(connection, "keep_in", 2, keepIn, std::make_unique<int>()));
    return add(connection, "uses_only", 3, usesOnly, std::make_unique<int>());
}

}  // namespace pantile::catalogue
