// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/problem.h"

#include <compare>
#include <concepts>
#include <cstdint>
#include <string>
#include <string_view>

namespace sumpbook {

/// A decimal number exactly as it was written: 12.50 stays 12.50 and is never a binary fraction.
///
/// Range: up to 18 digits, up to 15 of them after the point. Equality and order are by value, so
/// 12.5 == 12.50; `same_as_written` tells them apart. Absent numbers are std::optional<Decimal>.
class Decimal {
public:
    static constexpr int max_digits = 18;
    static constexpr int max_scale = 15;

    constexpr Decimal() = default;
    constexpr Decimal(std::int64_t whole)
        : coefficient_(whole) {} // NOLINT: whole numbers are decimals
    /// coefficient x 10^-scale; scale 0..15.
    constexpr Decimal(std::int64_t coefficient, int scale)
        : coefficient_(coefficient)
        , scale_(static_cast<std::uint8_t>(scale)) {}

    /// A binary fraction is not what anybody wrote: `decimal_from_double` rounds one openly.
    template <std::floating_point T>
    Decimal(T) = delete;
    template <std::floating_point T>
    Decimal(T, int) = delete;

    /// Reads the one plain form "-12.50": optional sign, digits, optional point and digits, nothing
    /// else. For text typed by people use `read_number`.
    [[nodiscard]] static Result<Decimal> parse(std::string_view plain);

    [[nodiscard]] constexpr std::int64_t coefficient() const { return coefficient_; }
    [[nodiscard]] constexpr int scale() const { return scale_; }

    /// The plain form; parse(text()) gives the same number with the same zeros.
    [[nodiscard]] std::string text() const;
    /// Nearest double. For computing, never for storing or comparing with a limit.
    [[nodiscard]] double to_double() const;

    [[nodiscard]] constexpr bool is_negative() const { return coefficient_ < 0; }
    [[nodiscard]] constexpr bool is_zero() const { return coefficient_ == 0; }
    [[nodiscard]] constexpr bool same_as_written(const Decimal& other) const {
        return coefficient_ == other.coefficient_ && scale_ == other.scale_;
    }

    friend std::strong_ordering operator<=>(const Decimal& a, const Decimal& b);
    friend bool operator==(const Decimal& a, const Decimal& b) { return (a <=> b) == 0; }

private:
    std::int64_t coefficient_ = 0;
    std::uint8_t scale_ = 0;
};

/// Exact product with an integer ratio, rounded half to even to a whole number of `1/per_unit`:
/// round(number x numerator / denominator). Refused where the result leaves 64 bits.
[[nodiscard]] Result<std::int64_t> scaled_to_integer(const Decimal& number, std::int64_t numerator,
                                                     std::int64_t denominator);

/// Exact sum and difference; the wider scale is kept. Refused past 18 digits.
[[nodiscard]] Result<Decimal> add(const Decimal& a, const Decimal& b);
[[nodiscard]] Result<Decimal> subtract(const Decimal& a, const Decimal& b);
/// Exact product, refused past 18 digits or 15 decimals.
[[nodiscard]] Result<Decimal> multiply(const Decimal& a, const Decimal& b);
/// Rounded half to even to `scale` digits after the point. Where a wider scale does not fit into 18
/// digits the number stays as it is.
[[nodiscard]] Decimal rounded(const Decimal& number, int scale);
/// numerator / denominator rounded half to even to `scale` digits after the point; denominator above 0.
/// Where 18 digits do not reach that far, to as many as fit; a ratio from 10^18 on throws
/// std::domain_error.
[[nodiscard]] Decimal decimal_ratio(std::int64_t numerator, std::int64_t denominator, int scale);
/// The decimal nearest to a finite double, with `scale` digits after the point, half to even; fewer where
/// 18 digits do not reach that far. For printing computed results: every number leaves the program
/// through here, so that no locale and no library changes it. A number that is not finite, or 10^18 and
/// more, is a fault of the program: std::domain_error.
[[nodiscard]] Decimal decimal_from_double(double number, int scale);

} // namespace sumpbook
