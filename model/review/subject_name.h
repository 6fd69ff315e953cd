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

} // namespace sumpbook::review
