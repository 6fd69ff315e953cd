// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/running_price.h"

#include "model/cost/exchange.h"
#include "model/cost/oil_by_the_litre.h"
#include "model/stats/median.h"

namespace sumpbook::cost {
namespace {

constexpr std::size_t prices_looked_at = 3;

std::optional<double> per_litre(const Money& paid, double litres, const Date& date,
                                const GarageSettings& settings) {
    const auto own = converted(paid, settings.currency, date, settings);
    if (!own || own->minor <= 0 || litres <= 0) return std::nullopt;
    return static_cast<double>(own->minor) / litres;
}

double litres_of(const std::optional<WrittenVolume>& written) {
    const auto volume = written ? volume_of(*written) : refuse("no volume");
    return volume ? volume->litres() : 0;
}

/// The price as on the pump for so many litres that the rounding to cents does not show.
std::optional<double> pump_price(const Fuel& fuel, const Date& date, const GarageSettings& settings) {
    constexpr int litres = 1000;
    if (!fuel.price) return std::nullopt;
    const auto paid = price_of(*fuel.price, WrittenVolume{Decimal{litres}, VolumeUnit::l});
    return paid ? per_litre(*paid, litres, date, settings) : std::nullopt;
}

std::optional<double> fuel_per_litre(const Entry& entry, const GarageSettings& settings) {
    const auto* fuel = std::get_if<Fuel>(&entry.body);
    if (fuel == nullptr) return std::nullopt;
    if (entry.paid) return per_litre(*entry.paid, litres_of(fuel->volume), entry.date, settings);
    return pump_price(*fuel, entry.date, settings);
}

std::optional<double> oil_per_litre(const Entry& entry, const GarageSettings& settings) {
    if (!entry.paid) return std::nullopt;
    double litres = 0;
    if (const auto* top_up = std::get_if<TopUp>(&entry.body)) litres = litres_of(top_up->volume);
    const auto* cost = std::get_if<Cost>(&entry.body);
    if (cost != nullptr && cost->category == "oil" && !cost->valuation && cost->text) {
        if (const auto can = volume_named_in(*cost->text)) litres = can->litres();
    }
    return per_litre(*entry.paid, litres, entry.date, settings);
}

std::optional<RunningPrice> latest(const Bike& bike, const GarageSettings& settings,
                                   std::optional<double> price_in(const Entry&, const GarageSettings&)) {
    RunningPrice running;
    for (const auto& entry : bike.log) {
        if (const auto price = price_in(entry.value, settings))
            running.bought.push_back({entry.value.date, *price});
    }
    if (running.bought.empty()) return std::nullopt;
    if (running.bought.size() > prices_looked_at)
        running.bought.erase(running.bought.begin(), running.bought.end() - prices_looked_at);
    std::vector<double> prices;
    for (const auto& bought : running.bought)
        prices.push_back(bought.minor_per_litre);
    running.minor_per_litre = *stats::median(prices);
    return running;
}

} // namespace

std::optional<RunningPrice> fuel_price(const Bike& bike, const GarageSettings& settings) {
    return latest(bike, settings, fuel_per_litre);
}

std::optional<RunningPrice> oil_price(const Bike& bike, const GarageSettings& settings) {
    return latest(bike, settings, oil_per_litre);
}

} // namespace sumpbook::cost
