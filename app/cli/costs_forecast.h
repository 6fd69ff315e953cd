// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/command_line.h"

namespace sumpbook::cli {

/// `costs forecast`: what the bikes will cost.
void add_costs_forecast(CommandLine& line, CLI::App& group);

} // namespace sumpbook::cli
