#pragma once

// SqlPiece: a part of an SQL statement with the values that belong to it.

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

#include "catalogue/statement.h"

namespace pantile::catalogue {

using OwnedValue = std::variant<std::int64_t, std::string, BoundObject>;

/// SQL with "?" for each of the values, in their order.
struct SqlPiece {
    std::string sql;
    std::vector<OwnedValue> values;

    void append(const SqlPiece& other);
};

/// The object must outlive the statement's last step.
template <typename Object>
OwnedValue bound(Object& object) {
    return BoundObject{&object, Object::kType};
}

/// A statement of these, ready to step; the values are copied.
core::Result<Statement> prepare(Connection& connection, const SqlPiece& piece);

}  // namespace pantile::catalogue
