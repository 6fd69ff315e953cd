// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/oil_evidence.h"

#include "app/cli/session.h"
#include "app/cli/suggestions.h"
#include "app/cli/typed.h"
#include "model/oil/assess.h"
#include "model/oil/oil_compare.h"
#include "model/oil/oil_life.h"
#include "model/oil/oil_trend.h"
#include "model/oil/quantities.h"
#include "model/oil/words.h"
#include "model/usage/as_of.h"
#include "reports/compose/oil_compare.h"
#include "reports/compose/oil_life.h"
#include "reports/compose/oil_trend.h"

#include <algorithm>
#include <memory>

namespace sumpbook::cli {
namespace {

/// What was typed for a run of samples; empty: not given.
struct TypedEvidence {
    std::string quantity;
    std::string oil;
    std::string profile;
    std::string before;
    std::string first;
    std::string second;
    bool why = false;
};

std::optional<std::string> given(const std::string& text) {
    return text.empty() ? std::nullopt : std::optional<std::string>(text);
}

/// The quantity that was asked for by any of its names; empty where none was.
Result<std::string> quantity_slug(const std::string& typed) {
    if (typed.empty()) return std::string{};
    if (const oil::Quantity* found = oil::find_quantity(typed)) return found->slug;
    std::vector<std::string> names;
    for (const oil::Quantity& each : oil::sample_quantities()) {
        names.push_back(each.name);
        names.push_back(each.slug);
    }
    return refuse("No laboratory measures \"" + typed + "\" in oil." + did_you_mean(typed, names));
}

/// The bikes as they stood at the end of --today.
Result<std::vector<Bike>> bikes_that_day(Session& session) {
    const auto bikes = session.bikes();
    if (!bikes) return pass_on(bikes.error());
    std::vector<Bike> as_they_stood;
    for (const Bike* bike : *bikes)
        as_they_stood.push_back(usage::as_of(*bike, session.today()));
    return as_they_stood;
}

Result<ExitStatus> show_trend(Session& session, const TypedEvidence& typed) {
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    const auto quantity = quantity_slug(typed.quantity);
    if (!quantity) return pass_on(quantity.error());
    const auto bikes = bikes_that_day(session);
    if (!bikes) return pass_on(bikes.error());
    std::vector<oil::QuantityTrend> trends;
    for (const Bike& bike : *bikes) {
        const auto profile = oil::profile_for(bike.details.value, given(typed.profile));
        if (!profile) return pass_on(profile.error());
        for (auto& trend : oil::oil_trends(oil::OilRecord::of((*open)->garage, bike), *profile)) {
            if (quantity->empty() || trend.quantity == *quantity) trends.push_back(std::move(trend));
        }
    }
    if (trends.empty() && !quantity->empty())
        return refuse("No sample of used oil holds " + oil::quantity_name(*quantity) + ".");
    const bool details = typed.why || !quantity->empty();
    session.show(compose::oil_trend_json(trends), details ? compose::oil_trend_details_text(trends, typed.why)
                                                          : compose::oil_trend_text(trends));
    return ExitStatus::done;
}

std::optional<std::string> oil_asked_for(const oil::OilRecord& record, const std::string& typed) {
    if (typed.empty()) return oil::oil_to_judge(record);
    return typed;
}

Result<ExitStatus> show_life(Session& session, const TypedEvidence& typed) {
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    const auto bikes = bikes_that_day(session);
    if (!bikes) return pass_on(bikes.error());
    std::vector<oil::OilLife> lives;
    std::vector<std::string> known;
    for (const Bike& bike : *bikes) {
        const auto profile = oil::profile_for(bike.details.value, given(typed.profile));
        if (!profile) return pass_on(profile.error());
        const auto record = oil::OilRecord::of((*open)->garage, bike);
        const auto sampled = oil::sampled_oils(record);
        known.insert(known.end(), sampled.begin(), sampled.end());
        const auto judged = oil_asked_for(record, typed.oil);
        const auto name = std::find_if(sampled.begin(), sampled.end(), [&](const std::string& each) {
            return judged && oil::same_word(each, *judged);
        });
        if (name != sampled.end()) lives.push_back(oil::oil_life(record, *name, *profile));
    }
    if (lives.empty() && !typed.oil.empty())
        return refuse("No sample of an oil \"" + typed.oil + "\" is recorded." +
                      did_you_mean(typed.oil, known));
    session.show(compose::oil_life_json(lives), compose::oil_life_text(lives, typed.why));
    return ExitStatus::done;
}

Result<std::string> sampled_oil(const oil::OilRecord& record, const std::string& typed) {
    const auto sampled = oil::sampled_oils(record);
    for (const std::string& each : sampled) {
        if (oil::same_word(each, typed)) return each;
    }
    const std::string known = sampled.empty() ? " No oil of this bike's engine was sampled."
                                              : " Sampled were: " + oil::listed(sampled) + ".";
    return refuse("No sample of an oil \"" + typed + "\" is recorded." + did_you_mean(typed, sampled) +
                  known);
}

Result<oil::OilComparison> comparison_of(Session& session, const oil::OilRecord& record,
                                         const TypedEvidence& typed) {
    if (!typed.before.empty()) {
        TypedAs as;
        as.order = session.date_order();
        as.today = session.today();
        const auto day = typed_date("--before", typed.before, as);
        if (!day) return pass_on(day.error());
        return oil::compare_before_after(record, *day);
    }
    const auto first = sampled_oil(record, typed.first);
    if (!first) return pass_on(first.error());
    const auto second = sampled_oil(record, typed.second);
    if (!second) return pass_on(second.error());
    if (oil::same_word(*first, *second)) return refuse("An oil cannot be compared with itself.");
    return oil::compare_oils(record, *first, *second);
}

Result<ExitStatus> show_compare(Session& session, const TypedEvidence& typed) {
    if (typed.second.empty() && typed.before.empty())
        return fail(ProblemKind::wrong_usage, "Name two oils, or a day with --before.");
    if (!typed.first.empty() && !typed.before.empty())
        return fail(ProblemKind::wrong_usage, "Name either two oils or a day with --before, not both.");
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    const auto bike = session.one_bike();
    if (!bike) return pass_on(bike.error());
    const Bike as_it_stood = usage::as_of(**bike, session.today());
    const auto comparison = comparison_of(session, oil::OilRecord::of((*open)->garage, as_it_stood), typed);
    if (!comparison) return pass_on(comparison.error());
    session.show(compose::oil_compare_json(*comparison), compose::oil_compare_text(*comparison, typed.why));
    return ExitStatus::done;
}

} // namespace

void add_oil_trend(CommandLine& line, CLI::App& group) {
    auto& command = line.command(
        group, "trend", "Where wear and condition are going from fill to fill",
        {"sumpbook -g my.sumpbook oil trend", "sumpbook -g my.sumpbook oil trend --quantity iron --why",
         "sumpbook -g my.sumpbook -b \"Old twin\" oil trend --quantity \"base number\" --json"});
    auto typed = std::make_shared<TypedEvidence>();
    command
        .add_option("--quantity", typed->quantity,
                    "Only this one, with every sample: iron, Fe, \"base number\"")
        ->type_name("NAME");
    command.add_option("--profile", typed->profile, "Limits of this profile or set in the picture")
        ->type_name("NAME");
    command.add_flag("--why", typed->why, "Also slopes, ranges and tests behind each word");
    line.on_run(command, [typed](Session& session) { return show_trend(session, *typed); });
}

void add_oil_life(CommandLine& line, CLI::App& group) {
    auto& command = line.command(group, "life", "How long the oil lasts in this engine, by its samples",
                                 {"sumpbook -g my.sumpbook oil life",
                                  "sumpbook -g my.sumpbook -b \"Old twin\" oil life --why",
                                  "sumpbook -g my.sumpbook oil life --oil \"Marsh 4T\""});
    auto typed = std::make_shared<TypedEvidence>();
    command.add_option("--oil", typed->oil, "Another oil than the one in the engine")->type_name("NAME");
    command.add_option("--profile", typed->profile, "Levels of this profile or limit set")->type_name("NAME");
    command.add_flag("--why", typed->why, "Also the samples behind it and the sources");
    line.on_run(command, [typed](Session& session) { return show_life(session, *typed); });
}

void add_oil_compare(CommandLine& line, CLI::App& group) {
    auto& command =
        line.command(group, "compare", "Which of two oils wears the engine less, or whether a day changed it",
                     {"sumpbook -g my.sumpbook -b \"Old twin\" oil compare \"Marsh 4T\" \"Fenland 20W-50\"",
                      "sumpbook -g my.sumpbook -b \"Old twin\" oil compare --before 2024-05-01 --why"});
    auto typed = std::make_shared<TypedEvidence>();
    command.add_option("oil", typed->first, "The one oil, by the name it was recorded with");
    command.add_option("other-oil", typed->second, "The other one");
    command.add_option("--before", typed->before, "Fills filled in before this day against those from it on")
        ->type_name("DATE");
    command.add_flag("--why", typed->why, "Also the tests behind it");
    line.on_run(command, [typed](Session& session) { return show_compare(session, *typed); });
}

} // namespace sumpbook::cli
