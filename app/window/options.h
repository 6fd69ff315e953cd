// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/command_line.h"
#include "reports/render/theme.h"

#include <optional>
#include <string>

namespace sumpbook::window {

/// What sumpbook-desk was asked to do.
struct DeskOptions {
    cli::GlobalOptions garage;          ///< Its file, the bike and the day.
    std::string render;                 ///< Name of a picture or document; empty: show the window.
    std::string screenshot;             ///< Name of a page; empty: none.
    std::string to;                     ///< Where a picture goes.
    std::optional<render::Theme> theme; ///< Absent: the desktop's; light for pictures.
    double scale = 1;                   ///< Pixels of a picture for each of its units, above 0 to 8.
    int width = 0;                      ///< Of a picture; 0: 900.
    int height = 0;                     ///< 0: 520.
    std::string printed;                ///< Help or version: print this and leave.
};

/// Reads the words. Refused (wrong_usage) with what would be right.
[[nodiscard]] Result<DeskOptions> read_options(int argc, const char* const* argv);

} // namespace sumpbook::window
