// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "reports/plot/plot.h"

#include <string_view>
#include <vector>

namespace sumpbook::compose {

/// What a picture is of. Points into the garage.
struct PictureSubject {
    const Garage* garage = nullptr;
    std::vector<const Bike*> bikes; ///< One for a picture of one bike.
    Date today;
};

/// A picture that can be asked for by name.
struct Picture {
    std::string_view name;  ///< "wear-metals".
    std::string_view shows; ///< What is to be seen, in a few words.
    bool of_one_bike = false;
    /// Refused, with what is missing, where there is nothing to see.
    Result<plot::Plot> (*draw)(const PictureSubject&) = nullptr;
};

/// In the order of the window's pages.
[[nodiscard]] const std::vector<Picture>& pictures();
/// Null for an unknown name.
[[nodiscard]] const Picture* find_picture(std::string_view name);

} // namespace sumpbook::compose
