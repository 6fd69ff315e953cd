// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/problem.h"

#include <string>

namespace sumpbook::cli {

/// What the program ends with; the numbers are promised in the guide.
enum class ExitStatus : int {
    done = 0,
    findings = 1, ///< Something needs attention; only with --exit-code.
    wrong_usage = 2,
    refused = 3, ///< Input refused, or a confirmation needed and not given.
    damaged = 4, ///< File damaged or written by a newer version.
    io_failed = 5,
    locked = 6,
    interrupted = 130,
};

[[nodiscard]] ExitStatus exit_status(ProblemKind kind);

/// "fuel.csv, line 12, volume: "-3,1": litres cannot be negative." Places that are not known are left out.
[[nodiscard]] std::string sentence_with_place(const Problem& problem);

} // namespace sumpbook::cli
