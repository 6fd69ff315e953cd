// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/problem.h"

#include <cstddef>
#include <string>

namespace sumpbook::cli {

/// All bytes of a file that is read in: at most `most` of them are taken into memory. `too_large` is the
/// refusal of a file that has more. Problems: io where it cannot be read, refused for a folder.
[[nodiscard]] Result<std::string> bytes_of_input(const std::string& file, std::size_t most,
                                                 const std::string& too_large);

} // namespace sumpbook::cli
