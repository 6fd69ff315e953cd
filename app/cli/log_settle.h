// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/command_line.h"

namespace sumpbook::cli {

void add_log_settle(CommandLine& line, CLI::App& group);

} // namespace sumpbook::cli
