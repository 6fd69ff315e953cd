// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/compose/log_selection.h"
#include "reports/compose/log_versions.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

#include <string>
#include <vector>

namespace sumpbook::compose {

/// One row an entry, in the order given. The bike has a column where entries are of more than one.
[[nodiscard]] document::Object log_json(const std::vector<BikeEntry>& entries);
[[nodiscard]] document::Document log_text(const std::vector<BikeEntry>& entries);

/// All fields of an entry as written, what became of the fasteners of a job, its doubts, and its versions
/// with what each one changed.
[[nodiscard]] document::Value entry_page_json(const Bike& bike, const LogEntry& entry,
                                              const std::vector<EntryVersion>& versions);
[[nodiscard]] document::Document entry_page_text(const Bike& bike, const LogEntry& entry,
                                                 const std::vector<EntryVersion>& versions);

/// The versions of an entry that was withdrawn: what it said, and why it was taken back.
[[nodiscard]] document::Value withdrawn_page_json(const std::string& bike,
                                                  const std::vector<EntryVersion>& versions);
[[nodiscard]] document::Document withdrawn_page_text(const std::string& bike,
                                                     const std::vector<EntryVersion>& versions);

} // namespace sumpbook::compose
