// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>

namespace sumpbook::testing {

inline Date day(std::string_view iso) { return parse_iso_date(iso).value(); }
inline Decimal number(std::string_view plain) { return Decimal::parse(plain).value(); }
inline WrittenDistance km(std::string_view plain) { return {number(plain), DistanceUnit::km}; }
inline WrittenDistance miles(std::string_view plain) { return {number(plain), DistanceUnit::mi}; }
inline WrittenVolume litres(std::string_view plain) { return {number(plain), VolumeUnit::l}; }
inline Money money(std::string_view plain, std::string_view code = "EUR") {
    return money_of(number(plain), Currency::from_code(code).value()).value();
}

/// Builds a bike's log entry by entry, in the order recorded; ids are k7-1, k7-2, ...
class BikeLog {
public:
    explicit BikeLog(std::string name = "Tourer") { bike.details.value.name = std::move(name); }

    /// An entry of any kind; without an odometer where `odometer` is empty.
    LogEntry& add(std::string_view date, EntryBody body, std::string_view odometer = {}) {
        LogEntry entry;
        entry.id = "k7-" + std::to_string(++count_);
        entry.value.date = day(date);
        if (!odometer.empty())
            entry.value.odometer = WrittenDistance{number(odometer), bike.details.value.odometer_unit};
        entry.value.body = std::move(body);
        const auto after = std::ranges::upper_bound(bike.log, entry.value.date, {},
                                                    [](const LogEntry& e) { return e.value.date; });
        return *bike.log.insert(after, std::move(entry));
    }
    LogEntry& reading(std::string_view date, std::string_view odometer) {
        return add(date, Reading{}, odometer);
    }
    LogEntry& work(std::string_view date, std::string_view odometer, std::vector<std::string> does) {
        auto& entry = add(date, Work{}, odometer);
        entry.value.does = std::move(does);
        return entry;
    }
    PlanItem& plan(std::string slug) {
        Versioned<PlanItem> item;
        item.id = "k7-plan-" + slug;
        item.value.slug = slug;
        item.value.label = std::move(slug);
        return bike.plan.emplace_back(std::move(item)).value;
    }

    Bike bike;

private:
    int count_ = 0;
};

} // namespace sumpbook::testing
