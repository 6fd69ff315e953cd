// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/command_line.h"

namespace sumpbook::cli {

/// `bike consumption`: fuel and oil used.
void add_consumption(CommandLine& line, CLI::App& group);

} // namespace sumpbook::cli
