// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/cost/forecast.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

#include <optional>
#include <string>

namespace sumpbook::compose {

/// What the lines of a forecast are.
enum class ForecastBy { month, year, category, bike };
/// "month", "year", "category", "bike".
[[nodiscard]] std::string_view slug(ForecastBy by);

/// A forecast of costs, ready to be shown.
struct ForecastReport {
    const cost::ForecastRun& run;
    const cost::CostForecast& forecast; ///< Of the run.
    ForecastBy by = ForecastBy::month;
    std::optional<Money> budget; ///< For the next 12 months, in the currency of the run.
    GarageSettings settings;     ///< For the units shown.
};

/// {"schema": 1, "currency": ..., "next_12_months": {...}, "items": [...], "basis": [...], ...}: `items` by
/// the group asked for, `basis` what the answer rests on, by bike.
[[nodiscard]] document::Value forecast_json(const ForecastReport& report);
/// The plain answer and a table.
[[nodiscard]] document::Document forecast_text(const ForecastReport& report);
/// The same and every assumption with its number.
[[nodiscard]] document::Document forecast_why_text(const ForecastReport& report);

/// "1 480 EUR": rounded half to even to whole units of the currency; for foretold amounts.
[[nodiscard]] std::string whole_words(std::int64_t minor, const Currency& currency);
/// "620 to 1 480 EUR"; one amount where both are the same.
[[nodiscard]] std::string range_words(const cost::Spread& spread, const Currency& currency);
/// "about 12 in 100", "less than 1 in 100".
[[nodiscard]] std::string chance_words(double chance);

} // namespace sumpbook::compose
