// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/precision.h"

#include "embedded/precision_csv.h"
#include "model/quantity/data_table.h"

#include <algorithm>
#include <cmath>

namespace sumpbook::oil {
namespace {

const std::vector<DataRow>& rows() {
    static const std::vector<DataRow> all = read_data_table(data::precision_csv());
    return all;
}

double number(const DataRow& row, std::string_view column) { return row.required(column).to_double(); }

} // namespace

std::optional<Precision> element_precision(std::string_view element, double mg_kg) {
    const auto row = std::find_if(rows().begin(), rows().end(),
                                  [&](const DataRow& each) { return each["element"] == element; });
    if (row == rows().end()) return std::nullopt;
    const double x = std::clamp(mg_kg, number(*row, "range_min_mg_kg"), number(*row, "range_max_mg_kg"));
    return Precision{number(*row, "r_coefficient") * std::pow(x, number(*row, "r_exponent")),
                     number(*row, "R_coefficient") * std::pow(x, number(*row, "R_exponent"))};
}

Precision acid_number_precision(double mg_koh_g) { return {0.117 * mg_koh_g, 0.44 * mg_koh_g}; }

std::optional<Precision> base_number_precision(const std::optional<std::string>& method) {
    if (method != "colour-indicator") return std::nullopt;
    return Precision{0.94, 1.91};
}

} // namespace sumpbook::oil
