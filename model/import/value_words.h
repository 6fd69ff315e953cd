// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/currency.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::import {

/// The fixed value a typed word stands for in one of the lists of value_words.csv ("yes-no", "category",
/// "plan-item", ...); absent for a word that is not there. Case, accents and punctuation do not matter.
[[nodiscard]] std::optional<std::string> value_of_word(std::string_view list, std::string_view typed);
/// All values of a list, in the order of the file.
[[nodiscard]] std::vector<std::string> values_of(std::string_view list);

/// The currency a code or sign stands for. A sign of several currencies ($) is the garage's own where it
/// is one of them, else refused with the question; anything unknown is refused.
[[nodiscard]] Result<Currency> read_currency(std::string_view text, const Currency& garage);

} // namespace sumpbook::import
