// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/record.h"
#include "reports/document/document.h"

#include <string>
#include <vector>

namespace sumpbook::compose {

/// What a record of any kind is about, for a heading: "fuel, 12.3 L full at ...", "plan item engine-oil",
/// "details of the bike", "settings of the garage", "data card, rear axle nut", "withdrawal".
[[nodiscard]] std::string record_title(const RecordContent& content);
/// The same of a version of an entry: its title, or "withdrawn: why".
[[nodiscard]] std::string version_title(const RecordContent& content);

/// Every field that is set, one line a field, as owners read it.
[[nodiscard]] document::Facts record_facts(const RecordContent& content);

/// One field of several versions of a thing: what each says, in their order; "-" where it says nothing.
struct DifferingField {
    std::string label;
    std::vector<std::string> texts;
};
/// Only the fields in which the versions differ. A withdrawal says nothing but that it is one.
[[nodiscard]] std::vector<DifferingField> differing_fields(const std::vector<const RecordContent*>& versions);

} // namespace sumpbook::compose
