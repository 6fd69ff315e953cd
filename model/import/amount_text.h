// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

namespace sumpbook::import {

/// A cell with a number taken apart: "€ 12.50" is before "€", number "12.50", behind ""; "<12 km" is
/// before "<", number "12", behind "km". Pieces are trimmed; the number is empty where there is no digit.
struct AmountText {
    std::string_view before;
    std::string_view number;
    std::string_view behind;
};
[[nodiscard]] AmountText take_amount_apart(std::string_view cell);

/// Only the number of it.
[[nodiscard]] std::string_view number_piece(std::string_view cell);

} // namespace sumpbook::import
