// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.h"
#include "app/cli/oil_evidence.h"
#include "app/cli/session.h"
#include "app/cli/suggestions.h"
#include "model/oil/assess.h"
#include "model/usage/as_of.h"
#include "reports/compose/oil_assessment.h"
#include "reports/compose/oil_limits.h"

#include <algorithm>
#include <deque>
#include <memory>

namespace sumpbook::cli {
namespace {

struct TypedAssess {
    std::string sample;
    std::string profile;
    bool all = false;
    bool why = false;
};

std::vector<std::string> sample_numbers(const std::vector<const Bike*>& bikes) {
    std::vector<std::string> numbers;
    for (const Bike* bike : bikes) {
        for (const LogEntry* entry : entries_of<Sample>(*bike)) {
            if (std::get<Sample>(entry->value.body).use == OilUse::used)
                numbers.push_back(oil::sample_label(*entry));
        }
    }
    return numbers;
}

bool is_wanted(const oil::SampleAssessment& assessment, const LogEntry* named) {
    return named == nullptr || assessment.entry_id == named->id;
}

Result<std::vector<oil::SampleAssessment>> assess_bike(const Garage& garage, const Bike& bike,
                                                       const TypedAssess& typed) {
    const auto asked = typed.profile.empty() ? std::nullopt : std::optional<std::string>(typed.profile);
    const auto profile = oil::profile_for(bike.details.value, asked);
    if (!profile) return pass_on(profile.error());
    const LogEntry* named = typed.sample.empty() ? nullptr : oil::find_sample(bike, typed.sample);
    if (!typed.sample.empty() && named == nullptr) return std::vector<oil::SampleAssessment>{};
    auto found = oil::assess_samples(oil::OilRecord::of(garage, bike), *profile);
    std::erase_if(found, [&](const auto& each) { return !is_wanted(each, named); });
    if (!typed.all && named == nullptr && found.size() > 1) found.erase(found.begin(), found.end() - 1);
    return found;
}

Result<ExitStatus> assess(Session& session, const TypedAssess& typed) {
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    const auto bikes = session.bikes();
    if (!bikes) return pass_on(bikes.error());
    std::deque<Bike> as_they_stood; // by the end of --today; the assessments point into them
    std::vector<oil::SampleAssessment> samples;
    for (const Bike* bike : *bikes) {
        as_they_stood.push_back(usage::as_of(*bike, session.today()));
        const auto found = assess_bike((*open)->garage, as_they_stood.back(), typed);
        if (!found) return pass_on(found.error());
        samples.insert(samples.end(), found->begin(), found->end());
    }
    if (samples.empty() && !typed.sample.empty()) {
        return refuse("There is no sample of used oil \"" + typed.sample + "\"." +
                      did_you_mean(typed.sample, sample_numbers(*bikes)));
    }
    session.show(compose::oil_assessment_json(samples), compose::oil_assessment_text(samples, typed.why));
    return ExitStatus::done;
}

void add_assess(CommandLine& line, CLI::App& group) {
    auto& command = line.command(
        group, "assess", "The latest oil sample of every bike: how it stands and what to do next",
        {"sumpbook -g my.sumpbook oil assess", "sumpbook -g my.sumpbook oil assess --sample S-12 --why",
         "sumpbook -g my.sumpbook -b \"Old twin\" oil assess --all --profile io360"});
    auto typed = std::make_shared<TypedAssess>();
    command.add_option("--sample", typed->sample, "This sample, by its number or entry id")
        ->type_name("NUMBER");
    command.add_flag("--all", typed->all, "Every sample, not only the latest");
    command.add_option("--profile", typed->profile, "Judge by this profile or limit set")->type_name("NAME");
    command.add_flag("--why", typed->why, "Also the reasons and caveats behind each verdict");
    line.on_run(command, [typed](Session& session) { return assess(session, *typed); });
}

Result<ExitStatus> show_limits(Session& session, const std::string& id) {
    std::vector<const oil::LimitSet*> sets;
    std::vector<std::string> ids;
    for (const oil::LimitSet& set : oil::limit_sets()) {
        sets.push_back(&set);
        ids.push_back(set.id);
    }
    if (!id.empty()) {
        const oil::LimitSet* one = oil::find_limit_set(id);
        if (one == nullptr) return refuse("There is no limit set \"" + id + "\"." + did_you_mean(id, ids));
        sets = {one};
    }
    session.show(compose::oil_limits_json(sets), compose::oil_limits_text(sets));
    return ExitStatus::done;
}

void add_limits(CommandLine& line, CLI::App& group) {
    auto& command = line.command(group, "limits", "The published limit sets, with their sources",
                                 {"sumpbook oil limits", "sumpbook oil limits --set HB2004"});
    auto id = std::make_shared<std::string>();
    command.add_option("--set", *id, "Every limit of this set")->type_name("ID");
    line.on_run(command, [id](Session& session) { return show_limits(session, *id); });
}

} // namespace

void add_oil_command(CommandLine& line) {
    auto& group =
        line.group("oil", "What a laboratory found in the oil: verdicts, trends and published limits");
    add_assess(line, group);
    add_oil_trend(line, group);
    add_oil_compare(line, group);
    add_oil_life(line, group);
    add_limits(line, group);
}

} // namespace sumpbook::cli
