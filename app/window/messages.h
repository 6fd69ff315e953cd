// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/problem.h"
#include "reports/document/document.h"

#include <string>

namespace sumpbook::window {

// What stands in the window in place of a garage. Each says what to do next.

[[nodiscard]] document::Document nothing_open_message();
[[nodiscard]] document::Document reading_message(const std::string& path);
[[nodiscard]] document::Document no_bike_message(const std::string& path);
/// Why the file could not be read, in the store's own sentence, and what helps.
[[nodiscard]] document::Document problem_message(const Problem& problem, const std::string& path);

} // namespace sumpbook::window
