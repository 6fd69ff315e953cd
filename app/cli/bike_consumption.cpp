// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/bike_consumption.h"

#include "app/cli/session.h"
#include "model/usage/as_of.h"
#include "reports/compose/consumption.h"

#include <memory>

namespace sumpbook::cli {
namespace {

usage::OilUseResult oil_used(const Bike& whole_bike, const Date& today) {
    const Bike bike = usage::as_of(whole_bike, today);
    return usage::oil_use(bike, usage::OdometerSeries::of(bike));
}

compose::ConsumptionReport report_of(const Garage& garage, const Bike& whole_bike, const Date& today) {
    const Bike bike = usage::as_of(whole_bike, today);
    const auto odometer = usage::OdometerSeries::of(bike);
    compose::ConsumptionReport report{
        bike.details.value.name, usage::fuel_use(bike, odometer), usage::oil_use(bike, odometer), {}};
    for (const auto& other : garage.bikes) {
        if (other.id == whole_bike.id) continue;
        if (const auto figure = oil_used(other, today).litres_per_1000km)
            report.other_bikes.push_back({other.details.value.name, *figure});
    }
    return report;
}

} // namespace

void add_consumption(CommandLine& line, CLI::App& group) {
    auto& command = line.command(group, "consumption", "Fuel and oil used, full fill to full fill",
                                 {"sumpbook -g my.sumpbook bike consumption",
                                  "sumpbook -g my.sumpbook -b \"Old twin\" bike consumption --details"});
    auto details = std::make_shared<bool>(false);
    command.add_flag("--details", *details,
                     "Every stretch between full fills, every fill of oil, and your other bikes");
    line.on_run(command, [details](Session& session) -> Result<ExitStatus> {
        const auto bikes = session.bikes();
        if (!bikes) return pass_on(bikes.error());
        const auto open = session.open();
        if (!open) return pass_on(open.error());
        std::vector<compose::ConsumptionReport> reports;
        for (const auto* bike : *bikes)
            reports.push_back(report_of((*open)->garage, *bike, session.today()));
        session.show(compose::consumption_json(reports),
                     compose::consumption_text(reports, settings_of((*open)->garage), *details));
        return ExitStatus::done;
    });
}

} // namespace sumpbook::cli
