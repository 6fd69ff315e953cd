// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/entry_fields_doubted.h"

#include "model/import/heading.h"

#include <algorithm>
#include <array>

namespace sumpbook::cli {
namespace {

import::ImportKind import_kind(std::string_view kind){if (kind == "fuel") return import::ImportKind::fuel;
if (kind == "reading") return import::ImportKind::readings;
if (kind == "cost") return import::ImportKind::costs;
return kind == "sample" ? import::ImportKind::samples : import::ImportKind::work;
} // namespace

struct Called {
    std::string_view field;  ///< As in fields.csv.
    std::string_view option; ///< As on the command line.
    std::string_view kind{}; ///< Only for entries of this kind; empty: all.
};

/// Where the option is not simply the field's name with hyphens.
constexpr auto called = std::to_array<Called>({
    {"price per unit", "--price"},
    {"part fill", "--full"},
    {"part fill", "--part"},
    {"full", "--part"},
    {"total", "--paid"},
    {"currency", "--total"},
    {"currency", "--paid"},
    {"currency", "--amount"},
    {"parts", "--part"},
    {"parts price", "--part"},
    {"checks", "--check"},
    {"torques", "--torque"},
    {"paint marks", "--paint-mark"},
    {"sample number", "--number"},
    {"old last", "--clock-change"},
    {"new first", "--clock-change"},
    {"new unit", "--clock-change"},
    {"unit", "--value"},
    {"text", "--what", "modification"},
    {"volume in", "--volume", "top-up"},
});

std::vector<std::string> options_called(const std::string& field, std::string_view kind) {
    std::string own = "--" + field;
    std::ranges::replace(own, ' ', '-');
    std::vector<std::string> options{std::move(own)};
    for (const auto& one : called) {
        if (one.field == field && (one.kind.empty() || one.kind == kind)) options.emplace_back(one.option);
    }
    return options;
}

void add_if_known(std::vector<DoubtedField>& found, std::string_view kind, DoubtedField doubted) {
    const bool known = std::ranges::any_of(entry_fields(kind),
                                           [&](const auto& field) { return field.option == doubted.option; });
    if (known && std::ranges::find(found, doubted) == found.end()) found.push_back(std::move(doubted));
}

} // namespace sumpbook::cli

std::vector<DoubtedField> doubted_fields(std::string_view kind, const Doubt& doubt) {
    std::vector<DoubtedField> found;
    if (doubt.file.empty()) { // typed, not imported
        add_if_known(found, kind, {"--" + doubt.column, {}});
        return found;
    }
    const auto matches = import::matches_of(import_kind(kind), import::take_apart(doubt.column), Currency());
    for (const auto& match : matches) {
        if (match.field->type == import::FieldType::quantity) {
            add_if_known(found, kind, {"--value", match.field->slug});
            continue;
        }
        for (auto& option : options_called(match.field->slug, kind))
            add_if_known(found, kind, {std::move(option), {}});
    }
    return found;
}

bool is_about(const Doubt& doubt, std::string_view kind, std::string_view option) {
    return std::ranges::any_of(doubted_fields(kind, doubt),
                               [&](const DoubtedField& field) { return field.option == option; });
}

} // namespace sumpbook::cli
