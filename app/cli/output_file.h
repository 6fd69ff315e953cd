// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/exit_status.h"
#include "app/cli/session.h"

#include <string>

namespace sumpbook::cli {

/// Text to a file, or to standard output where `to` is empty or "-". A file that stands there is replaced
/// after a yes, and only once the new one is whole; the garage file itself never.
[[nodiscard]] Result<ExitStatus> put_out(Session& session, const std::string& text, const std::string& to);

} // namespace sumpbook::cli
