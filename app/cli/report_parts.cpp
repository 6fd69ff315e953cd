// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/report_parts.h"

#include "app/cli/costs_budget.h"
#include "app/cli/costs_forecast.h"
#include "app/cli/left_out.h"
#include "model/oil/assess.h"
#include "model/oil/oil_trend.h"
#include "model/review/history_findings.h"
#include "model/review/record_findings.h"
#include "model/store/garage_file.h"
#include "model/upkeep/due.h"
#include "model/usage/as_of.h"
#include "reports/compose/integrity.h"
#include "reports/compose/odometer_plot.h"
#include "reports/compose/pictures.h"
#include "reports/compose/report_costs.h"
#include "reports/compose/report_due.h"
#include "reports/compose/report_history.h"
#include "reports/compose/report_oil.h"

#include <algorithm>
#include <deque>
#include <filesystem>

namespace sumpbook::cli {
namespace {

struct PrintedFingerprint {
    std::string text;
    std::uint64_t records = 0;
};

Result<PrintedFingerprint> fingerprint_of(Session& session) {
    const auto file = session.file();
    if (!file) return pass_on(file.error());
    const auto saved = (*file)->take_fingerprint(session.recorded_time());
    if (saved) return PrintedFingerprint{store::fingerprint_text(saved->fingerprint()), saved->entries};
    if (saved.error().kind != ProblemKind::io && saved.error().kind != ProblemKind::locked)
        return pass_on(saved.error());
    session.remark("The fingerprint is on the report, but could not be saved in the garage file: " +
                   saved.error().sentence);
    const auto leaves = store::leaves_of((*file)->index());
    return PrintedFingerprint{store::fingerprint_text(store::fingerprint_of(leaves)),
                              (*file)->records().size()};
}

/// The bikes meant, without entries dated after the day. A deque: reports point into them.
Result<std::deque<Bike>> bikes_of_the_day(Session& session) {
    const auto bikes = session.bikes();
    if (!bikes) return pass_on(bikes.error());
    std::deque<Bike> found;
    for (const Bike* bike : *bikes)
        found.push_back(usage::as_of(*bike, session.today()));
    return found;
}

std::shared_ptr<const plot::Plot> picture(plot::Plot plot) {
    return std::make_shared<const plot::Plot>(std::move(plot));
}

/// Those of the named pictures that have something to show.
compose::Pictures drawn(const compose::PictureSubject& subject,
                        std::initializer_list<std::string_view> names) {
    compose::Pictures found;
    for (const auto name : names) {
        const auto* known = compose::find_picture(name);
        if (known == nullptr) continue;
        if (auto plot = known->draw(subject)) found.push_back(picture(std::move(*plot)));
    }
    return found;
}

} // namespace

Result<compose::ReportFront> report_front_of(Session& session) {
    const auto bikes = session.bikes();
    if (!bikes) return pass_on(bikes.error());
    const auto path = session.garage_path();
    if (!path) return pass_on(path.error());
    const auto fingerprint = fingerprint_of(session);
    if (!fingerprint) return pass_on(fingerprint.error());
    compose::ReportFront front;
    for (const Bike* bike : *bikes) {
        front.bikes.push_back(bike->details.value.name);
        front.about.push_back(compose::about_bike(*bike, session.today()));
    }
    front.as_of = session.today();
    front.garage_file = std::filesystem::path(*path).filename().string();
    front.fingerprint = fingerprint->text;
    front.records = fingerprint->records;
    return front;
}

Result<plot::QrCode> fingerprint_code_of(Session& session) {
    const auto file = session.file();
    if (!file) return pass_on(file.error());
    return compose::fingerprint_code(store::fingerprint_of(store::leaves_of((*file)->index())));
}

Result<document::Document> due_report(Session& session, const compose::ReportFront& front) {
    const auto bikes = session.bikes();
    if (!bikes) return pass_on(bikes.error());
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    const auto pictures = drawn({&(*open)->garage, *bikes, session.today()}, {"due"});
    return compose::report_due(front, upkeep::due_items(*bikes, session.today()), pictures);
}

Result<document::Document> oil_report(Session& session, const compose::ReportFront& front) {
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    const auto bikes = bikes_of_the_day(session);
    if (!bikes) return pass_on(bikes.error());
    std::vector<compose::OilOfBike> oils;
    for (const Bike& bike : *bikes) {
        const auto profile = oil::profile_for(bike.details.value, std::nullopt);
        if (!profile) return pass_on(profile.error());
        const auto record = oil::OilRecord::of((*open)->garage, bike);
        oils.push_back({.bike = bike.details.value.name,
                        .record = &bike,
                        .samples = oil::assess_samples(record, *profile),
                        .trends = oil::oil_trends(record, *profile),
                        .pictures = drawn({&(*open)->garage, {&bike}, session.today()},
                                          {"wear-metals", "viscosity", "oil-consumption"})});
    }
    return compose::report_oil(front, oils);
}

Result<document::Document> costs_report(Session& session, const compose::ReportFront& front) {
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    const auto bikes = bikes_of_the_day(session);
    if (!bikes) return pass_on(bikes.error());
    compose::CostsOfBikes costs;
    costs.settings = settings_of((*open)->garage);
    costs.spent.until = session.today();
    const auto left_out = left_out_of(session);
    if (!left_out) return pass_on(left_out.error());
    costs.spent.prices_left_out = left_out->prices;
    costs.spent.distance_unit = costs.settings.distance_unit;
    for (const Bike& bike : *bikes) {
        compose::add_spent(costs.spent, bike, costs.settings, session.today());
        costs.entries_without_money += compose::entries_without_money(bike);
    }
    const auto all = session.bikes();
    if (!all) return pass_on(all.error());
    const compose::PictureSubject subject{&(*open)->garage, *all, session.today()};
    costs.spent_pictures = drawn(subject, {"costs"});
    if (auto forecast = usual_forecast(session)) {
        costs.forecast = std::move(forecast->text);
        costs.forecast_pictures.push_back(picture(std::move(forecast->picture)));
    }
    auto budgets = budgets_of(session);
    if (!budgets) return pass_on(budgets.error());
    costs.budgets = std::move(*budgets);
    return compose::report_costs(front, costs);
}

Result<document::Document> history_report(Session& session, const compose::ReportFront& front) {
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    const auto bikes = bikes_of_the_day(session);
    if (!bikes) return pass_on(bikes.error());
    std::vector<compose::HistoryOfBike> histories;
    for (const Bike& bike : *bikes) {
        auto findings = review::history_findings(bike);
        for (auto& finding : review::conflict_findings({&bike}, false, (*open)->records))
            findings.push_back(std::move(finding));
        histories.push_back({.bike = &bike,
                             .findings = std::move(findings),
                             .gaps = review::record_gaps(bike),
                             .corrections = compose::corrections_of(bike, (*open)->records, session.today()),
                             .pictures = {picture(compose::odometer_plot(bike))}});
    }
    return compose::report_history(front, histories);
}

} // namespace sumpbook::cli
