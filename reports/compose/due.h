// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/upkeep/due_item.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

#include <vector>

namespace sumpbook::compose {

/// Overdue: danger; due and soon: caution; later: good.
[[nodiscard]] document::Severity colour(upkeep::DueState state);

/// What falls due: {"schema": 1, "items": [...]}. Limits on distance are true distances, also after a dial
/// was changed; amounts left are negative once past.
[[nodiscard]] document::Value due_json(const std::vector<upkeep::DueItem>& items);

/// One table, worst first, and what its days rest on. The bike has a column where there are several.
/// `sold`: from `sold_sentences`, put in front.
[[nodiscard]] document::Document due_text(const std::vector<upkeep::DueItem>& items,
                                          const std::vector<std::string>& sold = {});
/// "Wren was sold on 3 May 2024: nothing falls due on it any more.", one a bike that was sold by the day.
[[nodiscard]] std::vector<std::string> sold_sentences(const std::vector<const Bike*>& bikes, Date today);

/// Each item by itself: why it has its state, its limits and windows, how each earlier job lay to its
/// limits, and where the interval comes from.
[[nodiscard]] document::Document due_why_text(const std::vector<upkeep::DueItem>& items);

} // namespace sumpbook::compose
