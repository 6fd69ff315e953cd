// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/command_line.h"

namespace sumpbook::cli {

/// `log attachment ENTRY-ID --to FILE`: writes a file that an entry holds out again, verified.
void add_log_attachment(CommandLine& line, CLI::App& group);

} // namespace sumpbook::cli
