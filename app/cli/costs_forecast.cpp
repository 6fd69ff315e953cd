// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/costs_forecast.h"

#include "app/cli/costs_settings.h"
#include "app/cli/left_out.h"
#include "app/cli/session.h"
#include "app/cli/typed.h"
#include "model/cost/budget.h"
#include "model/cost/exchange.h"
#include "model/cost/spent.h"
#include "model/garage/currencies.h"
#include "reports/compose/cost_plots.h"
#include "reports/compose/forecast.h"
#include "reports/compose/spent.h"

#include <limits>
#include <memory>
#include <thread>

namespace sumpbook::cli {
namespace {

using compose::ForecastBy;

struct Typed {
    std::string months;
    std::string seed;
    std::string paths;
    std::string budget;
    std::string by = "month";
    bool why = false;
};

Result<ForecastBy> typed_group(const std::string& text) {
    for (const auto by : {ForecastBy::month, ForecastBy::year, ForecastBy::category, ForecastBy::bike}) {
        if (compose::slug(by) == text) return by;
    }
    return fail(ProblemKind::wrong_usage, "Group by month, year, category or bike.",
                {.file = {}, .line = {}, .column = "--by", .text = text});
}

/// The number in the option, else the usual one.
Result<int> typed_or(int usual, const std::string& option, const std::string& text, int low, int high) {
    return text.empty() ? Result<int>(usual) : typed_whole_number(option, text, low, high);
}

Result<cost::ForecastWish> typed_wish(const Typed& typed) {
    constexpr int fewest_paths = 100;
    constexpr int most_paths = 1'000'000;
    cost::ForecastWish wish;
    const auto months = typed_or(wish.months, "--months", typed.months, cost::ForecastWish::fewest_months,
                                 cost::ForecastWish::most_months);
    if (!months) return pass_on(months.error());
    const auto paths =
        typed_or(static_cast<int>(wish.paths), "--paths", typed.paths, fewest_paths, most_paths);
    if (!paths) return pass_on(paths.error());
    const auto seed = typed_or(1, "--seed", typed.seed, 0, std::numeric_limits<int>::max());
    if (!seed) return pass_on(seed.error());
    wish.months = *months;
    wish.paths = static_cast<std::uint32_t>(*paths);
    wish.seed = static_cast<std::uint64_t>(*seed);
    wish.threads = std::max(1U, std::thread::hardware_concurrency());
    return wish;
}

/// The budget typed, else the yearly one of the bike of -b or of all bikes; absent: there is none.
Result<std::optional<Money>> budget_of(Session& session, const Typed& typed, const GarageSettings& settings,
                                       const std::vector<const Bike*>& bikes) {
    if (typed.budget.empty()) {
        const bool one = !session.options().bike.empty();
        const auto key = one ? cost::budget_key_of_bike(bikes.front()->id) : cost::budget_key_of_all();
        const auto set = settings.yearly_budgets.find(key);
        if (set == settings.yearly_budgets.end() || set->second.currency != settings.currency)
            return std::nullopt;
        return set->second;
    }
    const TypedAs as{.mark = session.decimal_mark(), .currency = settings.currency};
    const auto budget = typed_money("--budget", typed.budget, as);
    if (!budget) return pass_on(budget.error());
    const auto own = cost::converted(*budget, settings.currency, session.today(), settings);
    if (own) return own;
    return refuse("There is no exchange rate from " + budget->currency.code() + " to " +
                      settings.currency.code() + ". Set one with costs rate.",
                  {.file = {}, .line = {}, .column = "--budget", .text = typed.budget});
}

/// A forecast is in one currency; without settings and with amounts in several there is none to choose.
Result<void> one_currency(const Garage& garage) {
    const auto currencies = currencies_in(garage);
    if (garage.settings || currencies.empty()) return {};
    std::string list;
    for (const auto& currency : currencies)
        list += (list.empty() ? "" : ", ") + currency.code();
    return refuse("This file holds amounts in " + list +
                  " and no currency of its own, as the garage's settings are not in it, so nothing can be "
                  "added up. Take the bike into a garage of yours: sumpbook merge MINE THIS --adopt BIKE --to "
                  "OUT");
}

/// What `shown` makes of the forecast asked for.
template <class Shown>
auto with_forecast(Session& session, const Typed& typed, const Shown& shown)
    -> Result<decltype(shown(std::declval<const compose::ForecastReport&>(), true))> {
    const auto by = typed_group(typed.by);
    if (!by) return pass_on(by.error());
    const auto wish = typed_wish(typed);
    if (!wish) return pass_on(wish.error());
    const auto settings = settings_now(session);
    if (!settings) return pass_on(settings.error());
    const auto bikes = session.bikes();
    if (!bikes) return pass_on(bikes.error());
    const auto budget = budget_of(session, typed, *settings, *bikes);
    if (!budget) return pass_on(budget.error());
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    const auto left_out = left_out_of(session);
    if (!left_out) return pass_on(left_out.error());
    if (const auto known = one_currency((*open)->garage); !known) return pass_on(known.error());
    const auto run = cost::run_forecast((*open)->garage, *bikes, session.today(), *wish);
    const auto forecast = cost::cost_forecast(run);
    if (!forecast) return refuse("There is no bike to look ahead for: every one was sold.");
    return shown(compose::ForecastReport{run, *forecast, *by, *budget, *settings}, left_out->prices);
}

Result<ExitStatus> show_forecast(Session& session, const Typed& typed) {
    return with_forecast(session, typed, [&](const compose::ForecastReport& report, bool prices_left_out) {
        auto text = typed.why ? compose::forecast_why_text(report) : compose::forecast_text(report);
        if (prices_left_out) text.sentence(compose::prices_left_out_words(), document::Severity::caution);
        session.show(compose::forecast_json(report), text);
        if (prices_left_out && sentences_are_not_seen(session)) session.remark(compose::prices_left_out_words());
        return ExitStatus::done;
    });
}

} // namespace

Result<UsualForecast> usual_forecast(Session& session) {
    const auto bikes = session.bikes();
    if (!bikes) return pass_on(bikes.error());
    return with_forecast(session, Typed{}, [&](const compose::ForecastReport& report, bool prices_left_out) {
        const auto spending = cost::spending_until(*bikes, report.settings, session.today());
        UsualForecast usual{compose::forecast_text(report), compose::forecast_plot(report.forecast, spending)};
        if (prices_left_out) usual.text.sentence(compose::prices_left_out_words(), document::Severity::caution);
        return usual;
    });
}

void add_costs_forecast(CommandLine& line, CLI::App& group) {
    auto& command =
        line.command(group, "forecast", "What the bikes will cost, and what to put aside each month",
                     {"sumpbook -g my.sumpbook costs forecast",
                      "sumpbook -g my.sumpbook costs forecast --by category --budget 1200",
                      "sumpbook -g my.sumpbook -b \"Old twin\" costs forecast --months 60 --by year --why"});
    auto typed = std::make_shared<Typed>();
    command.add_option("--months", typed->months, "How far to look, 12 to 120 (otherwise 12)");
    command.add_option("--by", typed->by, "month, year, category or bike");
    command.add_option("--budget", typed->budget,
                       "An amount for the next 12 months: how likely is it to spend more?");
    command.add_option("--seed", typed->seed, "Another seed draws other courses of the time (otherwise 1)");
    command.add_option("--paths", typed->paths, "How many courses are drawn (otherwise 10000)");
    command.add_flag("--why", typed->why, "Every assumption with its number");
    line.on_run(command, [typed](Session& session) { return show_forecast(session, *typed); });
}

} // namespace sumpbook::cli
