// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/oil/coolant.h"
#include "model/oil/patterns.h"
#include "model/oil/rate_value.h"
#include "model/oil/whole_sample.h"

#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::oil {

/// What to do next, from mild to severe.
enum class AdviceKind { carry_on, sample_after, sample_now, inspect, change_oil, stop };
/// "carry-on", "sample-after", "sample-now", "inspect", "change-oil", "stop".
[[nodiscard]] std::string_view slug(AdviceKind kind);

struct Advice {
    AdviceKind kind = AdviceKind::carry_on;
    std::vector<std::string> because; ///< Slugs of the quantities that led to it; empty: the word alone.
    std::vector<std::string> look_at; ///< For inspect and stop: what the patterns name.
};

/// The first that applies (numbers.md 6.9, after JOAP rules R5 to R15): stop for glycol; change-oil for fuel,
/// water, viscosity, base or acid number, oxidation, nitration, sulfation or soot at act, which need no
/// confirming sample; inspect for a wear metal at act here and in the sample before (`act_before`);
/// sample-now for another act, for coolant named by its metals, or where there is not enough to say;
/// sample-after for watch; carry-on.
[[nodiscard]] Advice advise(const std::vector<RatedValue>& values, const WholeSample& whole,
                            const CoolantSign& coolant, const std::vector<PatternFound>& patterns,
                            const std::set<std::string>& act_before);

} // namespace sumpbook::oil
