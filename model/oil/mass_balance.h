// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/problem.h"

namespace sumpbook::oil {

/// Metals, oil and fuel neither appear nor vanish: what is measured, less what was there before and what
/// left with lost oil, is what the engine wore off. SOURCE of every formula here: elementary mass balance
/// of a well-mixed sump, confirmed by numerical integration; oil that evaporates leaves its metal behind and
/// needs no correction, so a corrected figure is one end of a range and the measured one the other.

/// Mass of a litre of engine oil. DESIGN (numbers.md 6.3).
inline constexpr double oil_kg_per_litre = 0.87;

/// A sump that loses oil steadily and is kept full.
struct SteadySump {
    double litres = 0;
    double lost_litres_per_1000km = 0; ///< Lost and made up.
    double wear_mg_per_1000km = 0;
    double kg_per_litre = oil_kg_per_litre;

    /// Sump volumes replaced over the distance: k = q x / V.
    [[nodiscard]] double turnovers(double thousand_km) const;
    /// Metal after the distance, mg/kg, from `start_mg_kg`: C0 e^-k + w/(rho q) (1 - e^-k); w x/(rho V) on
    /// top of the start where nothing is lost.
    [[nodiscard]] double mg_kg_after(double thousand_km, double start_mg_kg) const;
    /// What it settles at, w/(rho q); without loss it never settles: infinite.
    [[nodiscard]] double settles_at_mg_kg() const;
};

/// k/(1 - e^-k), by how much make-up oil hid the wear; 1 at k = 0. k is not below 0.
[[nodiscard]] double make_up_factor(double turnovers);
/// What would have been measured without make-up oil: C0 + (C - C0 e^-k) k/(1 - e^-k), mg/kg.
[[nodiscard]] double without_make_up_mg_kg(double measured_mg_kg, double start_mg_kg, double turnovers);

/// A sump topped up in lumps of `top_up_litres`, after `lost_litres = top_up_litres` have left at the
/// concentration of their time.
struct LumpTopUp {
    double sump_litres = 0;
    double top_up_litres = 0;
    double wear_mg_per_litre_lost = 0; ///< Wear over the distance in which one litre is lost.
    double kg_per_litre = oil_kg_per_litre;

    /// mg/kg just before the top-up: C_after_previous + (w/(rho q)) ln(V/(V - a)).
    [[nodiscard]] double before_mg_kg(double after_previous_mg_kg) const;
    /// mg/kg just after it: C_before (V - a)/V.
    [[nodiscard]] double after_mg_kg(double before_mg_kg) const;
};
/// A sample drawn after a top-up, as it would have read before it: C V/(V - a). Refused unless 0 <= a < V.
[[nodiscard]] Result<double> before_top_up_mg_kg(double after_mg_kg, double sump_litres,
                                                 double top_up_litres);

/// Metal of the new fill that came with the oil left in: f x end of the last fill + (1 - f) x new oil, mg/kg.
/// f from 0 to 1.
[[nodiscard]] double carried_over_mg_kg(double left_in, double last_mg_kg, double fresh_mg_kg);
/// What equal fills settle at just before each drain: gain/(1 - f) with a new oil free of the metal.
[[nodiscard]] double settled_carry_over_mg_kg(double gain_mg_kg, double left_in);

/// Metal without the fuel that thinned it: C/(1 - d), d the share of fuel. Refused unless 0 <= d < 1.
[[nodiscard]] Result<double> without_fuel_mg_kg(double measured_mg_kg, double fuel_share);

} // namespace sumpbook::oil
