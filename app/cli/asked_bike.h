// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/session.h"

#include <optional>
#include <string>

namespace sumpbook::cli {

/// The bike of -b, for a command that is about the whole garage without it.
struct AskedBike {
    SubjectId id;
    std::string name;
};

/// Absent without -b; refused with near misses where there is no such bike.
[[nodiscard]] inline Result<std::optional<AskedBike>> asked_bike(Session& session) {
    if (session.options().bike.empty()) return std::optional<AskedBike>{};
    const auto bike = session.bike_named(session.options().bike);
    if (!bike) return pass_on(bike.error());
    return std::optional(AskedBike{(*bike)->id, (*bike)->details.value.name});
}

} // namespace sumpbook::cli
