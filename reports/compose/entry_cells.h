// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "reports/document/document.h"

#include <string>
#include <vector>

namespace sumpbook::compose {

/// One field of an entry as text: the heading that an import of our own files knows ("volume in") and the
/// text that it reads back to the same field ("2.9 L", "yes", "2026-05-03").
struct EntryCell {
    std::string heading;
    std::string text;
    bool is_text = true; ///< False for numbers, dates and fixed words: safe in a spreadsheet as they are.
};

/// The fields that an entry has, in a fixed order; absent ones are left out. Doubts, attachments and where
/// it was imported from are no fields.
[[nodiscard]] std::vector<EntryCell> entry_cells(const Entry& entry);

/// The same for people: one line a field, thousands apart by a blank.
[[nodiscard]] document::Facts entry_facts(const Entry& entry);

} // namespace sumpbook::compose
