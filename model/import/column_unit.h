// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/import/fields.h"
#include "model/quantity/currency.h"
#include "model/quantity/units.h"

#include <optional>
#include <string>
#include <string_view>

namespace sumpbook::import {

/// In what the numbers of a column stand. Which members have a meaning depends on the field's type; absent
/// means that the file does not say.
struct ColumnUnit {
    std::optional<DistanceUnit> distance;
    std::optional<VolumeUnit> volume;    ///< Of a volume, or the unit that a price is for.
    std::optional<Currency> currency;    ///< Of money and prices.
    std::optional<std::string> quantity; ///< Of a sample quantity: "mg/kg".
    std::optional<std::string> method;   ///< Of a sample quantity: "ASTM D2896".
};

/// What a piece of a heading says about the unit: (US gal), [mi], (GBP), EUR/L, (ASTM D2896), (ppm). The
/// words it adds to what is known are put into `unit`; text that says nothing of the kind is refused, and
/// so is a unit with two meanings ("gallons"), with the question.
[[nodiscard]] Result<void> add_unit(ColumnUnit& unit, const Field& field, std::string_view text,
                                    const Currency& garage);

/// True for gallons, pints and quarts without their country.
[[nodiscard]] bool is_unclear_volume(std::string_view text);
/// The unit of a sample quantity when neither heading nor cell names one, from sample_quantities.csv.
[[nodiscard]] std::string usual_unit_of(std::string_view quantity);
/// "US gal", "EUR per L", "mg KOH/g, ASTM D2896"; empty where nothing is known.
[[nodiscard]] std::string text_of(const ColumnUnit& unit, FieldType type);

} // namespace sumpbook::import
