// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/log_selection.h"

#include "reports/compose/entry_cells.h"
#include "reports/compose/entry_words.h"

#include <algorithm>

namespace sumpbook::compose {
namespace {

bool holds(std::string_view text, std::string_view wanted) {
    const auto lower = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; };
    return !std::ranges::search(text, wanted, {}, lower, lower).empty() || wanted.empty();
}

bool wanted(const LogEntry& entry, const LogSelection& selection) {
    const Entry& value = entry.value;
    if (!selection.kind.empty() && kind_slug(value.body) != selection.kind) return false;
    if (selection.from && value.date < *selection.from) return false;
    if (selection.until && value.date > *selection.until) return false;
    if (selection.only_doubts && value.doubts.empty()) return false;
    return selection.text.empty() || says(entry, selection.text);
}

} // namespace

bool says(const LogEntry& entry, std::string_view text) {
    if (entry.id == text || holds(entry_sentence(entry.value), text)) return true;
    if (std::ranges::any_of(entry_cells(entry.value),
                            [&](const auto& cell) { return holds(cell.text, text); }))
        return true;
    return std::ranges::any_of(entry.value.doubts, [&](const Doubt& doubt) {
        return holds(doubt.text, text) || holds(doubt.expected, text) || holds(doubt.file, text);
    });
}

std::vector<BikeEntry> select(const std::vector<const Bike*>& bikes, const LogSelection& selection) {
    std::vector<BikeEntry> chosen;
    for (const auto* bike : bikes) {
        for (const auto& entry : bike->log) {
            if (wanted(entry, selection)) chosen.push_back({bike, &entry});
        }
    }
    std::ranges::stable_sort(chosen, {}, [](const BikeEntry& one) { return one.entry->value.date; });
    if (selection.last && chosen.size() > *selection.last) {
        chosen.erase(chosen.begin(), chosen.end() - static_cast<std::ptrdiff_t>(*selection.last));
    }
    return chosen;
}

} // namespace sumpbook::compose
