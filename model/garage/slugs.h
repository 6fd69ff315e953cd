// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/bike.h"
#include "model/garage/entry.h"
#include "model/garage/plan_item.h"
#include "model/quantity/problem.h"

#include <string_view>
#include <vector>

namespace sumpbook {

/// The fixed word of an enumerator, as typed in commands and files and printed in JSON.
[[nodiscard]] std::string_view slug(Cooling value);
[[nodiscard]] std::string_view slug(FuelType value);
[[nodiscard]] std::string_view slug(BlockMaterial value);
[[nodiscard]] std::string_view slug(Bore value);
[[nodiscard]] std::string_view slug(GearboxOil value);
[[nodiscard]] std::string_view slug(Evidence value);
[[nodiscard]] std::string_view slug(DoneBy value);
[[nodiscard]] std::string_view slug(CheckOutcome value);
[[nodiscard]] std::string_view slug(LabFlag value);
[[nodiscard]] std::string_view slug(OilUse value);
[[nodiscard]] std::string_view slug(TopUpSide value);
[[nodiscard]] std::string_view slug(FaultStatus value);
[[nodiscard]] std::string_view slug(RecallType value);
[[nodiscard]] std::string_view slug(Applies value);
[[nodiscard]] std::string_view slug(CountedFrom value);
[[nodiscard]] std::string_view slug(PlanKind value);

/// The enumerator of a typed word, whatever its case; refused with the words that are known.
/// Example: from_slug<Cooling>("air").
template <class Enum>
[[nodiscard]] Result<Enum> from_slug(std::string_view text);
/// All words of an enumeration, in order.
template <class Enum>
[[nodiscard]] std::vector<std::string_view> slugs();

} // namespace sumpbook
