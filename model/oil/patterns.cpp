// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/patterns.h"

#include "embedded/patterns_csv.h"
#include "model/oil/viscosity_change.h"
#include "model/oil/words.h"
#include "model/quantity/data_table.h"

#include <algorithm>
#include <stdexcept>

namespace sumpbook::oil {
namespace {

constexpr std::string_view coolant_pattern = "P8";

const std::vector<DataRow>& rows() {
    static const std::vector<DataRow> all = read_data_table(data::patterns_csv());
    return all;
}

PatternKind kind_of(const std::string& word) {
    if (word == "cause") return PatternKind::cause;
    if (word == "run-in") return PatternKind::run_in;
    if (word == "remark") return PatternKind::remark;
    throw std::logic_error("patterns.csv: kind " + word);
}

bool is_active(const PatternFacts& facts, const std::string& quantity) {
    return facts.high.contains(quantity) || facts.rising.contains(quantity);
}

std::vector<std::string> active_among(const PatternFacts& facts, const std::string& cell) {
    std::vector<std::string> active = split_words(cell);
    std::erase_if(active, [&](const std::string& each) { return !is_active(facts, each); });
    return active;
}

bool quantities_hold(const PatternFacts& facts, const DataRow& row) {
    const bool all = active_among(facts, row["all_of"]).size() == split_words(row["all_of"]).size();
    const bool any = row["any_of"].empty() || !active_among(facts, row["any_of"]).empty();
    return all && any && active_among(facts, row["none_of"]).empty();
}

/// ratio_min <= a/b <= ratio_max, exact: min b <= a <= max b.
bool ratio_holds(const PatternFacts& facts, const DataRow& row) {
    if (row["ratio_of"].empty()) return true;
    const auto a = facts.amounts.find(row["ratio_of"]);
    const auto b = facts.amounts.find(row["ratio_to"]);
    if (a == facts.amounts.end() || b == facts.amounts.end() || b->second <= Decimal{0}) return false;
    const auto least = multiply(row.required("ratio_min"), b->second);
    const auto most = multiply(row.required("ratio_max"), b->second);
    return least && most && *least <= a->second && a->second <= *most;
}

bool change_holds(const PatternFacts& facts, const DataRow& row) {
    const auto least = row.number("change_min");
    const auto most = row.number("change_max");
    if (!least && !most) return true;
    if (!facts.viscosity_mm2_s) return false;
    const auto& [fresh, used] = *facts.viscosity_mm2_s;
    return (!least || compare_viscosity_change(fresh, used, *least) >= 0) &&
           (!most || compare_viscosity_change(fresh, used, *most) <= 0);
}

bool conditions_hold(const PatternFacts& facts, const DataRow& row) {
    const auto words = split_words(row["also"]);
    return std::all_of(words.begin(), words.end(),
                       [&](const std::string& word) { return facts.conditions.contains(word); });
}

bool holds(const PatternFacts& facts, const DataRow& row) {
    const bool glycol = row["or_also"] == "glycol-detected" && facts.glycol_detected;
    if (glycol) return true;
    if (row["pattern"] == coolant_pattern && facts.without_coolant) return false;
    return quantities_hold(facts, row) && ratio_holds(facts, row) && change_holds(facts, row) &&
           conditions_hold(facts, row);
}

/// A cause seen only in values that rise, none of them high, is a remark.
PatternKind kind_by(const PatternFacts& facts, const DataRow& row, const std::vector<std::string>& by) {
    const PatternKind kind = kind_of(row["kind"]);
    const bool high =
        std::any_of(by.begin(), by.end(), [&](const std::string& each) { return facts.high.contains(each); });
    const bool rising_alone = kind == PatternKind::cause && !by.empty() && !high && !facts.glycol_detected;
    return rising_alone ? PatternKind::remark : kind;
}

PatternFound found(const PatternFacts& facts, const DataRow& row) {
    PatternFound pattern;
    pattern.id = row["pattern"];
    pattern.by = active_among(facts, row["all_of"]);
    for (const std::string& each : active_among(facts, row["any_of"]))
        pattern.by.push_back(each);
    if (row["or_also"] == "glycol-detected" && facts.glycol_detected) pattern.by.emplace_back("glycol");
    pattern.kind = kind_by(facts, row, pattern.by);
    pattern.cause = row["cause"];
    pattern.look_at = row["look_at"];
    pattern.numbers = row["numbers"];
    pattern.evidence = row["evidence"];
    pattern.source = row["source"];
    return pattern;
}

} // namespace

std::vector<PatternFound> find_patterns(const PatternFacts& facts) {
    std::vector<PatternFound> patterns;
    std::map<std::string, std::string> hidden_by;
    for (const DataRow& row : rows()) {
        hidden_by[row["pattern"]] = row["hidden_by"];
        if (holds(facts, row)) patterns.push_back(found(facts, row));
    }
    const auto all = patterns;
    std::erase_if(patterns, [&](const PatternFound& pattern) {
        return std::any_of(all.begin(), all.end(),
                           [&](const PatternFound& other) { return other.id == hidden_by[pattern.id]; });
    });
    return patterns;
}

} // namespace sumpbook::oil
