// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/decimal.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::oil {

enum class QuantityGroup { wear_metal, other_metal, contaminant, additive, condition };

/// How much has to be known of the new oil before a level of this metal says anything.
enum class NewOilMatters {
    no,
    where_it_reaches, ///< Silicon: unrated only where the new oil itself is known to reach the limit.
    must_be_known,    ///< Additive metals: unrated also where the new oil's value is not known.
};

/// One thing a laboratory measures in oil. Made only from quantities.csv.
struct Quantity {
    std::string slug; ///< As recorded and printed in JSON: Fe, kv100, tbn, fuel.
    std::string name; ///< For owners: "iron", "viscosity at 100 C".
    QuantityGroup group = QuantityGroup::condition;
    std::string unit; ///< Meant where none is written; empty: a bare number.
    NewOilMatters new_oil = NewOilMatters::no;
    std::vector<std::string> other_names;
};

/// In the order they are printed.
[[nodiscard]] const std::vector<Quantity>& sample_quantities();
/// By slug, name or another name, whatever the case; null if there is none.
[[nodiscard]] const Quantity* find_quantity(std::string_view text);
/// The name for owners; what was asked for where it is no known quantity.
[[nodiscard]] std::string quantity_name(std::string_view slug);
[[nodiscard]] bool is_wear_metal(std::string_view slug);

/// The one spelling of a unit used for comparing: ppm is mg/kg, cSt mm2/s, percent %. Others stay as typed.
[[nodiscard]] std::string plain_unit(std::string_view typed);
/// The number in another unit where that is exact: % or % mass and mg/kg (1 % = 10 000 mg/kg), abs/0.1 mm
/// and abs/cm (1 = 100), and % without more beside % mass or % vol as it stands. Absent otherwise: per cent
/// by volume and by mass differ by an unknown density.
///
/// SOURCE: the decimal prefixes; abs/0.1 mm is absorbance over a path of 0.1 mm, 1 cm holds a hundred
/// (ASTM D7414, from memory).
[[nodiscard]] std::optional<Decimal> in_oil_unit(const Decimal& number, std::string_view from,
                                                 std::string_view to);

} // namespace sumpbook::oil
