// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/profiles.h"

#include "embedded/profile_files.h"
#include "embedded/profiles_csv.h"
#include "model/oil/quantities.h"
#include "model/oil/words.h"
#include "model/quantity/data_table.h"

#include <algorithm>
#include <stdexcept>

namespace sumpbook::oil {
namespace {

Profile profile_of(const DataRow& row) {
    Profile profile{row["name"], row["title"], false, {}};
    for (const auto& [name, text] : data::profile_files()) {
        if (name != profile.name) continue;
        for (const DataRow& line : read_data_table(text))
            profile.set_of[line["quantity"]] = line["set"];
        return profile;
    }
    throw std::logic_error("profiles.csv: no file for " + profile.name);
}

std::string names_there_are() {
    std::vector<std::string> names;
    for (const Profile& profile : profiles())
        names.push_back(profile.name);
    for (const LimitSet& set : limit_sets()) {
        if (set.can_be_chosen() && !set.rules.empty()) names.push_back(set.id);
    }
    return listed(names);
}

} // namespace

const std::vector<Profile>& profiles() {
    static const std::vector<Profile> all = [] {
        std::vector<Profile> read;
        for (const DataRow& row : read_data_table(data::profiles_csv()))
            read.push_back(profile_of(row));
        return read;
    }();
    return all;
}

Profile profile_of_set(const LimitSet& set) {
    Profile profile{set.id, set.title, true, {}};
    for (const Quantity& quantity : sample_quantities()) {
        if (set.has(quantity.slug)) profile.set_of[quantity.slug] = set.id;
    }
    return profile;
}

const Profile& default_profile() { return profiles().front(); }

Result<Profile> find_profile(std::string_view name) {
    for (const Profile& profile : profiles()) {
        if (!same_word(profile.name, name)) continue;
        Profile found = profile;
        found.chosen = profile.name != default_profile().name;
        return found;
    }
    const LimitSet* set = find_limit_set(name);
    if (set != nullptr && !set->can_be_chosen()) {
        return refuse("The set " + set->id + " is known from memory only and judges nothing. There are " +
                      names_there_are() + ".");
    }
    if (set != nullptr && !set->rules.empty()) return profile_of_set(*set);
    return refuse("There is no oil profile " + std::string(name) + ". There are " + names_there_are() + ".");
}

std::optional<std::string> set_in(const Profile& profile, std::string_view quantity) {
    const auto found = profile.set_of.find(quantity);
    if (found == profile.set_of.end()) return std::nullopt;
    return found->second;
}

} // namespace sumpbook::oil
