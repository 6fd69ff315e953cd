// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"

#include <string>
#include <vector>

namespace sumpbook::compose {

/// A change to something recorded earlier: a correction, or taking it back.
struct Correction {
    std::string id;
    RecordedTime recorded;
    Date of; ///< Day of the entry that was changed.
    bool withdrawn = false;
    std::string earlier;              ///< What the entry said before, in words.
    std::vector<std::string> changes; ///< Fields that differ; empty: only money or private ones do.
};

/// Every correction and withdrawal of entries of the bike dated up to the day, by the time recorded. Money
/// and private fields, the reason of a withdrawal among them, are not looked at.
[[nodiscard]] std::vector<Correction>
corrections_of(const Bike& bike, const std::vector<NamedRecord>& records, const Date& until);

} // namespace sumpbook::compose
