// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/typed.h"
#include "model/garage/entry_parts.h"

#include <string>

namespace sumpbook::cli {

// Things of which an entry has several, each typed as one text. A refusal names the option and says how
// the text is written.

/// "chain slack: adjusted, 30 mm"; the outcome is pass, adjusted or failed.
[[nodiscard]] Result<CheckDone> typed_check(const std::string& field, const std::string& text);
/// "oil filter x1 [HF-11 replaces HF-9] 12.90 EUR": the name, then in this order what there is of
/// quantity, numbers and price of the whole line.
[[nodiscard]] Result<PartUsed> typed_part(const std::string& field, const std::string& text,
                                          const TypedAs& as);
/// "oil drain plug 24 Nm painted"; "painted" and "not painted" tell of a paint mark.
[[nodiscard]] Result<TorqueApplied> typed_torque(const std::string& field, const std::string& text,
                                                 const TypedAs& as);
/// "axle nut aligned" or "axle nut moved".
[[nodiscard]] Result<PaintMarkSeen> typed_paint_mark(const std::string& field, const std::string& text);
/// "48210 km to 0 km": the last reading of the old dial and the first of the new one.
[[nodiscard]] Result<ClockChange> typed_clock_change(const std::string& field, const std::string& text,
                                                     const TypedAs& as);
/// "1.859", "1.859 EUR", "1.859 EUR/L", "3.29 USD/US gal"; above 0. One mark with three digits behind it
/// stands before decimals here, unless the owner stated the other mark.
[[nodiscard]] Result<UnitPrice> typed_unit_price(const std::string& field, const std::string& text,
                                                 const TypedAs& as);
/// "Fe=12", "Pb=<2", "tbn=8.1 mg KOH/g ASTM D2896", "glycol=detected". Units are those of the quantity.
[[nodiscard]] Result<SampleValue> typed_sample_value(const std::string& field, const std::string& text,
                                                     const TypedAs& as);

} // namespace sumpbook::cli
