// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "reports/compose/record_facts.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

#include <string>
#include <vector>

namespace sumpbook::compose {

/// One side of a conflict.
struct ConflictSide {
    const NamedRecord* record = nullptr;
    std::string written_in; ///< Name of the chain: everything one installation wrote about one bike.
    bool used = false;      ///< In every answer until it is settled.
};

/// A thing of any kind that was changed in two or more places; the sides by the time recorded. Points into
/// the records it was found in.
struct OpenConflict {
    std::string bike; ///< Name; empty: the garage itself.
    std::vector<ConflictSide> sides;
    std::vector<std::string> version_ids; ///< Of all versions: any of them names the conflict.
    [[nodiscard]] const ConflictSide& used() const;
    /// Both sides say the same, withdrawals with whatever reason: nothing is lost by keeping either.
    [[nodiscard]] bool says_the_same() const;
};
/// Those of the bikes; with `of_garage` those of the settings too.
[[nodiscard]] std::vector<OpenConflict> open_conflicts(const std::vector<const Bike*>& bikes, bool of_garage,
                                                       const std::vector<NamedRecord>& records);

/// "plan item engine-oil of Old twin".
[[nodiscard]] std::string conflict_title(const OpenConflict& conflict);

[[nodiscard]] document::Value conflicts_json(const std::vector<OpenConflict>& conflicts);
/// Each conflict as a table, one column a side, one row a field that differs, and what to type next.
[[nodiscard]] document::Document conflicts_text(const std::vector<OpenConflict>& conflicts);

/// One remark for an answer that rests on them; empty where there are none.
[[nodiscard]] std::string conflicts_remark(const std::vector<OpenConflict>& conflicts);

} // namespace sumpbook::compose
