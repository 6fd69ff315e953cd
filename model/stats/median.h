// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

namespace sumpbook::stats {

/// The middle value, or the mean of the two middle ones; absent without values.
[[nodiscard]] std::optional<double> median(std::vector<double> values);

} // namespace sumpbook::stats
