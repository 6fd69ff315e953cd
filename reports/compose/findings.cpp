// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/findings.h"

#include <algorithm>

namespace sumpbook::compose {
namespace {

using document::Cell;
using review::Finding;

document::Severity colour(review::Severity severity) {
    switch (severity) {
    case review::Severity::serious:
        return document::Severity::danger;
    case review::Severity::doubt:
        return document::Severity::caution;
    case review::Severity::info:
        break;
    }
    return document::Severity::none;
}

std::string joined(const std::vector<std::string>& words) {
    std::string text;
    for (const auto& word : words)
        text += (text.empty() ? "" : ", ") + word;
    return text;
}

/// "fuel.csv line 12, volume: "12,3,4". " or nothing.
std::string place_words(const Place& place) {
    std::string text = place.file;
    if (place.line) text += " line " + std::to_string(*place.line);
    if (!place.column.empty()) text += (text.empty() ? "" : ", ") + place.column;
    if (!place.text.empty()) text += (text.empty() ? "\"" : ": \"") + place.text + "\"";
    return text.empty() ? text : text + ". ";
}

} // namespace

document::Array findings_json(const std::vector<Finding>& findings) {
    document::Array items;
    for (const auto& finding : findings) {
        document::Array entries;
        for (const auto& id : finding.entry_ids)
            entries.emplace_back(id);
        document::Object item;
        item.add("finding", finding.id).add("severity", slug(finding.severity));
        item.add("bike", finding.bike.empty() ? document::Value() : document::Value(finding.bike));
        item.add("entries", std::move(entries));
        item.add("file",
                 finding.place.file.empty() ? document::Value() : document::Value(finding.place.file));
        item.add("line", finding.place.line);
        item.add("column",
                 finding.place.column.empty() ? document::Value() : document::Value(finding.place.column));
        item.add("text",
                 finding.place.text.empty() ? document::Value() : document::Value(finding.place.text));
        item.add("sentence", finding.sentence);
        items.emplace_back(std::move(item));
    }
    return items;
}

document::Document findings_text(const std::vector<Finding>& findings) {
    document::Document text;
    if (findings.empty()) {
        text.sentence("Nothing odd was found in the record.", document::Severity::good);
        return text;
    }
    auto worst_first = findings;
    std::ranges::stable_sort(worst_first, std::greater{}, &Finding::severity);
    document::Table table{{{"", {}}, {"Bike", {}}, {"Finding", {}}, {"Entries", {}}, {"What is known", {}}},
                          {}};
    for (const auto& finding : worst_first) {
        table.rows.push_back({Cell{std::string(slug(finding.severity)), colour(finding.severity)},
                              Cell{finding.bike, {}}, Cell{finding.id, {}},
                              Cell{joined(finding.entry_ids), {}},
                              Cell{place_words(finding.place) + finding.sentence, {}}});
    }
    text.table(std::move(table));
    return text;
}

} // namespace sumpbook::compose
