// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/oil/limit_rows.h"
#include "model/oil/oil_trend.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::compose {

/// One item a bike, compartment and quantity: bike, compartment, quantity, unit, of, word, points and what
/// stands behind the word.
[[nodiscard]] document::Value oil_trend_json(const std::vector<oil::QuantityTrend>& trends);

/// What "measured" and "corrected" wear stand for, in one paragraph.
extern const std::string_view wear_columns_explained;
/// "steady", "rising", "no trend, but the latest is out of line", "too few to say".
[[nodiscard]] std::string trend_words(const oil::QuantityTrend& trend);
/// What rises, falls or is out of line from fill to fill, of one bike and compartment: one or more sentences.
[[nodiscard]] std::string movers_words(const std::vector<const oil::QuantityTrend*>& trends);

/// Where every quantity is going, in plain words, a table a bike; no p-value.
[[nodiscard]] document::Document oil_trend_text(const std::vector<oil::QuantityTrend>& trends);
/// The same with every sample of each quantity, and with `why` the figures behind the word.
[[nodiscard]] document::Document oil_trend_details_text(const std::vector<oil::QuantityTrend>& trends,
                                                        bool why);

} // namespace sumpbook::compose
