// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/mass_balance.h"

#include <cmath>
#include <limits>

namespace sumpbook::oil {

double SteadySump::turnovers(double thousand_km) const {
    return lost_litres_per_1000km * thousand_km / litres;
}

double SteadySump::mg_kg_after(double thousand_km, double start_mg_kg) const {
    const double k = turnovers(thousand_km);
    const double worn = wear_mg_per_1000km * thousand_km / (kg_per_litre * litres);
    return start_mg_kg * std::exp(-k) + worn / make_up_factor(k);
}

double SteadySump::settles_at_mg_kg() const {
    if (lost_litres_per_1000km <= 0) return std::numeric_limits<double>::infinity();
    return wear_mg_per_1000km / (kg_per_litre * lost_litres_per_1000km);
}

double make_up_factor(double turnovers) { return turnovers == 0 ? 1 : turnovers / -std::expm1(-turnovers); }

double without_make_up_mg_kg(double measured_mg_kg, double start_mg_kg, double turnovers) {
    return start_mg_kg + (measured_mg_kg - start_mg_kg * std::exp(-turnovers)) * make_up_factor(turnovers);
}

double LumpTopUp::before_mg_kg(double after_previous_mg_kg) const {
    return after_previous_mg_kg +
           wear_mg_per_litre_lost / kg_per_litre * std::log(sump_litres / (sump_litres - top_up_litres));
}

double LumpTopUp::after_mg_kg(double before_mg_kg) const {
    return before_mg_kg * (sump_litres - top_up_litres) / sump_litres;
}

Result<double> before_top_up_mg_kg(double after_mg_kg, double sump_litres, double top_up_litres) {
    if (!(top_up_litres >= 0 && top_up_litres < sump_litres))
        return refuse("A top-up must be smaller than the sump.");
    return after_mg_kg * sump_litres / (sump_litres - top_up_litres);
}

double carried_over_mg_kg(double left_in, double last_mg_kg, double fresh_mg_kg) {
    return left_in * last_mg_kg + (1 - left_in) * fresh_mg_kg;
}

double settled_carry_over_mg_kg(double gain_mg_kg, double left_in) { return gain_mg_kg / (1 - left_in); }

Result<double> without_fuel_mg_kg(double measured_mg_kg, double fuel_share) {
    if (!(fuel_share >= 0 && fuel_share < 1)) return refuse("A share of fuel lies from 0 to below 1.");
    return measured_mg_kg / (1 - fuel_share);
}

} // namespace sumpbook::oil
