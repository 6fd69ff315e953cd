// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/entry_parts.h"
#include "model/quantity/dates.h"
#include "model/quantity/distance.h"

#include <optional>
#include <vector>

namespace sumpbook::usage {

/// The dials a bike has had, one after the other. Turns what a dial shows into the true distance of the
/// bike: true distance of the last reading of the old dial + (reading - first reading of the new one)
/// (numbers.md 1.1). Before any change the dial shows the true distance.
class Dials {
public:
    /// From now on readings are of the new dial. Where the change cannot be computed (a number past the
    /// range of Distance) nothing changes.
    void change(const Date& date, const ClockChange& clock_change);

    /// True distance of a reading of the dial in use now; absent where the number is past the range.
    [[nodiscard]] std::optional<Distance> true_distance(const WrittenDistance& reading) const;
    /// The same for the dial that was in use on a day; on the day of a change the old one.
    [[nodiscard]] std::optional<Distance> true_distance(const WrittenDistance& reading,
                                                        const Date& date) const;
    /// What the dial in use now shows at a true distance.
    [[nodiscard]] Distance shown_at(Distance true_distance) const;
    [[nodiscard]] bool changed() const { return !dials_.empty(); }

private:
    struct Dial {
        Date since;
        Distance offset; ///< True distance minus what the dial shows.
    };
    std::vector<Dial> dials_;
};

} // namespace sumpbook::usage
