// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/import/column_unit.h"

#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::import {

/// A heading taken apart: "Volume (US gal)" is the words "Volume" and the bracket "US gal".
struct Heading {
    std::string typed; ///< Trimmed.
    std::string words; ///< What stands outside the brackets.
    std::vector<std::string> brackets;
};
[[nodiscard]] Heading take_apart(std::string_view typed);

/// A field that a heading may be, with the unit it names.
struct HeadingMatch {
    const Field* field = nullptr;
    ColumnUnit unit;
    std::string unclear; ///< A piece that should be the unit and could not be read; empty for none.
};

/// Every field of this import whose words the heading is, with or without a unit behind them.
[[nodiscard]] std::vector<HeadingMatch> matches_of(ImportKind kind, const Heading& heading,
                                                   const Currency& garage);
/// The unit a heading names, for a field decided otherwise.
[[nodiscard]] HeadingMatch match_with(const Field& field, const Heading& heading, const Currency& garage);

} // namespace sumpbook::import
