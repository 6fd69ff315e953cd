// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::compose {

/// Which entries are wanted. Absent or empty: all.
struct LogSelection {
    std::string kind; ///< Slug.
    std::optional<Date> from;
    std::optional<Date> until; ///< Inclusive.
    std::string text;          ///< Anywhere in the entry's words, fields, doubts or id; ASCII case ignored.
    bool only_doubts = false;
    std::optional<std::size_t> last; ///< Only the newest so many.
};

/// An entry and the bike it is of; points into the garage.
struct BikeEntry {
    const Bike* bike = nullptr;
    const LogEntry* entry = nullptr;
};

/// True where the text stands anywhere in what the entry says.
[[nodiscard]] bool says(const LogEntry& entry, std::string_view text);

/// The wanted entries of all given bikes, oldest first; entries of one day bike by bike, in log order.
[[nodiscard]] std::vector<BikeEntry> select(const std::vector<const Bike*>& bikes,
                                            const LogSelection& selection);

} // namespace sumpbook::compose
