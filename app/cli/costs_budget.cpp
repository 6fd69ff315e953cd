// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/costs_budget.h"

#include "app/cli/costs_settings.h"
#include "app/cli/session.h"
#include "app/cli/typed.h"
#include "model/cost/budget.h"
#include "model/cost/price_drift.h"
#include "model/cost/spent.h"
#include "reports/compose/budget.h"

#include <algorithm>
#include <memory>
#include <thread>

namespace sumpbook::cli {
namespace {

struct Typed {
    std::string amount;
    std::string category;
};

Result<void> known_category(const GarageSettings& settings, const std::string& category) {
    const auto& known = categories_of(settings);
    if (std::ranges::find(known, category) != known.end()) return {};
    std::string list;
    for (const auto& name : known)
        list += (list.empty() ? "" : ", ") + name;
    return refuse("There is no such category. There are: " + list + ".",
                  {.file = {}, .line = {}, .column = "--category", .text = category});
}

/// What a budget is for: its key, and its name in a sentence.
struct Scope {
    std::string key;
    std::string name;
};

Result<Scope> typed_scope(Session& session, const Typed& typed, const GarageSettings& settings) {
    const bool one_bike = !session.options().bike.empty();
    if (one_bike && !typed.category.empty())
        return fail(ProblemKind::wrong_usage, "A budget is for one bike or for one category, not for both.");
    if (one_bike) {
        const auto bike = session.one_bike();
        if (!bike) return pass_on(bike.error());
        return Scope{cost::budget_key_of_bike((*bike)->id), (*bike)->details.value.name};
    }
    if (typed.category.empty()) return Scope{cost::budget_key_of_all(), "all bikes"};
    if (const auto known = known_category(settings, typed.category); !known) return pass_on(known.error());
    return Scope{typed.category, typed.category};
}

Result<ExitStatus> set_budget(Session& session, const Typed& typed) {
    auto settings = settings_now(session);
    if (!settings) return pass_on(settings.error());
    const auto scope = typed_scope(session, typed, *settings);
    if (!scope) return pass_on(scope.error());
    if (typed.amount == "none") {
        if (settings->yearly_budgets.erase(scope->key) == 0)
            return refuse("There is no budget for " + scope->name + ".");
        return replace_settings(session, *settings, "The budget for " + scope->name + " is gone.");
    }
    const TypedAs as{.mark = session.decimal_mark(), .currency = settings->currency};
    const auto amount = typed_money("amount", typed.amount, as);
    if (!amount) return pass_on(amount.error());
    if (amount->currency != settings->currency)
        return refuse("A budget is in the garage's currency, " + settings->currency.code() + ".",
                      {.file = {}, .line = {}, .column = "amount", .text = typed.amount});
    settings->yearly_budgets[scope->key] = *amount;
    return replace_settings(session, *settings,
                            "The budget for " + scope->name + " is " + text_of(*amount) + " a year.");
}

Result<ExitStatus> show_budgets(Session& session) {
    const auto lines = budgets_of(session);
    if (!lines) return pass_on(lines.error());
    session.show(compose::budget_json(*lines), compose::budget_text(*lines, session.today()));
    return ExitStatus::done;
}

void add_budget(CommandLine& line, CLI::App& group) {
    auto& command =
        line.command(group, "budget", "Yearly budgets: what is spent, what is to come, what to put aside",
                     {"sumpbook -g my.sumpbook costs budget", "sumpbook -g my.sumpbook costs budget 1200",
                      "sumpbook -g my.sumpbook costs budget 400 --category fuel",
                      "sumpbook -g my.sumpbook -b \"Old twin\" costs budget none"});
    auto typed = std::make_shared<Typed>();
    command.add_option("amount", typed->amount,
                       "For a calendar year; none takes it away; without it the budgets are printed");
    command.add_option("--category", typed->category,
                       "Only this category (otherwise all, or the bike of -b)");
    line.on_run(command, [typed](Session& session) -> Result<ExitStatus> {
        if (!typed->amount.empty()) return set_budget(session, *typed);
        if (!typed->category.empty())
            return fail(ProblemKind::wrong_usage, "Give the amount too: costs budget 400 --category fuel");
        return show_budgets(session);
    });
}

Result<Decimal> typed_percent(const Session& session, const std::string& text) {
    constexpr int lowest = -50; // prices that halve or double every year are a slip of the hand
    constexpr int highest = 100;
    const auto percent = typed_number("percent", text, TypedAs{.mark = session.decimal_mark()});
    if (!percent) return pass_on(percent.error());
    if (*percent < Decimal{lowest} || *percent > Decimal{highest})
        return refuse("Prices rise by -50 to 100 per cent a year.",
                      {.file = {}, .line = {}, .column = "percent", .text = text});
    return *percent;
}

Result<ExitStatus> set_drift(Session& session, const Typed& typed) {
    auto settings = settings_now(session);
    if (!settings) return pass_on(settings.error());
    std::vector<std::string> categories = categories_of(*settings);
    if (!typed.category.empty()) {
        if (const auto known = known_category(*settings, typed.category); !known)
            return pass_on(known.error());
        categories = {typed.category};
    }
    auto& drifts = settings->price_drift_percent_a_year;
    const std::string what =
        typed.category.empty() ? "Prices of every category" : "Prices of " + typed.category;
    if (typed.amount == "none") {
        for (const auto& category : categories)
            drifts.erase(category);
        return replace_settings(session, *settings, what + " rise by 3 % a year, the usual.");
    }
    const auto percent = typed_percent(session, typed.amount);
    if (!percent) return pass_on(percent.error());
    for (const auto& category : categories)
        drifts[category] = *percent;
    return replace_settings(session, *settings, what + " rise by " + percent->text() + " % a year.");
}

Result<ExitStatus> show_drifts(Session& session) {
    const auto settings = settings_now(session);
    if (!settings) return pass_on(settings.error());
    document::Array items;
    document::Table table{{{"Category", {}}, {"Rises by, % a year", document::Align::right}, {"", {}}}, {}};
    for (const auto& category : categories_of(*settings)) {
        if (cost::is_purchase_or_sale(category)) continue;
        const bool own = settings->price_drift_percent_a_year.contains(category);
        const auto percent =
            own ? settings->price_drift_percent_a_year.at(category) : Decimal{cost::usual_drift_percent};
        document::Object item;
        item.add("category", category).add("price_drift_percent_a_year", percent).add("usual", !own);
        items.emplace_back(std::move(item));
        table.rows.push_back({{category, {}}, {percent.text(), {}}, {own ? "set by you" : "assumed", {}}});
    }
    document::Document text;
    text.heading("How fast prices rise");
    text.table(std::move(table));
    session.show(document::list_of(std::move(items)), text);
    return ExitStatus::done;
}

void add_drift(CommandLine& line, CLI::App& group) {
    auto& command = line.command(group, "drift", "How fast prices rise, for forecasts",
                                 {"sumpbook -g my.sumpbook costs drift",
                                  "sumpbook -g my.sumpbook costs drift 4.5 --category fuel",
                                  "sumpbook -g my.sumpbook costs drift none"});
    auto typed = std::make_shared<Typed>();
    command.add_option("percent", typed->amount,
                       "Per cent a year; none goes back to 3; without it they are printed");
    command.add_option("--category", typed->category, "Only this category (otherwise every one)");
    line.on_run(command, [typed](Session& session) -> Result<ExitStatus> {
        if (!typed->amount.empty()) return set_drift(session, *typed);
        if (!typed->category.empty())
            return fail(ProblemKind::wrong_usage, "Give the per cent too: costs drift 4.5 --category fuel");
        return show_drifts(session);
    });
}

} // namespace

Result<std::vector<cost::BudgetLine>> budgets_of(Session& session) {
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    const Garage& garage = (*open)->garage;
    std::vector<cost::BudgetLine> lines;
    if (settings_of(garage).yearly_budgets.empty()) return lines;
    std::vector<const Bike*> all;
    for (const auto& bike : garage.bikes)
        all.push_back(&bike);
    cost::ForecastWish wish;
    wish.threads = std::max(1U, std::thread::hardware_concurrency());
    lines = cost::budget_lines(cost::run_forecast(garage, all, session.today(), wish), garage);
    if (session.options().bike.empty()) return lines;
    const auto bike = session.one_bike();
    if (!bike) return pass_on(bike.error());
    const auto key = cost::budget_key_of_bike((*bike)->id);
    std::erase_if(lines, [&](const cost::BudgetLine& line) { return line.key != key; });
    return lines;
}

void add_costs_budget(CommandLine& line, CLI::App& group) {
    add_budget(line, group);
    add_drift(line, group);
}

} // namespace sumpbook::cli
