// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/session.h"

#include <string>

namespace sumpbook::cli {

/// Refused where something of this name stands already: a garage file is never written over. Asked before the
/// owner is.
[[nodiscard]] Result<void> refuse_where_taken(const std::string& path);

/// What the owner should see before something is written: not with --json, where one answer comes at the end.
void show_first(Session& session, const document::Document& text);

/// A garage file that was just written, read as any other command would read it.
[[nodiscard]] Result<OpenGarage> opened_garage(Session& session, const std::string& path);

} // namespace sumpbook::cli
