// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/decimal.h"

#include "model/quantity/wide.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <limits>
#include <stdexcept>

namespace sumpbook {
namespace {

constexpr std::array<std::int64_t, 19> powers_of_ten = [] {
    std::array<std::int64_t, 19> powers{};
    std::int64_t power = 1;
    for (auto& entry : powers) {
        entry = power;
        if (power <= std::numeric_limits<std::int64_t>::max() / 10) power *= 10;
    }
    return powers;
}();

constexpr Wide power_of_ten(int exponent) { return powers_of_ten[static_cast<std::size_t>(exponent)]; }

constexpr bool fits(Wide value) {
    return value < power_of_ten(Decimal::max_digits) && value > -power_of_ten(Decimal::max_digits);
}

Wide at_scale(const Decimal& number, int scale) {
    return Wide{number.coefficient()} * power_of_ten(scale - number.scale());
}

Result<Decimal> checked(Wide coefficient, int scale) {
    if (!fits(coefficient) || scale > Decimal::max_scale) {
        return refuse("The result has more digits than can be kept exactly.");
    }
    return Decimal(static_cast<std::int64_t>(coefficient), scale);
}

} // namespace

Result<Decimal> Decimal::parse(std::string_view plain) {
    const Place place{.file = {}, .line = {}, .column = {}, .text = std::string(plain)};
    std::string_view rest = plain;
    const bool negative = rest.starts_with('-');
    if (negative || rest.starts_with('+')) rest.remove_prefix(1);
    Wide coefficient = 0;
    int scale = 0;
    bool any_digit = false;
    bool after_point = false;
    for (const char c : rest) {
        if (c == '.' && !after_point) {
            after_point = true;
            continue;
        }
        if (c < '0' || c > '9') return refuse("This is not a number.", place);
        any_digit = true;
        coefficient = coefficient * 10 + (c - '0');
        scale += after_point ? 1 : 0;
        if (!fits(coefficient) || scale > max_scale) {
            return refuse(
                "The number has more digits than can be kept exactly (18, with 15 after the point).", place);
        }
    }
    if (!any_digit) return refuse("This is not a number.", place);
    return Decimal(static_cast<std::int64_t>(negative ? -coefficient : coefficient), scale);
}

std::string Decimal::text() const {
    std::string digits = std::to_string(coefficient_);
    if (coefficient_ < 0) digits.erase(0, 1);
    if (scale_ > 0) {
        if (digits.size() <= scale_) digits.insert(0, scale_ + 1U - digits.size(), '0');
        digits.insert(digits.size() - scale_, 1, '.');
    }
    if (coefficient_ < 0) digits.insert(0, 1, '-');
    return digits;
}

double Decimal::to_double() const {
    // Through the text: correctly rounded, whatever the scale.
    const std::string plain = text();
    double value = 0;
    std::from_chars(plain.data(), plain.data() + plain.size(), value);
    return value;
}

std::strong_ordering operator<=>(const Decimal& a, const Decimal& b) {
    const int scale = a.scale() > b.scale() ? a.scale() : b.scale();
    return at_scale(a, scale) <=> at_scale(b, scale);
}

Result<std::int64_t> scaled_to_integer(const Decimal& number, std::int64_t numerator,
                                       std::int64_t denominator) {
    const Wide product = Wide{number.coefficient()} * numerator;
    const Wide divisor = power_of_ten(number.scale()) * denominator;
    const Wide rounded_quotient = divide_half_even(product, divisor);
    if (rounded_quotient > std::numeric_limits<std::int64_t>::max() ||
        rounded_quotient < std::numeric_limits<std::int64_t>::min()) {
        return refuse("The number is too large.",
                      {.file = {}, .line = {}, .column = {}, .text = number.text()});
    }
    return static_cast<std::int64_t>(rounded_quotient);
}

Result<Decimal> add(const Decimal& a, const Decimal& b) {
    const int scale = a.scale() > b.scale() ? a.scale() : b.scale();
    return checked(at_scale(a, scale) + at_scale(b, scale), scale);
}

Result<Decimal> subtract(const Decimal& a, const Decimal& b) {
    return add(a, Decimal(-b.coefficient(), b.scale()));
}

Result<Decimal> multiply(const Decimal& a, const Decimal& b) {
    Wide product = Wide{a.coefficient()} * b.coefficient();
    int scale = a.scale() + b.scale();
    // Zeros at the end of a long product carry nothing: 2.500 x 4.000 may be kept as 10.
    while (scale > 0 && (scale > Decimal::max_scale || !fits(product)) && product % 10 == 0) {
        product /= 10;
        --scale;
    }
    return checked(product, scale);
}

Decimal rounded(const Decimal& number, int scale) {
    if (scale >= number.scale()) {
        const Wide widened = at_scale(number, scale);
        return fits(widened) ? Decimal(static_cast<std::int64_t>(widened), scale) : number;
    }
    const Wide quotient = divide_half_even(number.coefficient(), power_of_ten(number.scale() - scale));
    return Decimal(static_cast<std::int64_t>(quotient), scale);
}

Decimal decimal_ratio(std::int64_t numerator, std::int64_t denominator, int scale) {
    for (int kept = std::min(scale, Decimal::max_scale); kept >= 0; --kept) {
        const Wide quotient = divide_half_even(Wide{numerator} * power_of_ten(kept), denominator);
        if (fits(quotient)) return Decimal(static_cast<std::int64_t>(quotient), kept);
    }
    throw std::domain_error("a ratio of more than 18 digits");
}

Decimal decimal_from_double(double number, int scale) {
    for (int kept = std::min(scale, Decimal::max_scale); std::isfinite(number) && kept >= 0; --kept) {
        std::array<char, 400> buffer{};
        const auto [end, error] = std::to_chars(buffer.data(), buffer.data() + buffer.size(), number,
                                                std::chars_format::fixed, kept);
        const std::string_view text(buffer.data(), static_cast<std::size_t>(end - buffer.data()));
        if (const auto decimal = Decimal::parse(text); error == std::errc{} && decimal) return *decimal;
    }
    throw std::domain_error("no decimal of 18 digits for this number");
}

} // namespace sumpbook
