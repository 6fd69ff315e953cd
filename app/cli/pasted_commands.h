// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/command_line.h"
#include "reports/document/document.h"

#include <string>

namespace sumpbook::cli {

/// Commands that a sentence gives to be typed ("See: sumpbook log conflicts") need the garage file as this one
/// did: "sumpbook -g my.sumpbook log conflicts". Unchanged where SUMPBOOK_GARAGE names the file, in commands that name a file
/// already, and in those that only ask for help.
[[nodiscard]] std::string with_garage(const std::string& sentence, const GlobalOptions& options);
/// The same in the sentences and cells of an answer.
[[nodiscard]] document::Document with_garage(document::Document answer, const GlobalOptions& options);

/// What to do about a garage file that does not verify, as commands to type; empty for other problems.
[[nodiscard]] std::string way_out(const Problem& problem);

} // namespace sumpbook::cli
