// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/upkeep/bike_today.h"
#include "model/upkeep/due_item.h"

#include <array>
#include <optional>
#include <vector>

namespace sumpbook::upkeep {

/// Why an item falls due when it does: each input is left out in turn and its median day worked out anew;
/// the inputs that move it most come first. One for all items of a bike, because they share the outlooks.
class Reasons {
public:
    explicit Reasons(const BikeToday& bike)
        : bike_(bike) {}

    /// The three that move the day most; those that do not move it are left out. An input without which
    /// there is no day comes first. Nothing for an item without a day.
    [[nodiscard]] std::vector<Reason> of(const DueItem& item);

private:
    [[nodiscard]] std::vector<Reason> all(const DueItem& item);
    /// The median day by an outlook without the input.
    [[nodiscard]] std::optional<Date> without(usage::OutlookInput input, const NextLimits& limits);

    const BikeToday& bike_;
    std::array<std::optional<usage::Outlook>, 4> outlooks_; ///< By the input left out, as asked for.
};

} // namespace sumpbook::upkeep
