// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/typed.h"
#include "model/garage/bike.h"

#include <CLI/CLI.hpp>

#include <map>
#include <string>
#include <vector>

namespace sumpbook::cli {

/// One thing that can be said about a bike on the command line.
struct BikeField {
    std::string option; ///< "--cooling"
    std::string type;   ///< What may be typed: "air|oil|liquid".
    std::string help;
    Result<void> (*set)(BikeDetails&, const std::string& option, const std::string& text, const TypedAs&);
};

[[nodiscard]] const std::vector<BikeField>& bike_fields();

/// The texts typed for the fields, by option; several for one that repeats.
using TypedFields = std::map<std::string, std::vector<std::string>>;

/// Adds every field as an option of `command`; what is typed ends up in `typed`.
void add_bike_options(CLI::App& command, TypedFields& typed);

/// Sets what was typed and leaves the rest; the first refusal ends it. Numbers without a unit are read in
/// the bike's odometer unit.
[[nodiscard]] Result<void> set_bike_fields(BikeDetails& details, const TypedFields& typed, TypedAs as);

} // namespace sumpbook::cli
