// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/review/finding.h"

#include "embedded/findings_csv.h"
#include "model/quantity/data_table.h"

#include <algorithm>
#include <array>
#include <stdexcept>

namespace sumpbook::review {
namespace {

constexpr std::array<std::string_view, 3> severity_words{"info", "doubt", "serious"};

Severity severity_of(std::string_view word) {
    const auto found = std::ranges::find(severity_words, word);
    if (found == severity_words.end()) throw std::logic_error("unknown severity " + std::string(word));
    return static_cast<Severity>(found - severity_words.begin());
}

} // namespace

std::string_view slug(Severity severity) { return severity_words.at(static_cast<std::size_t>(severity)); }

const std::vector<FindingKind>& finding_kinds() {
    static const std::vector<FindingKind> kinds = [] {
        std::vector<FindingKind> all;
        for (const auto& row : read_data_table(data::findings_csv())) {
            all.push_back({row["id"], severity_of(row["severity"]), row["meaning"]});
        }
        return all;
    }();
    return kinds;
}

Finding make_finding(std::string_view id, std::string bike, std::string sentence) {
    const auto kind = std::ranges::find(finding_kinds(), id, &FindingKind::id);
    if (kind == finding_kinds().end()) throw std::logic_error("unknown finding " + std::string(id));
    return {
        .id = kind->id, .severity = kind->severity, .bike = std::move(bike), .sentence = std::move(sentence)};
}

} // namespace sumpbook::review
