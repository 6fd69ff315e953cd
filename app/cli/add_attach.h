// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/command_line.h"

namespace sumpbook::cli {

/// `add attach FILE`: keeps a file inside the garage, in an entry of its own or with one that is there.
void add_attach(CommandLine& line, CLI::App& group);

} // namespace sumpbook::cli
