// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/command_line.h"
#include "model/garage/settings.h"

namespace sumpbook::cli {

/// `costs rate` and `costs oil-counts`: what the sums of the whole garage are reckoned by.
void add_costs_settings(CommandLine& line, CLI::App& group);

/// The settings of the garage as they are.
[[nodiscard]] Result<GarageSettings> settings_now(Session& session);
/// Records changed settings and says what was done; "Nothing to change." where they are as before.
[[nodiscard]] Result<ExitStatus> replace_settings(Session& session, const GarageSettings& settings,
                                                  const std::string& done);

} // namespace sumpbook::cli
