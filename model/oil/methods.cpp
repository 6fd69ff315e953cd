// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/methods.h"

#include "embedded/methods_csv.h"
#include "model/oil/words.h"
#include "model/quantity/data_table.h"

#include <algorithm>

namespace sumpbook::oil {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// True where the text holds the word, not as the beginning of a longer number (D92 is not in D924).
bool holds(std::string_view text, std::string_view word) {
    for (std::size_t at = 0; at + word.size() <= text.size(); ++at) {
        const bool longer =
            at + word.size() < text.size() && is_digit(word.back()) && is_digit(text[at + word.size()]);
        if (!longer && same_word(text.substr(at, word.size()), word)) return true;
    }
    return false;
}

std::string squeezed(std::string_view typed) {
    std::string text;
    for (const char c : typed) {
        if (c != ' ') text += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    return text;
}

} // namespace

std::optional<std::string> method_of(std::string_view quantity, const std::optional<std::string>& typed) {
    if (!typed || squeezed(*typed).empty()) return std::nullopt;
    for (const DataRow& row : read_data_table(data::methods_csv())) {
        if (row["quantity"] != quantity) continue;
        const auto words = split_words(row["words"]);
        if (std::any_of(words.begin(), words.end(),
                        [&](const std::string& word) { return holds(*typed, word); }))
            return row["method"];
    }
    return squeezed(*typed);
}

} // namespace sumpbook::oil
