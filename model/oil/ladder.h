// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

namespace sumpbook::oil {

/// Where a value of a sample stands, on the one ladder all limit sets are mapped to.
enum class Ladder { unrated, within, watch, act };
/// The word for a whole sample, from best to worst.
enum class Word { within, not_enough_to_say, watch, act };

/// "unrated", "within", "watch", "act".
[[nodiscard]] std::string_view slug(Ladder ladder);
/// "within", "not enough to say", "watch", "act".
[[nodiscard]] std::string_view slug(Word word);

[[nodiscard]] inline Ladder worse(Ladder a, Ladder b) { return a < b ? b : a; }
[[nodiscard]] inline Word worse(Word a, Word b) { return a < b ? b : a; }

} // namespace sumpbook::oil
