// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/oil/assess.h"
#include "model/oil/quantities.h"
#include "model/oil/words.h"

#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace sumpbook::oil::testing {

inline Decimal number(std::string_view text) { return Decimal::parse(text).value(); }

inline Date day(std::string_view iso) { return parse_iso_date(iso).value(); }

/// "12", "<2", "detected" or "not detected" of a quantity.
inline SampleValue value(const std::string& quantity, std::string_view text, std::string unit = {},
                         std::optional<std::string> method = {}) {
    SampleValue made;
    made.quantity = quantity;
    made.unit = unit.empty() ? find_quantity(quantity)->unit : std::move(unit);
    made.method = std::move(method);
    if (text == "detected")
        made.state = ValueState::detected;
    else if (text == "not detected")
        made.state = ValueState::not_detected;
    else if (text.starts_with('<')) {
        made.state = ValueState::below;
        made.number = number(text.substr(1));
    } else
        made.number = number(text);
    return made;
}

/// A garage with one petrol bike, filled entry by entry in the order of dates.
class OilGarage {
public:
    OilGarage() {
        Bike bike;
        bike.details.value.name = "Heron";
        bike.details.value.fuel = FuelType::petrol;
        garage.bikes.push_back(std::move(bike));
    }

    Bike& bike() { return garage.bikes.front(); }
    BikeDetails& details() { return bike().details.value; }

    LogEntry& add(std::string_view date, EntryBody body, std::optional<int> odometer_km = std::nullopt) {
        LogEntry entry;
        entry.id = "k7-" + std::to_string(bike().log.size() + 1);
        entry.value.date = day(date);
        entry.value.body = std::move(body);
        if (odometer_km) entry.value.odometer = WrittenDistance{Decimal{*odometer_km}, DistanceUnit::km};
        bike().log.push_back(std::move(entry));
        return bike().log.back();
    }

    /// Fills the engine; the new oil's sample is that of `oil`, where one was added.
    LogEntry& fill(std::string_view date, std::optional<std::string> grade = "10W-40",
                   std::string oil = "Marsh 4T", std::optional<int> odometer_km = std::nullopt) {
        OilChange change;
        change.sae_grade = std::move(grade);
        change.oil_name = std::move(oil);
        return add(date, change, odometer_km);
    }

    LogEntry& new_oil(std::string_view date, std::vector<SampleValue> values, std::string oil = "Marsh 4T") {
        Sample sample;
        sample.use = OilUse::virgin;
        sample.oil_name = std::move(oil);
        sample.number = "N" + std::to_string(bike().log.size() + 1);
        sample.values = std::move(values);
        return add(date, sample);
    }

    LogEntry& draw(std::string_view date, std::vector<SampleValue> values,
                   std::optional<int> odometer_km = std::nullopt) {
        Sample sample;
        sample.number = "S" + std::to_string(bike().log.size() + 1);
        sample.values = std::move(values);
        return add(date, sample, odometer_km);
    }

    /// The latest sample by a profile.
    [[nodiscard]] SampleAssessment assess(const Profile& profile = default_profile()) {
        return assess_samples(OilRecord::of(garage, bike()), profile).back();
    }

    Garage garage;
};

/// The value of a quantity in an assessment; throws where it has none.
inline const RatedValue& rated(const SampleAssessment& assessment, std::string_view quantity) {
    for (const RatedValue& each : assessment.values) {
        if (each.written.quantity == quantity) return each;
    }
    throw std::logic_error("no value of " + std::string(quantity));
}

/// Values of every quantity a clean sample needs, each well within the default profile's limits.
inline std::vector<SampleValue> clean_values() {
    return {value("Fe", "12"),     value("Al", "4"),        value("Cu", "5"),
            value("Cr", "1"),      value("Pb", "<2"),       value("Si", "6"),
            value("fuel", "<0.5"), value("water", "<0.05"), value("kv100", "14.0")};
}

/// The same with some values put in their place or added.
inline std::vector<SampleValue> clean_values_but(const std::vector<SampleValue>& changes) {
    auto values = clean_values();
    for (const SampleValue& change : changes) {
        std::erase_if(values, [&](const SampleValue& each) { return each.quantity == change.quantity; });
        values.push_back(change);
    }
    return values;
}

} // namespace sumpbook::oil::testing
