// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/dial.h"

namespace sumpbook::usage {
namespace {

std::optional<Distance> with_offset(const WrittenDistance& reading, Distance offset) {
    const auto shown = distance_of(reading);
    if (!shown) return std::nullopt;
    return *shown + offset;
}

} // namespace

void Dials::change(const Date& date, const ClockChange& clock_change) {
    const auto last_true = true_distance(clock_change.old_last);
    const auto first_shown = distance_of(clock_change.new_first);
    if (last_true && first_shown) dials_.push_back({date, *last_true - *first_shown});
}

std::optional<Distance> Dials::true_distance(const WrittenDistance& reading) const {
    return with_offset(reading, dials_.empty() ? Distance{} : dials_.back().offset);
}

std::optional<Distance> Dials::true_distance(const WrittenDistance& reading, const Date& date) const {
    Distance offset;
    for (const auto& dial : dials_) {
        if (dial.since < date) offset = dial.offset;
    }
    return with_offset(reading, offset);
}

Distance Dials::shown_at(Distance true_distance) const {
    return dials_.empty() ? true_distance : true_distance - dials_.back().offset;
}

} // namespace sumpbook::usage
