// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/problem.h"

#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::review {

// The names are promised: scripts and people look for them.
enum class Severity { info, doubt, serious };
[[nodiscard]] std::string_view slug(Severity severity);

/// Something in a record that the owner, or a buyer, should look at.
struct Finding {
    std::string id; ///< Stable, lower case: "odometer-falls".
    Severity severity = Severity::info;
    std::string bike;                   ///< Name; empty: the garage itself.
    std::vector<std::string> entry_ids; ///< The entries it is about, the one in question first.
    Place place;                        ///< File, line, column and text where it came from an import.
    std::string sentence;               ///< What is known and what to do next.
    bool operator==(const Finding&) const = default;
};

/// A finding by its name, with the severity of `findings.csv`. An unknown name is a fault of the program.
[[nodiscard]] Finding make_finding(std::string_view id, std::string bike, std::string sentence);

/// Name and meaning of every finding, in the order of the file.
struct FindingKind {
    std::string id;
    Severity severity = Severity::info;
    std::string meaning;
};
[[nodiscard]] const std::vector<FindingKind>& finding_kinds();

} // namespace sumpbook::review
