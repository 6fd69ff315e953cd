// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::oil {

/// The words of a list cell of a data file, parted by semicolons; none in an empty cell.
[[nodiscard]] std::vector<std::string> split_words(std::string_view cell);
/// "iron, copper and lead" of the three; empty of none.
[[nodiscard]] std::string listed(const std::vector<std::string>& words);
/// Equal whatever the case of A to Z.
[[nodiscard]] bool same_word(std::string_view a, std::string_view b);
[[nodiscard]] bool contains_word(const std::vector<std::string>& words, std::string_view word);

} // namespace sumpbook::oil
