// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

namespace sumpbook::cli {

/// The media type that the ending of a file's name stands for, upper or lower case, by the registry of IANA;
/// "application/octet-stream" for all others (RFC 2046, 4.5.1).
[[nodiscard]] std::string media_type_of(std::string_view name);

} // namespace sumpbook::cli
