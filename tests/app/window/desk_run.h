// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/main_window.h"

#include <string>

namespace sumpbook::window {

/// Starts Qt without a screen, once a program; every test that makes a widget calls it first.
void start_qt();

/// The example garage, built once a program.
[[nodiscard]] const std::string& example_garage();

/// A folder of this program's own.
[[nodiscard]] std::string scratch(const std::string& name);

/// The day of the example, and a state folder that is nobody's.
[[nodiscard]] cli::World example_world();

/// Runs a shell command; its exit status, and what it printed on both streams.
struct Ended {
    int status = 0;
    std::string said;
};
[[nodiscard]] Ended run(const std::string& command);

} // namespace sumpbook::window
