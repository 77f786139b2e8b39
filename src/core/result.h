#pragma once

// Result<T>: a value or an Error. Member names are those of std::expected, which GCC 12 has only
// under C++23, so that it can take this one's place later.

#include <cassert>
#include <optional>
#include <utility>
#include <variant>

#include "core/error.h"

namespace pantile::core {

template <typename T>
class [[nodiscard]] Result {
public:
    using value_type = T;

    Result(T value) : m_state(std::in_place_index<0>, std::move(value)) {}

    Result(Error error) : m_state(std::in_place_index<1>, std::move(error)) {}

    bool has_value() const { return m_state.index() == 0; }

    explicit operator bool() const { return has_value(); }

    T& value() & {
        assert(has_value());
        return *std::get_if<0>(&m_state);
    }

    const T& value() const& {
        assert(has_value());
        return *std::get_if<0>(&m_state);
    }

    T&& value() && {
        assert(has_value());
        return std::move(*std::get_if<0>(&m_state));
    }

    T& operator*() & { return value(); }

    const T& operator*() const& { return value(); }

    T&& operator*() && { return std::move(*this).value(); }

    T* operator->() { return &value(); }

    const T* operator->() const { return &value(); }

    const Error& error() const {
        assert(!has_value());
        return *std::get_if<1>(&m_state);
    }

private:
    std::variant<T, Error> m_state;
};

template <>
class [[nodiscard]] Result<void> {
public:
    using value_type = void;

    Result() = default;

    Result(Error error) : m_error(std::move(error)) {}

    bool has_value() const { return !m_error.has_value(); }

    explicit operator bool() const { return has_value(); }

    const Error& error() const {
        assert(!has_value());
        return *m_error;
    }

private:
    std::optional<Error> m_error;
};

}  // namespace pantile::core

#define PANTILE_JOIN_INNER(a, b) a##b
#define PANTILE_JOIN(a, b) PANTILE_JOIN_INNER(a, b)

/// Hands an error of `expression` (a Result) to the caller. Put nothing else on that line.
#define PANTILE_RETURN_IF_ERROR(expression) \
    if (auto pantileResult = (expression); !pantileResult) return pantileResult.error()

/// Declares `declaration` with the value of `expression` (a Result<T>), or hands its error to the
/// caller.
#define PANTILE_ASSIGN_OR_RETURN(declaration, expression)      \
    auto PANTILE_JOIN(pantileResult, __LINE__) = (expression); \
    if (!PANTILE_JOIN(pantileResult, __LINE__))                \
        return PANTILE_JOIN(pantileResult, __LINE__).error();  \
    declaration = *std::move(PANTILE_JOIN(pantileResult, __LINE__))
