// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"

namespace sumpbook::usage {

/// The bike as its log stood on a day: entries dated later are left out. What is said once about it, its
/// plan and its baselines stay. For looking from another day than today, and for testing forecasts on the
/// past.
[[nodiscard]] Bike as_of(const Bike& bike, const Date& day);

} // namespace sumpbook::usage
