// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/entry_parts.h"
#include "model/quantity/distance.h"
#include "reports/document/value.h"

#include <optional>
#include <string>
#include <vector>

namespace sumpbook::compose {

// Pieces of JSON that answers about oil share.

/// A number; {"below": 2}; "detected" or "not-detected".
[[nodiscard]] document::Value amount_json(const SampleValue& value);
/// Kilometres to a tenth; null where absent.
[[nodiscard]] document::Value km_json(const std::optional<Distance>& distance);
[[nodiscard]] document::Value km_json(const std::optional<double>& distance_km);
/// A computed figure with twelve figures.
[[nodiscard]] document::Value figure_json(double number);
[[nodiscard]] document::Array texts_json(const std::vector<std::string>& texts);

} // namespace sumpbook::compose
