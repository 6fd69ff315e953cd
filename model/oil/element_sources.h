// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::oil {

/// Where an element in oil can come from, as one source tells it.
struct ElementSource {
    std::string role;           ///< "wear", "contaminant or additive", "additive".
    std::string in_engine;      ///< Parts and causes.
    std::string on_motorcycles; ///< Empty: nothing said. Marked where it is inference.
    std::string evidence;
    std::string source;
};
/// From element_sources.csv; none for an element without a row.
[[nodiscard]] std::vector<ElementSource> element_sources(std::string_view element);

} // namespace sumpbook::oil
