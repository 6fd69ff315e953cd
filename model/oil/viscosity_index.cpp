// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/viscosity_index.h"

#include "embedded/viscosity_index_table_csv.h"
#include "model/quantity/data_table.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace sumpbook::oil {
namespace {

struct TableRow {
    double y;
    ReferenceOils reference;
};

const std::vector<TableRow>& table_1() {
    static const std::vector<TableRow> table = [] {
        std::vector<TableRow> rows;
        for (const DataRow& row : read_data_table(data::viscosity_index_table_csv())) {
            rows.push_back({row.required("y_mm2_s").to_double(),
                            {row.required("l_mm2_s").to_double(), row.required("h_mm2_s").to_double()}});
        }
        return rows;
    }();
    return table;
}

ReferenceOils interpolated(double y) {
    const auto& table = table_1();
    const auto above = std::lower_bound(table.begin(), table.end(), y,
                                        [](const TableRow& row, double value) { return row.y < value; });
    if (above->y == y) return above->reference;
    const auto below = above - 1;
    const double share = (y - below->y) / (above->y - below->y);
    return {std::lerp(below->reference.l_mm2_s, above->reference.l_mm2_s, share),
            std::lerp(below->reference.h_mm2_s, above->reference.h_mm2_s, share)};
}

double procedure_a(double u, const ReferenceOils& oils) {
    return (oils.l_mm2_s - u) / (oils.l_mm2_s - oils.h_mm2_s) * 100;
}

double procedure_b(double u, double y, const ReferenceOils& oils) {
    const double n = std::log10(oils.h_mm2_s / u) / std::log10(y);
    return (std::pow(10, n) - 1) / 0.00715 + 100;
}

/// Nine decimals first, so that 92.5 computed as 92.49999999999999 still counts as a half.
int rounded_half_to_even(double index) {
    return static_cast<int>(rounded(decimal_from_double(index, 9), 0).coefficient());
}

} // namespace

Result<ReferenceOils> reference_oils(double kv100_mm2_s) {
    const double y = kv100_mm2_s;
    if (!(y >= table_1().front().y) || !std::isfinite(y)) {
        return refuse("The viscosity index is not defined for oils below 2.0 mm2/s at 100 C (ASTM D2270).");
    }
    if (y <= table_1().back().y) return interpolated(y);
    return ReferenceOils{0.8353 * y * y + 14.67 * y - 216, 0.1684 * y * y + 11.85 * y - 97};
}

Result<ViscosityIndex> viscosity_index(double kv40_mm2_s, double kv100_mm2_s) {
    const auto oils = reference_oils(kv100_mm2_s);
    if (!oils) return pass_on(oils.error());
    if (!(kv40_mm2_s > kv100_mm2_s) || !std::isfinite(kv40_mm2_s)) {
        return refuse(
            "Oil thins as it warms: the viscosity at 40 C must be above the one at 100 C. Are the two "
            "figures the wrong way round?");
    }
    const double exact = kv40_mm2_s >= oils->h_mm2_s ? procedure_a(kv40_mm2_s, *oils)
                                                     : procedure_b(kv40_mm2_s, kv100_mm2_s, *oils);
    if (!(std::abs(exact) < 1e6)) return refuse("These two viscosities do not belong to one oil.");
    return ViscosityIndex{exact, rounded_half_to_even(exact), *oils};
}

} // namespace sumpbook::oil
