// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/words.h"

#include <algorithm>

namespace sumpbook::oil {
namespace {

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

} // namespace

std::vector<std::string> split_words(std::string_view cell) {
    std::vector<std::string> words;
    while (!cell.empty()) {
        const auto end = cell.find(';');
        words.emplace_back(cell.substr(0, end));
        cell = end == std::string_view::npos ? std::string_view{} : cell.substr(end + 1);
    }
    return words;
}

std::string listed(const std::vector<std::string>& words) {
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i > 0) text += i + 1 == words.size() ? " and " : ", ";
        text += words[i];
    }
    return text;
}

bool same_word(std::string_view a, std::string_view b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](char x, char y) { return lower(x) == lower(y); });
}

bool contains_word(const std::vector<std::string>& words, std::string_view word) {
    return std::any_of(words.begin(), words.end(),
                       [&](const std::string& each) { return same_word(each, word); });
}

} // namespace sumpbook::oil
