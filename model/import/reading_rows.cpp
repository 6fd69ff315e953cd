// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/entry_rows.h"

#include <fmt/format.h>

namespace sumpbook::import {
namespace {

/// "new unit" says in what the new clock counts; the first reading of it is typed in that unit.
std::optional<WrittenDistance> new_first(RowReader& reader) {
    auto first = reader.distance("new first");
    const auto typed = reader.text("new unit");
    if (!first || !typed) return first;
    const auto unit = read_distance_unit(*typed);
    if (!unit) {
        reader.doubt("new unit", "km or mi: " + unit.error().sentence);
        return std::nullopt;
    }
    first->unit = *unit;
    return first;
}

} // namespace

RowVerdict read_reading(RowReader& reader, Entry& entry) {
    const bool clock = reader.has("old last") || reader.has("new first") || reader.has("new unit");
    if (!reader.has("odometer") && !reader.has("hours") && !clock)
        return {.holds_entry = false, .reason = "it has neither an odometer reading nor hours"};
    Reading reading;
    const auto old_last = reader.distance("old last");
    const auto first = new_first(reader);
    if (old_last && first) reading.clock_change = ClockChange{.old_last = *old_last, .new_first = *first};
    if (clock && !reading.clock_change)
        reader.doubt(old_last ? "old last" : "new first",
                     "both the last reading of the old clock and the first of the new one");
    entry.body = reading;
    return {};
}

} // namespace sumpbook::import
