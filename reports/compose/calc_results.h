// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/tyre_date.h"
#include "model/garage/vin.h"
#include "model/oil/sae_grade.h"
#include "model/oil/viscosity_index.h"
#include "model/quantity/consumption.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

#include <optional>
#include <string>

namespace sumpbook::compose {

// The answers of the calculators, each for machines and for people.

struct CalcAnswer {
    document::Value json;
    document::Document text;
};

[[nodiscard]] CalcAnswer viscosity_index_answer(const Decimal& kv40_mm2_s, const Decimal& kv100_mm2_s,
                                                const oil::ViscosityIndex& index);
[[nodiscard]] CalcAnswer grade_answer(const Decimal& kv100_mm2_s, const std::optional<Decimal>& hths_mpa_s,
                                      const oil::HotGrade& found);
[[nodiscard]] CalcAnswer viscosity_at_answer(double celsius, double mm2_s, bool extrapolated);
[[nodiscard]] CalcAnswer vin_answer(const std::string& typed, const VinFindings& findings);
[[nodiscard]] CalcAnswer tyre_date_answer(const std::string& code, const TyreDate& made, const Date& today);
[[nodiscard]] CalcAnswer consumption_answer(const Consumption& consumption);

} // namespace sumpbook::compose
