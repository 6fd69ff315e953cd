// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/suggestions.h"

#include <algorithm>
#include <cstddef>
#include <utility>

namespace sumpbook::cli {
namespace {

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

/// Optimal string alignment distance: substitutions, insertions, deletions and neighbour swaps.
std::size_t slips(std::string_view a, std::string_view b) {
    std::vector<std::vector<std::size_t>> d(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
    for (std::size_t i = 0; i <= a.size(); ++i)
        d[i][0] = i;
    for (std::size_t j = 0; j <= b.size(); ++j)
        d[0][j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const bool same = lower(a[i - 1]) == lower(b[j - 1]);
            d[i][j] = std::min({d[i - 1][j] + 1, d[i][j - 1] + 1, d[i - 1][j - 1] + (same ? 0U : 1U)});
            const bool swapped =
                i > 1 && j > 1 && lower(a[i - 1]) == lower(b[j - 2]) && lower(a[i - 2]) == lower(b[j - 1]);
            if (swapped) d[i][j] = std::min(d[i][j], d[i - 2][j - 2] + 1);
        }
    }
    return d[a.size()][b.size()];
}

bool begins_with(std::string_view word, std::string_view start) {
    return start.size() >= 2 && word.size() > start.size() &&
           std::ranges::equal(word.substr(0, start.size()), start, {}, lower, lower);
}

} // namespace

std::vector<std::string> near_misses(std::string_view typed, const std::vector<std::string>& known) {
    std::vector<std::pair<std::size_t, std::string>> near;
    for (const auto& word : known) {
        const std::size_t distance = begins_with(word, typed) ? 1 : slips(typed, word);
        if (distance <= 2 && distance * 2 < std::max(typed.size(), word.size()))
            near.emplace_back(distance, word);
    }
    std::ranges::stable_sort(near, {}, &std::pair<std::size_t, std::string>::first);
    std::vector<std::string> words;
    for (std::size_t i = 0; i < near.size() && i < 3; ++i)
        words.push_back(near[i].second);
    return words;
}

std::string did_you_mean(std::string_view typed, const std::vector<std::string>& known) {
    const auto near = near_misses(typed, known);
    if (near.empty()) return {};
    std::string text = " Did you mean ";
    for (std::size_t i = 0; i < near.size(); ++i)
        text += (i == 0 ? "\"" : " or \"") + near[i] + "\"";
    return text + "?";
}

} // namespace sumpbook::cli
