// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/entry_parts.h"
#include "model/import/cell_values.h"

#include <string_view>

namespace sumpbook::import {

// Lists in one cell: pieces between bars, each in a form of its own. One piece, trimmed, at a time; a piece
// that is not clear is refused.

/// "chain slack: adjusted 30 mm": name, colon, pass, adjusted or failed, and the reading if there is one.
[[nodiscard]] Result<CheckDone> check_in(std::string_view piece);
/// "oil filter x 2 [K-204 replaces K-203] = 19.80": name, then as far as known the quantity, the maker's
/// number, the number it replaces, and the price of the line.
[[nodiscard]] Result<PartUsed> part_in(std::string_view piece, const CellRules& rules);
/// "oil drain plug 24 Nm painted": fastener, number, unit, and painted or not painted if stated.
[[nodiscard]] Result<TorqueApplied> torque_in(std::string_view piece, const CellRules& rules);
/// "rear axle nut: aligned" or "...: moved".
[[nodiscard]] Result<PaintMarkSeen> paint_mark_in(std::string_view piece);

} // namespace sumpbook::import
