// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/garage/currencies.h"

namespace sumpbook {
namespace {

class Found {
public:
    void add(const std::optional<Money>& money) {
        if (money) currencies.insert(money->currency);
    }
    void add(const std::vector<PartUsed>& parts) {
        for (const auto& part : parts)
            add(part.price);
    }
    void add(const Entry& entry) {
        add(entry.paid);
        if (const auto* fuel = std::get_if<Fuel>(&entry.body); fuel != nullptr && fuel->price)
            currencies.insert(fuel->price->currency);
        if (const auto* work = std::get_if<Work>(&entry.body)) {
            add(work->labour_price);
            add(work->parts);
        }
    }
    void add(const Bike& bike) {
        const auto& details = bike.details.value;
        if (details.bought) add(details.bought->price);
        if (details.sold) add(details.sold->price);
        for (const auto& item : bike.plan)
            add(item.value.estimate);
        for (const auto& entry : bike.log)
            add(entry.value);
    }

    std::set<Currency> currencies;
};

} // namespace

std::set<Currency> currencies_in(const Garage& garage) {
    Found found;
    for (const auto& bike : garage.bikes)
        found.add(bike);
    return found.currencies;
}

std::optional<GarageSettings> settings_from_amounts(const Garage& garage) {
    if (garage.settings) return std::nullopt;
    const auto currencies = currencies_in(garage);
    if (currencies.size() != 1) return std::nullopt;
    GarageSettings settings;
    settings.currency = *currencies.begin();
    return settings;
}

} // namespace sumpbook
