// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::cli {

/// The known words nearest to a mistyped one, best first, at most three: those within two slips (a letter
/// wrong, missing, added or two swapped) and, for short words, fewer slips than half the letters; words
/// that begin with what was typed count as near. Empty when nothing is near.
[[nodiscard]] std::vector<std::string> near_misses(std::string_view typed,
                                                   const std::vector<std::string>& known);

/// " Did you mean \"due\"?" or empty.
[[nodiscard]] std::string did_you_mean(std::string_view typed, const std::vector<std::string>& known);

} // namespace sumpbook::cli
