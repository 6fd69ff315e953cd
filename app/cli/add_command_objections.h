// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/entry_fields.h"
#include "model/garage/garage.h"

#include <optional>
#include <string>
#include <vector>

namespace sumpbook::cli {

/// Something about a typed entry that can be read but hardly be true. It is refused, unless the owner says
/// that it is to be kept as typed; then the doubt is kept with it.
struct Objection {
    std::string option;
    std::string text; ///< Exactly as typed.
    std::string sentence;
    std::optional<Doubt> doubt; ///< Absent: nothing is doubtful once the owner insists.
};

/// Everything that speaks against what was typed of an entry of this bike. A field that was not typed is
/// objected to only where it no longer fits one that was, and is not in doubt already. `own_id`: the entry
/// that it corrects, which it is not held against.
[[nodiscard]] std::vector<Objection> objections_to(const Entry& entry, const TypedEntry& typed,
                                                   const Bike& bike, const std::optional<std::string>& own_id,
                                                   const Date& today);

} // namespace sumpbook::cli
