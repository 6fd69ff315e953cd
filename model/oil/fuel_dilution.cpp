// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/fuel_dilution.h"

#include <algorithm>
#include <cmath>

namespace sumpbook::oil {
namespace {

std::optional<double> index_of(BlendRule rule, double v) {
    if (!(v > 0) || !std::isfinite(v)) return std::nullopt;
    switch (rule) {
    case BlendRule::refutas:
        return v + 0.8 > 1 ? std::optional(std::log(std::log(v + 0.8))) : std::nullopt;
    case BlendRule::double_log:
        return v + 0.7 > 1 ? std::optional(std::log10(std::log10(v + 0.7))) : std::nullopt;
    case BlendRule::arrhenius:
        return std::log(v);
    }
    return std::nullopt;
}

double viscosity_of(BlendRule rule, double index) {
    switch (rule) {
    case BlendRule::refutas:
        return std::exp(std::exp(index)) - 0.8;
    case BlendRule::double_log:
        return std::pow(10, std::pow(10, index)) - 0.7;
    case BlendRule::arrhenius:
        return std::exp(index);
    }
    return index;
}

std::optional<double> percent(std::optional<double> share) {
    return share ? std::optional(*share * 100) : std::nullopt;
}

} // namespace

std::optional<double> blended_mm2_s(BlendRule rule, double oil_mm2_s, double fuel_mm2_s, double fuel_share) {
    const auto oil = index_of(rule, oil_mm2_s);
    const auto fuel = index_of(rule, fuel_mm2_s);
    if (!oil || !fuel) return std::nullopt;
    return viscosity_of(rule, *oil * (1 - fuel_share) + *fuel * fuel_share);
}

std::optional<double> fuel_share(BlendRule rule, double new_mm2_s, double used_mm2_s, double fuel_mm2_s) {
    const auto fresh = index_of(rule, new_mm2_s);
    const auto used = index_of(rule, used_mm2_s);
    const auto fuel = index_of(rule, fuel_mm2_s);
    if (!fresh || !used || !fuel || *fresh <= *fuel || *used < *fuel) return std::nullopt;
    return std::max(0.0, (*fresh - *used) / (*fresh - *fuel));
}

double petrol_mm2_s(ViscosityAt at) { return at == ViscosityAt::celsius_100 ? 0.35 : 0.5; }

Result<FuelFromViscosity> petrol_from_viscosity(double new_mm2_s, double used_mm2_s, ViscosityAt at) {
    const double petrol = petrol_mm2_s(at);
    if (!std::isfinite(new_mm2_s) || !std::isfinite(used_mm2_s) || !(used_mm2_s > 0)) {
        return refuse("A viscosity must be above 0.");
    }
    if (!(new_mm2_s > petrol)) return refuse("The new oil must be thicker than petrol.");
    const auto share = [&](BlendRule rule) {
        return percent(fuel_share(rule, new_mm2_s, used_mm2_s, petrol));
    };
    FuelFromViscosity fuel{share(BlendRule::refutas), share(BlendRule::double_log),
                           share(BlendRule::arrhenius), 0, 0};
    bool first = true;
    for (const auto& figure : {fuel.refutas_percent, fuel.double_log_percent, fuel.arrhenius_percent}) {
        if (!figure) continue;
        fuel.lowest_percent = first ? *figure : std::min(fuel.lowest_percent, *figure);
        fuel.highest_percent = first ? *figure : std::max(fuel.highest_percent, *figure);
        first = false;
    }
    if (first) return refuse("An oil thinner than petrol: one of the two viscosities must be wrong.");
    return fuel;
}

} // namespace sumpbook::oil
