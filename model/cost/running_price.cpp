// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/running_price.h"

#include "model/cost/exchange.h"
#include "model/cost/oil_by_the_litre.h"
#include "model/cost/spent.h"
#include "model/stats/median.h"

#include <cmath>
#include <utility>

namespace sumpbook::cost {
namespace {

constexpr std::size_t prices_looked_at = 3;

/// Money paid for so many litres.
struct Bought {
    Money paid;
    double litres = 0;
};

double litres_of(const std::optional<WrittenVolume>& written) {
    const auto volume = written ? volume_of(*written) : refuse("no volume");
    return volume ? volume->litres() : 0;
}

/// The price as on the pump for so many litres that the rounding to cents does not show.
std::optional<Bought> at_the_pump(const Fuel& fuel) {
    constexpr int litres = 1000;
    if (!fuel.price) return std::nullopt;
    const auto paid = price_of(*fuel.price, WrittenVolume{Decimal{litres}, VolumeUnit::l});
    return paid ? std::optional(Bought{*paid, litres}) : std::nullopt;
}

std::optional<Bought> fuel_bought(const Entry& entry) {
    const auto* fuel = std::get_if<Fuel>(&entry.body);
    if (fuel == nullptr) return std::nullopt;
    return entry.paid ? Bought{*entry.paid, litres_of(fuel->volume)} : at_the_pump(*fuel);
}

std::optional<Bought> oil_bought(const Entry& entry) {
    if (!entry.paid) return std::nullopt;
    double litres = 0;
    if (const auto* top_up = std::get_if<TopUp>(&entry.body)) litres = litres_of(top_up->volume);
    const auto* cost = std::get_if<Cost>(&entry.body);
    if (cost != nullptr && cost->category == "oil" && !cost->valuation && cost->text) {
        if (const auto can = volume_named_in(*cost->text)) litres = can->litres();
    }
    return Bought{*entry.paid, litres};
}

/// What the owner paid; of a stop without a volume the price of a litre.
Money paid_in(const Entry& entry, const Bought& bought) {
    const auto amounts = money_of_entry(entry);
    if (!amounts.empty()) return amounts.front();
    return {std::llround(static_cast<double>(bought.paid.minor) / bought.litres), bought.paid.currency};
}

/// The middle of the last few; absent without any.
std::optional<RunningPrice> running_price(std::vector<LitrePrice> bought) {
    if (bought.empty()) return std::nullopt;
    if (bought.size() > prices_looked_at) bought.erase(bought.begin(), bought.end() - prices_looked_at);
    std::vector<double> prices;
    for (const auto& one : bought)
        prices.push_back(one.minor_per_litre);
    return RunningPrice{*stats::median(prices), std::move(bought)};
}

FoundPrice latest(const Bike& bike, const GarageSettings& settings,
                  std::optional<Bought> bought_in(const Entry&)) {
    FoundPrice found;
    std::vector<LitrePrice> prices;
    for (const auto& entry : bike.log) {
        const auto bought = bought_in(entry.value);
        if (!bought || bought->litres <= 0 || bought->paid.minor <= 0) continue;
        const Date& date = entry.value.date;
        const auto own = converted(bought->paid, settings.currency, date, settings);
        if (!own)
            found.without_rate = paid_in(entry.value, *bought);
        else if (own->minor > 0)
            prices.push_back({date, static_cast<double>(own->minor) / bought->litres});
    }
    found.price = running_price(std::move(prices));
    return found;
}

} // namespace

FoundPrice fuel_price(const Bike& bike, const GarageSettings& settings) {
    return latest(bike, settings, fuel_bought);
}

FoundPrice oil_price(const Bike& bike, const GarageSettings& settings) {
    return latest(bike, settings, oil_bought);
}

} // namespace sumpbook::cost
