// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.h"
#include "app/cli/costs_budget.h"
#include "app/cli/costs_forecast.h"
#include "app/cli/costs_settings.h"
#include "app/cli/left_out.h"
#include "app/cli/log_conflicts.h"
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
    std::string from;
    std::string until;
};

Result<cost::GroupBy> typed_group(const std::string& text) {
    using cost::GroupBy;
    for (const auto by : {GroupBy::category, GroupBy::year, GroupBy::month, GroupBy::bike}) {
        if (cost::slug(by) == text) return by;
    }
    return fail(ProblemKind::wrong_usage, "Group by category, year, month or bike.",
                {.file = {}, .line = {}, .column = "--by", .text = text});
}

/// The days asked for; absent: from the start of the record, and until today.
struct Period {
    std::optional<Date> from;
    std::optional<Date> until;
};

Result<Period> typed_year(const std::string& year) {
    constexpr int first_year = 1900;
    constexpr int last_year = 2100;
    using std::chrono::December;
    using std::chrono::January;
    const auto number = typed_whole_number("--year", year, first_year, last_year);
    if (!number) return pass_on(number.error());
    const std::chrono::year typed{*number};
    return Period{Date{typed, January, std::chrono::day{1}}, Date{typed, December, std::chrono::day{31}}};
}

Result<Period> typed_period(const TypedSpent& typed, const Session& session) {
    if (!typed.year.empty()) return typed_year(typed.year);
    TypedAs as;
    as.order = session.date_order();
    as.today = session.today();
    Period period;
    if (!typed.from.empty()) {
        const auto from = typed_date("--from", typed.from, as, true);
        if (!from) return pass_on(from.error());
        period.from = *from;
    }
    if (!typed.until.empty()) {
        const auto until = typed_date("--until", typed.until, as, true);
        if (!until) return pass_on(until.error());
        period.until = *until;
    }
    if (period.from && period.until && *period.until < *period.from)
        return fail(ProblemKind::wrong_usage, "--until is a day before --from.");
    return period;
}

Result<ExitStatus> show_spent(Session& session, const TypedSpent& typed) {
    const auto by = typed_group(typed.by);
    if (!by) return pass_on(by.error());
    const auto period = typed_period(typed, session);
    if (!period) return pass_on(period.error());
    const auto bikes = session.bikes();
    if (!bikes) return pass_on(bikes.error());
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    const auto settings = settings_of((*open)->garage);
    compose::SpentReport report;
    report.from = period->from;
    report.until = period->until;
    report.by = *by;
    report.distance_unit = settings.distance_unit;
    const auto left_out = left_out_of(session);
    if (!left_out) return pass_on(left_out.error());
    report.prices_left_out = left_out->prices;
    for (const auto* bike : *bikes)
        compose::add_spent(report, *bike, settings, session.today());
    session.show(compose::spent_json(report), compose::spent_text(report));
    if (report.prices_left_out && sentences_are_not_seen(session))
        session.remark(compose::prices_left_out_words());
    if (auto said = remark_conflicts(session); !said) return pass_on(said.error());
    return ExitStatus::done;
}

} // namespace

void add_costs_command(CommandLine& line) {
    auto& group =
        line.group("costs", "What the bikes cost: spent, forecast, budget, drift, rate, oil-counts");
    auto& command =
        line.command(group, "spent", "What was spent, by category, year, month or bike",
                     {"sumpbook -g my.sumpbook costs spent",
                      "sumpbook -g my.sumpbook -b \"Old twin\" costs spent --by month --year 2025",
                      "sumpbook -g my.sumpbook costs spent --from 2024-04-01 --until 2025-03-31"});
    auto typed = std::make_shared<TypedSpent>();
    command.add_option("--by", typed->by, "category, year, month or bike");
    auto* year = command.add_option("--year", typed->year, "Only this year");
    command.add_option("--from", typed->from, "From this day on")->excludes(year);
    command.add_option("--until", typed->until, "Until this day")->excludes(year);
    line.on_run(command, [typed](Session& session) { return show_spent(session, *typed); });
    add_costs_forecast(line, group);
    add_costs_budget(line, group);
    add_costs_settings(line, group);
}

} // namespace sumpbook::cli
