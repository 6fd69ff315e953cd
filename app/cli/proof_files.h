// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/problem.h"
#include "model/store/bytes.h"

#include <optional>
#include <string>

namespace sumpbook::cli {

/// The same problem, with the file it is about.
[[nodiscard]] tl::unexpected<Problem> in_file(Problem problem, const std::string& path);

/// A question to, or an answer of, a time-stamp authority.
[[nodiscard]] Result<store::Bytes> time_stamp_file(const std::string& path);
/// Certificates as PEM; absent where no file is named.
[[nodiscard]] Result<std::optional<std::string>> certificates_file(const std::string& path);

} // namespace sumpbook::cli
