// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/dates.h"
#include "model/quantity/decimal.h"

#include <concepts>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace sumpbook::document {

class Value;
using Array = std::vector<Value>;

/// Named values in a fixed order; the order is part of what is promised to readers of JSON.
class Object {
public:
    Object();
    Object(const Object&);
    Object(Object&&) noexcept;
    Object& operator=(const Object&);
    Object& operator=(Object&&) noexcept;
    ~Object();

    Object& add(std::string_view name, Value value);
    [[nodiscard]] const std::vector<std::pair<std::string, Value>>& members() const { return members_; }

private:
    std::vector<std::pair<std::string, Value>> members_;
};

/// A tree of results for machines: what JSON can say, with exact numbers. Doubles do not convert: a
/// computed figure is rounded with decimal_from_double where its digits are chosen. Absent is null.
class Value {
public:
    Value() = default;
    Value(std::nullptr_t) {} // NOLINT: these conversions are the point
    Value(std::nullopt_t) {} // NOLINT
    Value(std::same_as<bool> auto truth)
        : data_(truth) {} // NOLINT
    Value(std::string text)
        : data_(std::move(text)) {} // NOLINT
    Value(std::string_view text)
        : data_(std::string(text)) {} // NOLINT
    Value(const char* text)
        : data_(std::string(text)) {} // NOLINT
    Value(Decimal number)
        : data_(number) {} // NOLINT
    Value(Array items)
        : data_(std::move(items)) {} // NOLINT
    Value(Object object)
        : data_(std::move(object)) {} // NOLINT
    Value(const Date& date)
        : data_(iso_text(date)) {} // NOLINT
    template <std::integral Int>
    requires(!std::same_as<Int, bool>) Value(Int number)
        : data_(static_cast<std::int64_t>(number)) {} // NOLINT
    Value(std::floating_point auto) = delete;
    template <class T>
    Value(const std::optional<T>& maybe) { // NOLINT
        if (maybe) *this = Value(*maybe);
    }

    using Data = std::variant<std::monostate, bool, std::int64_t, Decimal, std::string, Array, Object>;
    [[nodiscard]] const Data& data() const { return data_; }

private:
    Data data_;
};

/// {"schema": 1, "items": [...]}: the top level of every list.
[[nodiscard]] Object list_of(Array items);
/// {"schema": 1}: the start of every other result.
[[nodiscard]] Object result();

} // namespace sumpbook::document
