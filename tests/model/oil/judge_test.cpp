// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/judge.h"
#include "model/oil/limit_sets.h"
#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::oil;

namespace {

Decimal number(const char* text) { return Decimal::parse(text).value(); }

const LimitRule& rule_of(const char* set, const char* quantity, const char* fuel = "",
                         const char* method = "") {
    for (const LimitRule& rule : find_limit_set(set)->rules) {
        if (rule.quantity == quantity && rule.fuel == fuel && rule.method == method &&
            rule.basis != Basis::trend)
            return rule;
    }
    throw std::logic_error("no such rule");
}

RuleVerdict judged(const LimitRule& rule, ValueState state, const char* amount, const char* fresh = nullptr,
                   std::optional<int> watch = std::nullopt) {
    const auto new_oil = fresh == nullptr ? std::nullopt : std::optional<Decimal>(number(fresh));
    return judge(rule, watch, {state, number(amount)}, new_oil);
}

} // namespace

TEST_CASE("Our watch line stands at 80 % of a single upper limit", "[oil]") {
    const LimitRule& iron = rule_of("HB2004", "Fe");
    CHECK(judged(iron, ValueState::measured, "79.99", nullptr, 80).ladder == Ladder::within);
    const RuleVerdict near = judged(iron, ValueState::measured, "80", nullptr, 80);
    CHECK(near.ladder == Ladder::watch);
    CHECK(near.our_watch_line);
    CHECK_FALSE(near.reached);
    CHECK(judged(iron, ValueState::measured, "80").ladder == Ladder::within);
}

TEST_CASE("Our watch line never warns of ranges, lower limits and detections", "[oil]") {
    const LimitRule& range = rule_of("DD", "kv100", "diesel");
    CHECK(judged(range, ValueState::measured, "13", nullptr, 80).ladder == Ladder::within);
    CHECK(judged(range, ValueState::measured, "21", nullptr, 80).ladder == Ladder::within);
    const LimitRule& share = rule_of("MTU", "tbn", "diesel");
    CHECK(judged(share, ValueState::measured, "5.1", "10", 80).ladder == Ladder::within);
    CHECK(judged(share, ValueState::measured, "5.0", "10", 80).ladder == Ladder::act);
    CHECK(judged(rule_of("HB2004", "glycol"), ValueState::not_detected, "0", nullptr, 80).ladder ==
          Ladder::within);
}

TEST_CASE("Per cent is compared without dividing", "[oil]") {
    const LimitRule& viscosity = rule_of("HB2004", "kv100");
    // 15 % of 14.2 is 2.13: 16.33 is exactly at the limit, which is "greater than"
    CHECK_FALSE(judged(viscosity, ValueState::measured, "16.33", "14.2").reached);
    CHECK(judged(viscosity, ValueState::measured, "16.3300000001", "14.2").reached);
    const LimitRule& loss = rule_of("BAD4", "tbn");
    CHECK(judged(loss, ValueState::measured, "3.01", "7").row->level == "elevated"); // exactly 57 %
    CHECK_FALSE(judged(loss, ValueState::measured, "3.0100000001", "7").reached);
}

TEST_CASE("Between the normal band and the first level it is watch", "[oil]") {
    const LimitRule& fuel = rule_of("BAD4", "fuel", "petrol");
    CHECK(judged(fuel, ValueState::measured, "2.39").ladder == Ladder::within);
    const RuleVerdict gap = judged(fuel, ValueState::measured, "2.4");
    CHECK(gap.ladder == Ladder::watch);
    CHECK(gap.between_levels);
    CHECK(judged(fuel, ValueState::measured, "2.5").row->level == "elevated");
    CHECK(judged(fuel, ValueState::measured, "5.0").row->level == "alarm");
    CHECK(judged(fuel, ValueState::measured, "5.01").row->level == "critical");
}

TEST_CASE("Below detection is within while its upper end passes no published level", "[oil]") {
    const LimitRule& lead = rule_of("HB2004", "Pb");
    CHECK(judged(lead, ValueState::below, "25", nullptr, 80).ladder == Ladder::within);
    CHECK(judged(lead, ValueState::below, "25.1", nullptr, 80).unrated == Unrated::detection_limit);
    const LimitRule& water = rule_of("BAD4", "water");
    CHECK(judged(water, ValueState::below, "0.2").ladder == Ladder::within); // the gap does not count
    CHECK(judged(water, ValueState::below, "0.4").unrated == Unrated::detection_limit);
}

TEST_CASE("For falling quantities both ends must give one word", "[oil]") {
    const LimitRule& loss = rule_of("BAD4", "tbn");
    CHECK(judged(loss, ValueState::below, "1", "8").ladder == Ladder::act); // 87.5 to 100 % lost
    CHECK(judged(loss, ValueState::below, "3", "8").unrated == Unrated::detection_limit);
    const LimitRule& flash = rule_of("MTU", "flash", "diesel", "closed-cup");
    CHECK(judged(flash, ValueState::below, "140").ladder == Ladder::act);
    CHECK(judged(flash, ValueState::below, "150").unrated == Unrated::detection_limit);
}

TEST_CASE("Detections need no amount, amounts need more than a detection", "[oil]") {
    const LimitRule& glycol = rule_of("HB2004", "glycol");
    CHECK(judged(glycol, ValueState::detected, "0").ladder == Ladder::act);
    CHECK(judged(glycol, ValueState::measured, "0.02").ladder == Ladder::act);
    CHECK(judged(glycol, ValueState::measured, "0").ladder == Ladder::within);
    CHECK(judged(glycol, ValueState::below, "0.1").ladder == Ladder::within);
    const LimitRule& water = rule_of("BAD4", "water");
    CHECK(judged(water, ValueState::detected, "0").unrated == Unrated::amount_missing);
    const RuleVerdict none = judged(water, ValueState::not_detected, "0");
    CHECK(none.ladder == Ladder::within);
    CHECK(none.no_detection_limit);
    CHECK(judged(rule_of("BAD4", "tbn"), ValueState::not_detected, "0", "8").unrated ==
          Unrated::amount_missing);
}

TEST_CASE("A change needs a new oil above 0", "[oil]") {
    const LimitRule& viscosity = rule_of("HB2004", "kv100");
    CHECK(judged(viscosity, ValueState::measured, "12").unrated == Unrated::no_reference);
    CHECK(judged(viscosity, ValueState::measured, "12", "0").unrated == Unrated::no_reference);
    CHECK(judged(viscosity, ValueState::measured, "123456789.123456789", "123456789.987654321").unrated ==
          Unrated::too_many_digits);
}
