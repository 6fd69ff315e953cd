// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/calc_figures.h"

#include <algorithm>
#include <cmath>

namespace sumpbook::compose {

Decimal without_trailing_zeros(Decimal number) {
    while (number.scale() > 0 && number.coefficient() % 10 == 0)
        number = Decimal{number.coefficient() / 10, number.scale() - 1};
    return number;
}

std::optional<Decimal> figures(double number, int count) {
    if (!std::isfinite(number) || std::abs(number) >= 1e17) return std::nullopt;
    const int before_point = number == 0 ? 1 : static_cast<int>(std::floor(std::log10(std::abs(number)))) + 1;
    const int scale = std::clamp(count - before_point, 0, Decimal::max_scale);
    return without_trailing_zeros(decimal_from_double(number, scale));
}

} // namespace sumpbook::compose
