// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::write::testing {

/// What a text of markup is made of, read strictly as XML 1.0 without a DTD.
struct Markup {
    std::string fault;              ///< Empty: well-formed.
    std::vector<std::string> tags;  ///< Names of the elements, in the order they begin.
    std::vector<std::string> ids;   ///< Values of id attributes.
    std::vector<std::string> names; ///< Names of attributes, as often as they stand.
    std::string text;               ///< All character data, entities resolved.
};

/// Reads elements, attributes in double quotes, character data and the five known entities and numeric ones;
/// anything else (comments, CDATA, processing instructions, a second root) is a fault, one leading DOCTYPE
/// apart.
[[nodiscard]] Markup read_markup(std::string_view markup);

} // namespace sumpbook::write::testing
