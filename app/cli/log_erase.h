// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/session.h"
#include "model/store/erasure.h"

namespace sumpbook::cli {

void add_log_erase(CommandLine& line, CLI::App& group);

/// Everything of which only the hash is left in the open garage; points into it.
[[nodiscard]] Result<std::vector<store::ErasedRecord>> erased_here(Session& session);

/// The page of an entry that is not held any more; `otherwise` where nothing here ever had the id.
[[nodiscard]] Result<ExitStatus> show_erased(Session& session, const std::string& id, const Problem& otherwise);

} // namespace sumpbook::cli
