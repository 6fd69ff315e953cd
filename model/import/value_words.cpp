// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/value_words.h"

#include "embedded/currency_symbols_csv.h"
#include "embedded/value_words_csv.h"
#include "model/import/words.h"
#include "model/quantity/data_table.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace sumpbook::import {
namespace {

struct WordList {
    std::vector<std::string> values;
    std::map<std::string, std::string, std::less<>> by_words;
};

std::map<std::string, WordList, std::less<>> load_lists() {
    std::map<std::string, WordList, std::less<>> lists;
    for (const auto& row : read_data_table(data::value_words_csv())) {
        WordList& list = lists[row["list"]];
        if (std::ranges::find(list.values, row["value"]) == list.values.end())
            list.values.push_back(row["value"]);
        list.by_words.emplace(plain_words(row["value"]), row["value"]);
        for (const auto& words : pieces_of(row["words"], '|'))
            list.by_words.emplace(plain_words(words), row["value"]);
    }
    return lists;
}

const WordList& list_named(std::string_view name) {
    static const auto lists = load_lists();
    static const WordList none;
    const auto found = lists.find(name);
    return found == lists.end() ? none : found->second;
}

std::vector<Currency> currencies_of_sign(std::string_view plain) {
    std::vector<Currency> found;
    for (const auto& row : read_data_table(data::currency_symbols_csv())) {
        if (plain_words(row["symbol"]) != plain) continue;
        for (const auto& code : pieces_of(row["codes"], '|'))
            if (const auto currency = Currency::from_code(code)) found.push_back(*currency);
    }
    return found;
}

} // namespace

std::optional<std::string> value_of_word(std::string_view list, std::string_view typed) {
    const auto& words = list_named(list).by_words;
    const auto found = words.find(plain_words(typed));
    if (found == words.end()) return std::nullopt;
    return found->second;
}

std::vector<std::string> values_of(std::string_view list) { return list_named(list).values; }

Result<Currency> read_currency(std::string_view text, const Currency& garage) {
    const auto typed = trimmed(text);
    if (const auto by_code = Currency::from_code(typed)) return by_code;
    const auto fitting = currencies_of_sign(plain_words(typed));
    if (fitting.size() == 1) return fitting.front();
    if (std::ranges::find(fitting, garage) != fitting.end()) return garage;
    if (fitting.empty())
        return refuse(fmt::format("\"{}\" is not a currency known here; use its three-letter code.", typed));
    return refuse(fmt::format("\"{}\" can stand for several currencies; use the three-letter code.", typed));
}

} // namespace sumpbook::import
