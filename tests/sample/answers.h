// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json.hpp>

#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::sample {

/// Every single figure and word of one or more JSON answers, by its path:
/// "due/Meridian/engine-oil/limit_distance_km" -> "89230". Elements of a list are named by what identifies
/// them (bike, item, quantity, ...) where each has that and no two have the same, else by their number from
/// 0.
using Figures = std::map<std::string, std::string>;

/// Adds the figures of `answer` under the path `name`.
void add_figures(Figures& figures, const std::string& name, const nlohmann::json& answer);

/// Paths whose figure is another one, is new or is gone.
[[nodiscard]] std::set<std::string> changed_paths(const Figures& before, const Figures& after);

/// True where the whole path fits the pattern; * stands for any characters but a slash, ** for any at all.
[[nodiscard]] bool fits(std::string_view pattern, std::string_view path);

/// Changed paths that no pattern expects, as "unexpected: PATH", and patterns that nothing fits, as
/// "missing: PATTERN". Empty: exactly what was expected has changed.
[[nodiscard]] std::vector<std::string> surprises(const std::vector<std::string>& patterns,
                                                 const std::set<std::string>& changed);

} // namespace sumpbook::sample
