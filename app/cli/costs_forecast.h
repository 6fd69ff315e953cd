// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/command_line.h"
#include "reports/document/document.h"

namespace sumpbook::cli {

/// `costs forecast`: what the bikes will cost.
void add_costs_forecast(CommandLine& line, CLI::App& group);

/// The same without options, for a report. Refused where every bike was sold.
[[nodiscard]] Result<document::Document> usual_forecast(Session& session);

} // namespace sumpbook::cli
