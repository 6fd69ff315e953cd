// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/catch.h"
#include "tests/model/oil/oil_garage.h"
#include "tests/outside/check_table.h"

#include "model/oil/judge.h"

#include <algorithm>
#include <map>

using namespace sumpbook;
using namespace sumpbook::oil;
using namespace sumpbook::oil::testing;
using namespace sumpbook::outside;

namespace {

/// How the table names a quantity, and the slug it is recorded under.
const std::map<std::string, std::string>& slugs_of_parameters() {
    static const std::map<std::string, std::string> slugs{{"iron", "Fe"},
                                                          {"chromium", "Cr"},
                                                          {"copper", "Cu"},
                                                          {"tin", "Sn"},
                                                          {"aluminium", "Al"},
                                                          {"lead", "Pb"},
                                                          {"lead with copper", "Pb"},
                                                          {"boron", "B"},
                                                          {"silicon", "Si"},
                                                          {"silver", "Ag"},
                                                          {"sodium", "Na"},
                                                          {"potassium", "K"},
                                                          {"viscosity 40 C", "kv40"},
                                                          {"viscosity 100 C", "kv100"},
                                                          {"viscosity", "kv100"},
                                                          {"glycol", "glycol"},
                                                          {"water", "water"},
                                                          {"fuel dilution", "fuel"},
                                                          {"total acid number", "tan"},
                                                          {"soot", "soot"},
                                                          {"base number loss", "tbn"},
                                                          {"base number", "tbn"},
                                                          {"oxidation", "oxidation"},
                                                          {"nitration", "nitration"},
                                                          {"sulfation", "sulfation"},
                                                          {"solids", "solids"},
                                                          {"flash point COC", "flash"},
                                                          {"flash point PM", "flash"},
                                                          {"flash point", "flash"},
                                                          {"pentane insolubles", "insolubles"}};
    return slugs;
}

std::string quantity_of(const CheckRow& row) { return slugs_of_parameters().at(row["parameter"]); }

bool is_relative(const CheckRow& row) { return row["basis"] != "absolute" && row["basis"] != "detection"; }

/// Grade of the oil a row holds for.
std::optional<std::string> grade_of(const CheckRow& row) {
    const std::string& scope = row["engine_scope"];
    if (scope.find("15W-40") != std::string::npos) return "15W-40";
    if (scope.find("10W-30") != std::string::npos) return "10W-30";
    if (scope.find("SAE 30") != std::string::npos) return "SAE 30";
    if (scope.find("SAE 40") != std::string::npos) return "SAE 40";
    return std::nullopt;
}

std::optional<std::string> method_of_row(const CheckRow& row) {
    if (row["note"].find("hydrochloric") != std::string::npos) return "ASTM D4739";
    if (quantity_of(row) == "tbn") return "ASTM D2896";
    if (row["parameter"] == "flash point COC") return "ASTM D92";
    if (quantity_of(row) == "flash") return "ASTM D93";
    return std::nullopt;
}

/// A garage in which the row holds for the bike and its oil.
OilGarage garage_for(const CheckRow& row, const std::string& fresh) {
    OilGarage garage;
    const std::string& scope = row["engine_scope"];
    if (scope.starts_with("diesel")) garage.details().fuel = FuelType::diesel;
    if (scope.starts_with("aluminium"))
        garage.details().block = BlockMaterial::aluminium;
    else
        garage.details().block = BlockMaterial::iron;
    const std::string quantity = quantity_of(row);
    garage.new_oil("2024-01-01", {value(quantity, fresh, {}, method_of_row(row))});
    garage.fill("2024-01-02", grade_of(row));
    return garage;
}

std::string unit_of(const CheckRow& row) {
    return is_relative(row) || row["basis"] == "detection" ? std::string{} : row["unit"];
}

std::string with_hyphens(std::string text) {
    std::replace(text.begin(), text.end(), '_', '-');
    return text;
}

/// The verdict, by the rule that holds this published row, on a value of its set.
const RuleVerdict& verdict_for(const CheckRow& row, const RatedValue& rated) {
    const auto holds_row = [&](const LimitRow& limit) {
        const bool same_level = limit.level == with_hyphens(row["level"]);
        if (row["basis"] == "detection") return same_level;
        return same_level && symbol(limit.op) == row["operator"] && limit.value == number(row["value"]);
    };
    for (const RuleVerdict& verdict : rated.verdicts) {
        if (std::any_of(verdict.rule->rows.begin(), verdict.rule->rows.end(), holds_row)) return verdict;
    }
    throw std::logic_error("no rule holds the row " + row.key());
}

/// What the used oil shows at `limit` of the row's basis, the new oil showing 200.
std::string used_at(const CheckRow& row, const Decimal& limit) {
    const std::string& basis = row["basis"];
    const Decimal twice = multiply(limit, Decimal{2}).value();
    const Decimal fresh{200};
    if (basis == "absolute") return limit.text();
    if (basis == "reduction from new oil") return subtract(fresh, twice)->text();
    if (basis == "percent of new oil") return twice.text();
    if (basis == "drop from fresh oil") return subtract(fresh, limit)->text();
    if (basis == "increase over new oil") return add(fresh, limit)->text();
    return add(fresh, twice)->text(); // a change or rise in per cent
}

RatedValue rated_at(const CheckRow& row, const std::string& used) {
    OilGarage garage = garage_for(row, is_relative(row) ? "200" : "0");
    garage.draw("2024-06-01", {value(quantity_of(row), used, unit_of(row), method_of_row(row))});
    return rated(garage.assess(profile_of_set(*find_limit_set(row["set_id"]))), quantity_of(row));
}

/// A hundredth of the last digit, far below any step of a laboratory.
Decimal step_of(const Decimal& limit) { return {1, limit.scale() + 2}; }

Ladder ladder_of(const std::string& set, const std::string& level) {
    static const std::map<std::string, Ladder> ladders{
        {"normal_upto", Ladder::within}, {"elevated", Ladder::watch},  {"critical", Ladder::act},
        {"low_end", Ladder::watch},      {"high_end", Ladder::act},    {"watch", Ladder::watch},
        {"abnormal", Ladder::act},       {"attention", Ladder::watch}, {"serious", Ladder::act},
        {"rejection", Ladder::act},      {"limit", Ladder::act},       {"warning", Ladder::act},
        {"condemn", Ladder::act},        {"max_usable", Ladder::act}};
    if (level == "alarm") return set == "PIEL" ? Ladder::watch : Ladder::act;
    return ladders.at(level);
}

bool is_hit(const std::string& op, int side) {
    if (op == ">") return side > 0;
    if (op == ">=") return side >= 0;
    if (op == "<") return side < 0;
    return side <= 0;
}

/// A rule has reached a row when it stands at it or at a worse one in the same direction.
bool has_reached(const RuleVerdict& verdict, const CheckRow& row) {
    const bool upper = row["operator"].front() == '>';
    return verdict.reached && verdict.row->is_upper() == upper &&
           verdict.ladder >= ladder_of(row["set_id"], row["level"]) &&
           (upper ? verdict.row->value >= number(row["value"]) : verdict.row->value <= number(row["value"]));
}

void check_side(const CheckRow& row, int side) {
    const Decimal limit = number(row["value"]);
    const Decimal step = step_of(limit);
    const Decimal at = side < 0 ? *subtract(limit, step) : side > 0 ? *add(limit, step) : limit;
    INFO("at " << at.text());
    const RatedValue rated = rated_at(row, used_at(row, at));
    const RuleVerdict& verdict = verdict_for(row, rated);
    const bool hit = is_hit(row["operator"], side);
    CHECK(rated.set == row["set_id"]);
    if (row["level"] == "normal_upto") {
        CHECK((verdict.between_levels || verdict.reached) != hit);
        CHECK(verdict.ladder == (hit ? Ladder::within : Ladder::watch));
        return;
    }
    CHECK(has_reached(verdict, row) == hit);
    if (hit) CHECK(rated.ladder >= ladder_of(row["set_id"], row["level"]));
    if (hit) CHECK(rated.source == row["source"]);
}

void check_detection(const CheckRow& row) {
    const std::vector<std::pair<std::string, Ladder>> cases{{"detected", Ladder::act},
                                                            {"0.1", Ladder::act},
                                                            {"not detected", Ladder::within},
                                                            {"<0.1", Ladder::within}};
    for (const auto& [text, ladder] : cases) {
        INFO(text);
        CHECK(verdict_for(row, rated_at(row, text)).ladder == ladder);
    }
}

/// The published limit as the product holds it, where no record of a bike can lead to it.
const LimitRow& row_in_set(const CheckRow& row) {
    for (const LimitRule& rule : find_limit_set(row["set_id"])->rules) {
        for (const LimitRow& limit : rule.rows) {
            const bool same = speaks_of(rule, quantity_of(row)) && symbol(limit.op) == row["operator"] &&
                              limit.value == number(row["value"]) && limit.source == row["source"];
            if (same) return limit;
        }
    }
    throw std::logic_error("no limit for the row " + row.key());
}

void check_operator_alone(const CheckRow& row) {
    const LimitRow& limit = row_in_set(row);
    const Decimal step = step_of(limit.value);
    const Decimal fresh{200};
    for (const int side : {-1, 0, 1}) {
        const Decimal at = side < 0   ? *subtract(limit.value, step)
                           : side > 0 ? *add(limit.value, step)
                                      : limit.value;
        CHECK(reaches(limit, number(used_at(row, at)), fresh) == is_hit(row["operator"], side));
    }
}

bool is_from_memory(const CheckRow& row) { return row["evidence"] == "FROM MEMORY"; }
bool is_for_gas(const CheckRow& row) { return row["engine_scope"].starts_with("gas"); }
/// A base number in mg KOH/g whose set does not say which acid it was titrated with.
bool has_no_method(const CheckRow& row) {
    return row["parameter"] == "base number" && row["unit"] == "mg KOH/g" && row["set_id"] == "MINE";
}

} // namespace

TEST_CASE("Every published limit divides values just where it was printed", "[outside][oil]") {
    for (const CheckRow& row : check_table("oil-limits.csv")) {
        if (is_from_memory(row) || is_for_gas(row) || has_no_method(row)) continue; // below
        TESTING_ROW(row);
        if (row["basis"] == "detection") {
            check_detection(row);
            continue;
        }
        for (const int side : {-1, 0, 1})
            check_side(row, side);
    }
}

TEST_CASE("A change in either direction reaches a limit printed without a sign", "[outside][oil]") {
    for (const CheckRow& row : check_table("oil-limits.csv")) {
        if (row["basis"] != "abs change from new oil" || is_from_memory(row)) continue;
        TESTING_ROW(row);
        const Decimal fall = *subtract(Decimal{0}, *add(number(row["value"]), step_of(number(row["value"]))));
        CHECK(rated_at(row, used_at(row, fall)).ladder == Ladder::act);
        CHECK(rated_at(row, used_at(row, *subtract(Decimal{0}, number(row["value"])))).ladder ==
              Ladder::watch);
    }
}

TEST_CASE("Limits from memory are shown and never judge", "[outside][oil]") {
    for (const CheckRow& row : check_table("oil-limits.csv")) {
        if (!is_from_memory(row)) continue;
        TESTING_ROW(row);
        check_operator_alone(row);
        CHECK_FALSE(find_limit_set(row["set_id"])->can_be_chosen());
        CHECK_FALSE(find_profile(row["set_id"]).has_value());
        CHECK(row_in_set(row).evidence == "FROM MEMORY");
    }
}

TEST_CASE("Limits for gas engines join no bike", "[outside][oil]") {
    for (const CheckRow& row : check_table("oil-limits.csv")) {
        if (!is_for_gas(row)) continue;
        TESTING_ROW(row);
        check_operator_alone(row);
        const RatedValue rated = rated_at(row, row["value"]); // between the diesel rows of the same grade
        CHECK(rated.set == "MTU");
        CHECK(rated.ladder == Ladder::within);
    }
}

TEST_CASE("A base-number limit without a method judges nothing", "[outside][oil]") {
    for (const CheckRow& row : check_table("oil-limits.csv")) {
        if (!has_no_method(row)) continue;
        TESTING_ROW(row);
        check_operator_alone(row);
        CHECK(rated_at(row, "1").unrated == Unrated::method);
    }
}

TEST_CASE("Every published set is there with its scope, caveat and source", "[outside][oil]") {
    for (const CheckRow& row : check_table("oil-limit-sets.csv")) {
        TESTING_ROW(row);
        const LimitSet* set = find_limit_set(row["set_id"]);
        REQUIRE(set != nullptr);
        CHECK(set->title == row["title"]);
        CHECK(set->engines == row["engine_scope"]);
        CHECK(set->evidence == row["evidence"]);
        CHECK(set->source == row["source"]);
        CHECK_FALSE(set->caveat.empty());
        CHECK(set->can_be_chosen() == (row["evidence"] != "FROM MEMORY"));
        CHECK_FALSE(set->rules.empty());
    }
}
