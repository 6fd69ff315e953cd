// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace sumpbook::oil {

/// The method behind what was typed ("ASTM D2896-21" is "perchloric"), from methods.csv; text that names
/// none of them stands for itself, in lower case without blanks. Absent: not stated.
[[nodiscard]] std::optional<std::string> method_of(std::string_view quantity,
                                                   const std::optional<std::string>& typed);

} // namespace sumpbook::oil
