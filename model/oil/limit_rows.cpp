// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/limit_rows.h"

#include "model/oil/words.h"
#include "model/quantity/data_table.h"

#include <algorithm>
#include <array>
#include <stdexcept>

namespace sumpbook::oil {
namespace {

template <std::size_t N>
std::size_t place_of(const std::array<std::string_view, N>& words, const std::string& word) {
    const auto found = std::find(words.begin(), words.end(), word);
    if (found == words.end()) throw std::logic_error("limit file: unknown word " + word);
    return static_cast<std::size_t>(found - words.begin());
}

constexpr std::array<std::string_view, 10> basis_words{"absolute",  "change", "size-of-change", "loss",
                                                       "share",     "rise",   "rise-amount",    "drop",
                                                       "detection", "trend"};
constexpr std::array<std::string_view, 4> operator_words{">", ">=", "<", "<="};
constexpr std::array<std::string_view, 4> ladder_words{"unrated", "within", "watch", "act"};

LimitRow row_of(const DataRow& cells) {
    LimitRow row;
    row.basis = static_cast<Basis>(place_of(basis_words, cells["basis"]));
    if (row.basis != Basis::detection) {
        row.op = static_cast<Operator>(place_of(operator_words, cells["operator"]));
        row.value = cells.required("value");
    }
    row.unit = cells["unit"];
    row.level = cells["level"];
    row.ladder = static_cast<Ladder>(place_of(ladder_words, cells["ladder"]));
    row.evidence = cells["evidence"];
    row.note = cells["note"];
    row.source = cells["source"];
    return row;
}

LimitRule rule_of(const DataRow& cells) {
    LimitRule rule;
    rule.quantity = cells["quantity"];
    rule.fuel = cells["fuel"];
    rule.grades = split_words(cells["grades"]);
    rule.block = cells["block"];
    rule.series = cells["series"];
    rule.method = cells["method"];
    return rule;
}

bool belong_together(const LimitRule& a, const LimitRule& b) {
    return a.quantity == b.quantity && a.fuel == b.fuel && a.grades == b.grades && a.block == b.block &&
           a.series == b.series && a.method == b.method && a.basis == b.basis;
}

} // namespace

std::string_view symbol(Operator op) { return operator_words[static_cast<std::size_t>(op)]; }

bool satisfies(Operator op, std::strong_ordering left_to_right) {
    switch (op) {
    case Operator::above:
        return left_to_right > 0;
    case Operator::at_least:
        return left_to_right >= 0;
    case Operator::below:
        return left_to_right < 0;
    case Operator::at_most:
        break;
    }
    return left_to_right <= 0;
}

bool LimitRule::is_range() const {
    const auto upper = [](const LimitRow& row) { return row.is_upper(); };
    const auto lower = [](const LimitRow& row) { return !row.is_upper() && !row.ends_normal(); };
    return std::any_of(rows.begin(), rows.end(), upper) && std::any_of(rows.begin(), rows.end(), lower);
}

bool LimitRule::offends_upwards_only() const {
    const bool rises = basis == Basis::absolute || basis == Basis::change || basis == Basis::rise ||
                       basis == Basis::rise_amount;
    return rises && std::all_of(rows.begin(), rows.end(),
                                [](const LimitRow& row) { return row.is_upper() || row.ends_normal(); });
}

std::vector<LimitRule> read_limit_rules(std::string_view csv) {
    std::vector<LimitRule> rules;
    for (const DataRow& cells : read_data_table(csv)) {
        LimitRule rule = rule_of(cells);
        LimitRow row = row_of(cells);
        rule.basis = row.basis;
        const auto same = std::find_if(rules.begin(), rules.end(),
                                       [&](const LimitRule& each) { return belong_together(each, rule); });
        auto& home = same == rules.end() ? rules.emplace_back(std::move(rule)) : *same;
        home.rows.push_back(std::move(row));
    }
    return rules;
}

} // namespace sumpbook::oil
