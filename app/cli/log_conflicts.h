// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/session.h"
#include "reports/compose/conflicts.h"

#include <vector>

namespace sumpbook::cli {

void add_log_conflicts(CommandLine& line, CLI::App& group);

/// What is not settled about the bike of -b, or about everything. Points into the open garage.
[[nodiscard]] Result<std::vector<compose::OpenConflict>> conflicts_here(Session& session);

/// Says once, beside an answer, that it rests on something that is not settled.
[[nodiscard]] Result<void> remark_conflicts(Session& session);

} // namespace sumpbook::cli
