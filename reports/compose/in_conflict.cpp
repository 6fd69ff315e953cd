// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/in_conflict.h"

namespace sumpbook::compose {
namespace {

class Collector {
public:
    template <class T>
    void look_at(const Versioned<T>& thing, const std::string& what) {
        if (!thing.in_conflict()) return;
        found_.push_back({bike_, thing.id, bike_.empty() ? what : what + " of " + bike_});
    }

    void look_at(const Bike& bike) {
        bike_ = bike.details.value.name;
        look_at(bike.details, "the details");
        for (const auto& value : bike.card)
            look_at(value, "a value of the data card (" + value.id + ")");
        for (const auto& item : bike.plan)
            look_at(item, "the plan item " + item.value.slug);
        for (const auto& baseline : bike.baselines)
            look_at(baseline, "the baseline of " + baseline.value.slug);
        for (const auto& entry : bike.log)
            look_at(entry, "the entry " + entry.id);
    }

    [[nodiscard]] std::vector<InConflict> found() && { return std::move(found_); }

private:
    std::string bike_;
    std::vector<InConflict> found_;
};

} // namespace

std::vector<InConflict> in_conflict(const Garage& garage) {
    Collector collector;
    if (garage.settings) collector.look_at(*garage.settings, "the settings");
    for (const auto& bike : garage.bikes)
        collector.look_at(bike);
    return std::move(collector).found();
}

} // namespace sumpbook::compose
