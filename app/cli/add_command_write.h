// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/add_command_objections.h"
#include "app/cli/session.h"
#include "app/cli/typed.h"
#include "model/store/new_action.h"

#include <string>
#include <vector>

namespace sumpbook::cli {

/// The marks, orders and today of this run; units and currency are the bike's and the garage's.
[[nodiscard]] TypedAs marks_of(const Session& session);

/// Without `keep` the first objection is the refusal; with it the doubts are put into the entry and said.
[[nodiscard]] Result<void> keep_or_refuse(Session& session, Entry& entry,
                                          const std::vector<Objection>& objections, bool keep);

/// Writes the entry, and files that it names, and says in words what was recorded: "Recorded k7-142: fuel, 12.3 L full at ...".
[[nodiscard]] Result<ExitStatus> write_entry(Session& session, const Bike& bike, const Entry& entry,
                                             const std::vector<RecordName>& replaces,
                                             const std::string& verb,
                                             const std::vector<store::NewAttachment>& files = {});

/// One sentence as the answer of a command that wrote something, in the form asked for.
void show_written(Session& session, const document::Object& json, const std::string& id,
                  const std::string& sentence);

} // namespace sumpbook::cli
