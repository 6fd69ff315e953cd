// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.h"
#include "app/cli/session.h"
#include "app/cli/typed.h"
#include "model/usage/as_of.h"
#include "reports/compose/spent.h"

#include <algorithm>
#include <memory>

namespace sumpbook::cli {
namespace {

struct TypedSpent {
    std::string by = "category";
    std::string year;
};

Result<cost::GroupBy> typed_group(const std::string& text) {
    using cost::GroupBy;
    for (const auto by : {GroupBy::category, GroupBy::year, GroupBy::month, GroupBy::bike}) {
        if (cost::slug(by) == text) return by;
    }
    return fail(ProblemKind::wrong_usage, "Group by category, year, month or bike.",
                {.file = {}, .line = {}, .column = "--by", .text = text});
}

/// The days asked for: a year, or everything until today.
struct Period {
    Date from;
    Date to;
};

Result<Period> typed_period(const std::string& year, const Date& today) {
    constexpr int first_year = 1900;
    constexpr int last_year = 2100;
    using std::chrono::December;
    using std::chrono::January;
    if (year.empty()) return Period{Date{std::chrono::year{first_year}, January, std::chrono::day{1}}, today};
    const auto number = typed_whole_number("--year", year, first_year, last_year);
    if (!number) return pass_on(number.error());
    const std::chrono::year typed{*number};
    return Period{Date{typed, January, std::chrono::day{1}},
                  std::min(today, Date{typed, December, std::chrono::day{31}})};
}

void add_bike(compose::SpentReport& report, const Bike& whole_bike, const GarageSettings& settings,
              const Period& period) {
    const Bike bike = usage::as_of(whole_bike, period.to);
    auto spending = cost::spending_of(bike, settings);
    std::erase_if(spending,
                  [&](const auto& line) { return line.date < period.from || line.date > period.to; });
    const auto odometer = usage::OdometerSeries::of(bike);
    if (const auto cost = cost::cost_of_distance(spending, odometer, period.from, period.to))
        report.of_distance.emplace_back(bike.details.value.name, *cost);
    std::ranges::move(spending, std::back_inserter(report.spending));
}

Result<ExitStatus> show_spent(Session& session, const TypedSpent& typed) {
    const auto by = typed_group(typed.by);
    if (!by) return pass_on(by.error());
    const auto period = typed_period(typed.year, session.today());
    if (!period) return pass_on(period.error());
    const auto bikes = session.bikes();
    if (!bikes) return pass_on(bikes.error());
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    const auto& recorded = (*open)->garage.settings;
    const GarageSettings settings = recorded ? recorded->value : GarageSettings{};
    compose::SpentReport report;
    report.period = typed.year;
    report.by = *by;
    report.distance_unit = settings.distance_unit;
    for (const auto* bike : *bikes)
        add_bike(report, *bike, settings, *period);
    session.show(compose::spent_json(report), compose::spent_text(report));
    return ExitStatus::done;
}

} // namespace

void add_costs_command(CommandLine& line) {
    auto& group = line.group("costs", "What the bikes have cost: spent");
    auto& command =
        line.command(group, "spent", "What was spent, by category, year, month or bike",
                     {"sumpbook -g my.sumpbook costs spent",
                      "sumpbook -g my.sumpbook -b \"Old twin\" costs spent --by month --year 2025"});
    auto typed = std::make_shared<TypedSpent>();
    command.add_option("--by", typed->by, "category, year, month or bike");
    command.add_option("--year", typed->year, "Only this year");
    line.on_run(command, [typed](Session& session) { return show_spent(session, *typed); });
}

} // namespace sumpbook::cli
