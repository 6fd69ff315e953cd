// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/command_line.h"
#include "reports/document/document.h"
#include "reports/plot/plot.h"

namespace sumpbook::cli {

/// `costs forecast`: what the bikes will cost.
void add_costs_forecast(CommandLine& line, CLI::App& group);

/// What a report says of the time ahead.
struct UsualForecast {
    document::Document text;
    plot::Plot picture;
};
/// The forecast without options, in words and as a picture of one run. Refused where every bike was sold.
[[nodiscard]] Result<UsualForecast> usual_forecast(Session& session);

} // namespace sumpbook::cli
