// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/consumption.h"

namespace sumpbook {
namespace {

constexpr double km_per_mi = 1.609344;
constexpr double litres_per_us_gal = 3.785411784;
constexpr double litres_per_imp_gal = 4.54609;
/// 235.214583... and 282.480936...: L/100 km times mpg.
constexpr double us_factor = 100 * litres_per_us_gal / km_per_mi;
constexpr double imp_factor = 100 * litres_per_imp_gal / km_per_mi;

/// Each unit is either L/100 km itself or a constant divided by it, so one function serves both ways.
double converted(double value, ConsumptionUnit unit) {
    switch (unit) {
    case ConsumptionUnit::l_per_100km:
        return value;
    case ConsumptionUnit::km_per_l:
        return 100 / value;
    case ConsumptionUnit::mpg_us:
        return us_factor / value;
    case ConsumptionUnit::mpg_imp:
        return imp_factor / value;
    }
    return value;
}

} // namespace

double Consumption::in(ConsumptionUnit unit) const { return converted(litres_per_100km, unit); }

Result<Consumption> consumption_of(Volume fuel, Distance over) {
    if (over <= Distance{}) return refuse("Consumption needs a distance above 0.");
    if (fuel <= Volume{}) return refuse("Consumption needs an amount of fuel above 0.");
    return Consumption{fuel.litres() / over.km() * 100};
}

Result<Consumption> consumption_of(const Written<ConsumptionUnit>& written) {
    if (written.number <= Decimal{0}) return refuse("Consumption must be above 0.");
    return Consumption{converted(written.number.to_double(), written.unit)};
}

} // namespace sumpbook
