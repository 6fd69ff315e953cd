// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/oil_fills.h"

#include <algorithm>

namespace sumpbook::usage {
namespace {

/// Where nobody recorded the first service. DESIGN (numbers.md 2).
constexpr Distance run_in_without_service = Distance::from_whole_km(1000);

/// Turns levels between the marks (0 lower, 1 upper) into litres below the upper one.
class Marks {
public:
    explicit Marks(const BikeDetails& bike) {
        if (!bike.between_level_marks) return;
        if (const auto volume = volume_of(*bike.between_level_marks)) litres_ = volume->litres();
    }
    [[nodiscard]] std::optional<double> litres_below(const std::optional<Decimal>& level) const {
        if (!level) return std::nullopt;
        if (*level == Decimal(1)) return 0.0;
        if (!litres_) return std::nullopt;
        return (1 - level->to_double()) * *litres_;
    }

private:
    std::optional<double> litres_;
};

OilEvent event_of(const LogEntry& entry, const OdometerSeries& odometer) {
    OilEvent event;
    event.entry_id = entry.id;
    event.date = entry.value.date;
    event.distance = odometer.at_entry(entry);
    return event;
}

OilEvent refill(const LogEntry& entry, const OilChange& change, const OdometerSeries& odometer,
                const Marks& marks) {
    OilEvent event = event_of(entry, odometer);
    event.litres_below_mark = change.level_after ? marks.litres_below(change.level_after) : 0.0;
    return event;
}

void put_top_up(OilFill& fill, const LogEntry& entry, const TopUp& top_up, const OdometerSeries& odometer,
                const Marks& marks) {
    OilEvent event = event_of(entry, odometer);
    if (const auto before = marks.litres_below(top_up.level_before)) {
        event.litres_below_mark = before;
        fill.events.push_back(event);
    }
    const auto volume = top_up.volume ? volume_of(*top_up.volume) : refuse("no volume");
    if (volume) event.added = *volume;
    event.volume_unknown = !volume;
    event.litres_below_mark = marks.litres_below(top_up.level_after);
    fill.events.push_back(event);
}

OilFill fill_from(const LogEntry& entry) {
    OilFill fill;
    fill.from = entry.value.date;
    return fill;
}

const LogEntry* first_service(const Bike& bike) {
    const auto names_it = [](const LogEntry& entry) {
        return std::ranges::find(entry.value.does, "first-service") != entry.value.does.end();
    };
    const auto found = std::ranges::find_if(bike.log, names_it);
    return found == bike.log.end() ? nullptr : &*found;
}

/// Looked at where the fill begins: its first event.
bool begins_in_run_in(const OilEvent& event, const LogEntry* service) {
    if (service != nullptr) return event.date < service->value.date; // the service's own refill is past it
    return event.distance && *event.distance < run_in_without_service;
}

} // namespace

std::vector<OilFill> oil_fills(const Bike& bike, const OdometerSeries& odometer,
                               std::string_view compartment) {
    const Marks marks(bike.details.value);
    const LogEntry* const service = first_service(bike);
    std::vector<OilFill> fills;
    for (const auto& entry : bike.log) {
        const auto* change = std::get_if<OilChange>(&entry.value.body);
        const auto* top_up = std::get_if<TopUp>(&entry.value.body);
        const bool here = (change != nullptr && change->compartment == compartment) ||
                          (top_up != nullptr && top_up->compartment == compartment);
        if (!here) continue;
        const bool begins = change != nullptr || fills.empty();
        if (change != nullptr && !fills.empty()) fills.back().until = entry.value.date;
        if (begins) fills.push_back(fill_from(entry));
        if (change != nullptr) {
            fills.back().oil_change_id = entry.id;
            fills.back().oil_name = change->oil_name;
            fills.back().events.push_back(refill(entry, *change, odometer, marks));
        } else {
            put_top_up(fills.back(), entry, *top_up, odometer, marks);
        }
        if (begins) fills.back().run_in = begins_in_run_in(fills.back().events.front(), service);
    }
    return fills;
}

} // namespace sumpbook::usage
