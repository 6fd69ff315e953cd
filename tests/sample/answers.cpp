// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/sample/answers.h"

#include <algorithm>
#include <array>

namespace sumpbook::sample {
namespace {

using nlohmann::json;

/// What can tell the elements of a list apart, tried in this order.
constexpr std::array identities{"id",       "entry", "item",   "slug", "quantity", "sample", "code",
                                "category", "bike",  "period", "year", "name",     "date"};

std::string name_in(const json& element, const char* key) {
    if (!element.is_object() || !element.contains(key)) return {};
    const json& value = element[key];
    if (value.is_string()) return value.get<std::string>();
    return value.is_number_integer() ? value.dump() : std::string{};
}

/// The element's names by one key; empty where an element lacks it or two have the same.
std::vector<std::string> names_by(const json& list, const char* key) {
    std::vector<std::string> names;
    for (const auto& element : list) {
        names.push_back(name_in(element, key));
        if (names.back().empty()) return {};
    }
    const std::set<std::string> different(names.begin(), names.end());
    return different.size() == names.size() ? names : std::vector<std::string>{};
}

/// Items of several bikes have a name only together with their bike.
std::vector<std::string> names_by_bike_and(const json& list, const char* key) {
    std::vector<std::string> names;
    for (const auto& element : list) {
        const auto bike = name_in(element, "bike");
        const auto own = name_in(element, key);
        if (bike.empty() || own.empty()) return {};
        names.push_back(bike + "/" + own);
    }
    const std::set<std::string> different(names.begin(), names.end());
    return different.size() == names.size() ? names : std::vector<std::string>{};
}

std::vector<std::string> names_of(const json& list) {
    for (const char* key : identities) {
        if (auto names = names_by(list, key); !names.empty()) return names;
        if (auto names = names_by_bike_and(list, key); !names.empty()) return names;
    }
    std::vector<std::string> numbers;
    for (std::size_t i = 0; i < list.size(); ++i)
        numbers.push_back(std::to_string(i));
    return numbers;
}

} // namespace

void add_figures(Figures& figures, const std::string& name, const json& answer) {
    if (answer.is_object() && !answer.empty()) {
        for (const auto& [key, value] : answer.items())
            add_figures(figures, name + "/" + key, value);
    } else if (answer.is_array() && !answer.empty()) {
        const auto names = names_of(answer);
        for (std::size_t i = 0; i < answer.size(); ++i)
            add_figures(figures, name + "/" + names[i], answer[i]);
    } else {
        figures[name] = answer.dump();
    }
}

std::set<std::string> changed_paths(const Figures& before, const Figures& after) {
    std::set<std::string> changed;
    const auto note_other = [&changed](const Figures& these, const Figures& those) {
        for (const auto& [path, figure] : these) {
            const auto other = those.find(path);
            if (other == those.end() || other->second != figure) changed.insert(path);
        }
    };
    note_other(before, after);
    note_other(after, before);
    return changed;
}

bool fits(std::string_view pattern, std::string_view path) {
    if (pattern.empty()) return path.empty();
    if (pattern.front() != '*')
        return !path.empty() && path.front() == pattern.front() && fits(pattern.substr(1), path.substr(1));
    const bool anything = pattern.starts_with("**");
    const auto rest = pattern.substr(anything ? 2 : 1);
    for (std::size_t taken = 0; taken <= path.size(); ++taken) {
        if (fits(rest, path.substr(taken))) return true;
        if (taken < path.size() && path[taken] == '/' && !anything) return false;
    }
    return false;
}

std::vector<std::string> surprises(const std::vector<std::string>& patterns,
                                   const std::set<std::string>& changed) {
    std::vector<std::string> found;
    for (const auto& path : changed) {
        const bool expected = std::ranges::any_of(patterns, [&](const auto& p) { return fits(p, path); });
        if (!expected) found.push_back("unexpected: " + path);
    }
    for (const auto& pattern : patterns) {
        const bool seen = std::ranges::any_of(changed, [&](const auto& path) { return fits(pattern, path); });
        if (!seen) found.push_back("missing: " + pattern);
    }
    return found;
}

} // namespace sumpbook::sample
