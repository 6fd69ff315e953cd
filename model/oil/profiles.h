// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/oil/limit_sets.h"
#include "model/quantity/problem.h"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::oil {

/// Which limit set judges each quantity.
struct Profile {
    std::string name;
    std::string title;
    bool chosen = false; ///< By the owner: its sets apply despite their scope, caveat printed.
    std::map<std::string, std::string, std::less<>> set_of; ///< Slug of the quantity -> id of the set.
};

/// Used where the owner chose none, and for every quantity that a chosen profile lacks (DESIGN).
[[nodiscard]] const Profile& default_profile();
/// All profiles of the data files, the default one first.
[[nodiscard]] const std::vector<Profile>& profiles();
/// A profile by name, or a limit set by its id: then that set for all it covers. Refused, with the names
/// there are, for an unknown name and for a set known from memory only.
[[nodiscard]] Result<Profile> find_profile(std::string_view name);

/// A set for all it covers, chosen by the owner.
[[nodiscard]] Profile profile_of_set(const LimitSet& set);

/// The set for a quantity; absent where the profile has none.
[[nodiscard]] std::optional<std::string> set_in(const Profile& profile, std::string_view quantity);

} // namespace sumpbook::oil
