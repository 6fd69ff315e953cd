// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace sumpbook::write {

/// Characters of UTF-8 text, each taken as one column wide.
[[nodiscard]] std::size_t columns_of(std::string_view text);

/// Lines of at most `width` columns, broken at blanks; a piece wider than that stands alone. Not broken:
/// between the groups of a number ("3 456"), and between a number and its unit or currency ("3 456 km",
/// "0.5 L/100 km", "20 US gal", "1 234.50 EUR").
[[nodiscard]] std::string wrapped(std::string_view text, std::size_t width);

} // namespace sumpbook::write
