// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/dates.h"

#include <optional>
#include <string>

namespace sumpbook::cli {

/// What the program learns from the computer it runs on, read once at the start. Nothing below `app`
/// reads a clock, an environment variable or a terminal.
struct World {
    Date today;       ///< The calendar day here.
    RecordedTime now; ///< UTC.
    bool out_is_terminal = false;
    bool err_is_terminal = false;
    bool in_is_terminal = false;
    int terminal_width = 80; ///< Sentences wrap here.
    std::optional<int>
        table_width; ///< COLUMNS, else the terminal's own; absent where the answer goes to a file.
    bool wants_no_colour = false; ///< NO_COLOR is set and not empty, or TERM is dumb.
    std::string state_folder;     ///< $XDG_STATE_HOME/sumpbook, else ~/.local/state/sumpbook.
};

[[nodiscard]] World look_around();

} // namespace sumpbook::cli
