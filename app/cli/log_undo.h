// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/command_line.h"

namespace sumpbook::cli {

/// log undo ENTRY: the last change of an entry is taken back by a new version that says what stood before it.
void add_log_undo(CommandLine& line, CLI::App& group);

} // namespace sumpbook::cli
