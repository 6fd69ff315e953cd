// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"

#include <algorithm>
#include <string>

namespace sumpbook::review {

/// The name of the bike; empty for the garage itself and for a subject that is not known here.
[[nodiscard]] inline std::string subject_name(const Garage& garage, const SubjectId& subject) {
    const auto bike = std::ranges::find(garage.bikes, subject, &Bike::id);
    return bike == garage.bikes.end() ? std::string() : bike->details.value.name;
}

/// In a sentence: the name of the bike, or the settings of the garage.
[[nodiscard]] inline std::string subject_words(const Garage& garage, const SubjectId& settings,
                                               const SubjectId& subject) {
    if (subject == settings) return "the settings of this garage";
    auto name = subject_name(garage, subject);
    return name.empty() ? "a bike that has no name here" : name;
}

} // namespace sumpbook::review
