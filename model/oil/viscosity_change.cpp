// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/viscosity_change.h"

namespace sumpbook::oil {
namespace {

/// used x 100 - new x (100 + limit); its sign is that of change - limit.
Result<Decimal> excess(const Decimal& fresh, const Decimal& used, const Decimal& limit) {
    const auto wanted =
        add(Decimal{100}, limit).and_then([&](Decimal share) { return multiply(fresh, share); });
    const auto found = multiply(used, Decimal{100});
    if (!wanted) return pass_on(wanted.error());
    if (!found) return pass_on(found.error());
    return subtract(*found, *wanted);
}

} // namespace

Result<double> viscosity_change_percent(const Decimal& new_mm2_s, const Decimal& used_mm2_s) {
    if (new_mm2_s <= Decimal{0}) return refuse("The viscosity of the new oil must be above 0.");
    return (used_mm2_s.to_double() - new_mm2_s.to_double()) / new_mm2_s.to_double() * 100;
}

std::strong_ordering compare_viscosity_change(const Decimal& new_mm2_s, const Decimal& used_mm2_s,
                                              const Decimal& limit_percent) {
    if (const auto difference = excess(new_mm2_s, used_mm2_s, limit_percent))
        return *difference <=> Decimal{0};
    // past 18 digits there is no exact product; figures that long are not measured ones
    const double share = 1 + limit_percent.to_double() / 100;
    const double difference = used_mm2_s.to_double() - new_mm2_s.to_double() * share;
    if (difference == 0) return std::strong_ordering::equal;
    return difference < 0 ? std::strong_ordering::less : std::strong_ordering::greater;
}

} // namespace sumpbook::oil
