// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/left_out.h"

#include <algorithm>

namespace sumpbook::compose {
namespace {

std::string parts_words(const store::LeftOut& left_out) {
    const std::string personal = "notes, names, places and files";
    if (!left_out.money) return personal + " were";
    return left_out.personal ? "the money, " + personal + " were" : "the money was";
}

} // namespace

std::string left_out_words(const store::LeftOut& left_out, const std::vector<NamedRecord>& records) {
    std::string ids;
    for (const auto& name : left_out.records) {
        const auto record = std::ranges::find(records, name, &NamedRecord::name);
        if (record == records.end()) continue;
        ids += (ids.empty() ? "" : ", ") + record->id;
    }
    return "This file does not hold all that was saved with " + ids + ": " + parts_words(left_out) +
           " left out. What is written now stands without that, also in the full garage after a merge. "
           "Change it there if you can.";
}

} // namespace sumpbook::compose
