// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/sae_grade_shear.h"

#include "embedded/sae_grade_shear_csv.h"
#include "model/quantity/data_table.h"

namespace sumpbook::oil {

std::optional<Decimal> after_shear_floor_mm2_s(const SaeGrade& grade) {
    const auto band = band_of(grade);
    if (!band) return std::nullopt;
    if (grade.winter && grade.hot) {
        for (const DataRow& row : read_data_table(data::sae_grade_shear_csv())) {
            if (row.required("hot") == Decimal{*grade.hot}) return row.required("kv100_min");
        }
    }
    return band->from_mm2_s;
}

} // namespace sumpbook::oil
