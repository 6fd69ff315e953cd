// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace sumpbook::write {

/// RFC 4180 in UTF-8: CRLF, comma, cells quoted only where they must be. The first row is the heading.
[[nodiscard]] std::string csv(const std::vector<std::vector<std::string>>& rows);

} // namespace sumpbook::write
