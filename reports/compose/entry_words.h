// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/entry.h"

#include <optional>
#include <string>
#include <string_view>

namespace sumpbook::compose {

/// What happened, without date and place: "12.3 L full, 22.10 EUR", "oil filter fitted". Never empty; a
/// fuel stop of which nothing could be read is "amount not known".
[[nodiscard]] std::string entry_words(const Entry& entry);

/// A whole clause with kind, odometer and date: "fuel, 12.3 L full at 12 345 km on 3 May 2026, 22.10 EUR".
[[nodiscard]] std::string entry_sentence(const Entry& entry);

/// The kind as owners read it: "oil change" for "oil-change".
[[nodiscard]] std::string kind_words(std::string_view kind);

/// What the entry cost: the total as typed; else price x volume of a fuel stop, or the parts and labour of
/// a job where all of it is in one currency. Absent: nothing was said about money.
[[nodiscard]] std::optional<Money> cost_of(const Entry& entry);

/// "< 2 mg/kg", "12 mg/kg (ASTM D5185)", "detected".
[[nodiscard]] std::string value_words(const SampleValue& value);

} // namespace sumpbook::compose
