// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/decimal.h"

#include <string_view>

namespace sumpbook {

/// Which mark stands before the decimals in typed numbers.
enum class DecimalMark { unknown, point, comma };

/// Reads a number as people type it and never drops a character.
///
/// Both marks are accepted when only one reading is possible: 12.5 and 12,5; 1.234,5 and 1,234.5; group
/// marks may also be blank, no-break blanks or an apostrophe, in the right places only. With `mark`
/// unknown, 1.234 and 1,234 (one mark, one to three digits before it and exactly three after, not a
/// leading 0) are refused with both readings in the sentence. With `mark` given, the other one can only
/// be a group mark and must stand in the right place. A minus is - or U+2212. Anything else is refused
/// and named.
[[nodiscard]] Result<Decimal> read_number(std::string_view text, DecimalMark mark = DecimalMark::unknown);

/// True for 1.234 and 1,234: the text is a number under either mark, and they differ.
[[nodiscard]] bool is_ambiguous_number(std::string_view text);

/// A number with its unit behind it, "12.5 L" or "12.5L": the number as typed and the unit's text, which
/// may be empty.
struct NumberAndUnit {
    Decimal number;
    std::string_view unit;
};
[[nodiscard]] Result<NumberAndUnit> split_number_and_unit(std::string_view text,
                                                          DecimalMark mark = DecimalMark::unknown);

} // namespace sumpbook
