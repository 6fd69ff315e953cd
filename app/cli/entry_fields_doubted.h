// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/entry_fields.h"

#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::cli {

/// One option that a doubt may be about.
struct DoubtedField {
    std::string option;   ///< "--volume"
    std::string quantity; ///< Of a sample's value: which one, "Fe"; else empty.
    bool operator==(const DoubtedField&) const = default;
};

/// The options of an entry of this kind that a doubt is about: the one that was typed, or those that the
/// heading of its column stands for, in whatever language ("Liters" and "Menge" are --volume). Several
/// where the heading has two meanings; none where it has no known word.
[[nodiscard]] std::vector<DoubtedField> doubted_fields(std::string_view kind, const Doubt& doubt);

/// True where the doubt is about this option.
[[nodiscard]] bool is_about(const Doubt& doubt, std::string_view kind, std::string_view option);

} // namespace sumpbook::cli
