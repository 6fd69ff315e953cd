// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::compose {

/// Stands in `replaces` for a version that is not in the file.
inline constexpr std::string_view not_held = "missing";

/// One version of an entry that was recorded, or its withdrawal.
struct EntryVersion {
    std::string id;
    RecordedTime recorded;
    std::vector<std::string> replaces; ///< Ids of the versions it stands for; or `not_held`.
    std::optional<Entry> entry;        ///< Absent: the withdrawal of what it replaces.
    std::optional<std::string> reason; ///< Of a withdrawal.
    bool current = false;              ///< Nothing replaces it.
};

/// Every version that hangs together with the given one, by the time recorded. Empty when no record has
/// the id, or the record is neither an entry nor the withdrawal of one.
[[nodiscard]] std::vector<EntryVersion> entry_versions(const std::vector<NamedRecord>& records,
                                                       std::string_view id);

/// What differs, a sentence piece a field: "Volume 13.2 L, before 12.3 L"; "Note added: ...".
[[nodiscard]] std::vector<std::string> changed_fields(const Entry& before, const Entry& after);

} // namespace sumpbook::compose
