// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.h"
#include "app/cli/plan_fields.h"
#include "app/cli/session.h"
#include "app/cli/suggestions.h"
#include "model/garage/slugs.h"
#include "model/upkeep/starter.h"
#include "model/usage/odometer.h"
#include "reports/compose/plan.h"

#include <algorithm>
#include <memory>

namespace sumpbook::cli {
namespace {

const std::string head = "sumpbook -g my.sumpbook -b \"Old twin\" plan ";

/// The bike a plan is of, and the garage it stands in.
struct Here {
    const Bike* bike = nullptr;
    const OpenGarage* open = nullptr;
    TypedAs as;
};

Result<Here> here(Session& session) {
    const auto bike = session.one_bike();
    if (!bike) return pass_on(bike.error());
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    TypedAs as{.mark = session.decimal_mark(), .order = session.date_order()};
    as.currency = currency_of((*open)->garage);
    as.today = session.today();
    as.distance_unit = (*bike)->details.value.odometer_unit;
    return Here{*bike, *open, as};
}

Change change_of(const Here& at, const RecordContent& content) {
    return {at.bike->id, content, heads_like(at.open->records, at.bike->id, content)};
}

Result<const Versioned<PlanItem>*> item_named(const Bike& bike, const std::string& slug) {
    if (const auto* item = find_plan_item(bike, slug)) return item;
    std::vector<std::string> known;
    for (const auto& item : bike.plan)
        known.push_back(item.value.slug);
    return refuse("The plan of " + bike.details.value.name + " has no item \"" + slug + "\"." +
                      did_you_mean(slug, known) + " See: sumpbook plan list",
                  {.file = {}, .line = {}, .column = {}, .text = slug});
}

/// A slug is what other records name: lower-case letters, digits and hyphens.
bool is_slug(const std::string& text) {
    return !text.empty() &&
           text.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-") == std::string::npos;
}

/// "engine-oil" becomes "Engine oil".
std::string label_from(std::string slug) {
    std::ranges::replace(slug, '-', ' ');
    if (slug[0] >= 'a' && slug[0] <= 'z') slug[0] = static_cast<char>(slug[0] - 'a' + 'A');
    return slug;
}

void add_list(CommandLine& line, CLI::App& group) {
    auto& list = line.command(group, "list", "The upkeep plan of every bike, or of one", {head + "list"});
    line.on_run(list, [](Session& session) -> Result<ExitStatus> {
        const auto bikes = session.bikes();
        if (!bikes) return pass_on(bikes.error());
        session.show(compose::plan_json(*bikes), compose::plan_text(*bikes));
        return ExitStatus::done;
    });
}

/// "every 6 000 km, first 1 000 km", "once, at 1 000 km".
std::string interval_words(const PlanItem& item) {
    const std::string first = compose::limits_words(item.first);
    if (!item.repeat.any()) return "once, at " + first;
    return "every " + compose::limits_words(item.repeat) + (item.first.any() ? ", first " + first : "");
}

/// The items it includes that the plan does not have, quoted; empty where it has them all.
std::string not_in_plan(const Bike& bike, const PlanItem& item) {
    std::string missing;
    for (const auto& slug : item.includes) {
        if (slug == item.slug || find_plan_item(bike, slug) != nullptr) continue;
        missing += (missing.empty() ? "\"" : ", \"") + slug + "\"";
    }
    return missing;
}

/// A new name so near to one that the plan or a starter plan has is rather a slip of the pen; with a label of
/// its own it is meant. DESIGN.
Result<void> no_slip(const Bike& bike, const std::string& slug, const TypedPlanFields& typed) {
    if (typed.contains("--label") || find_plan_item(bike, slug) != nullptr) return {};
    std::vector<std::string> known;
    for (const auto& item : bike.plan)
        known.push_back(item.value.slug);
    for (const auto& item : upkeep::starter_plan(bike.details.value, std::nullopt, std::nullopt)) {
        if (item.slug == slug) return {};
        if (std::ranges::find(known, item.slug) == known.end()) known.push_back(item.slug);
    }
    auto near = near_misses(slug, known);
    // "chain" is no slip for "chain-clean": a shorter name of its own.
    std::erase_if(near, [&](const std::string& word) {
        return word.starts_with(slug) && word.size() > slug.size() + 2;
    });
    const auto meant = did_you_mean(slug, near);
    if (meant.empty()) return {};
    return refuse("\"" + slug + "\" would be a new item." + meant +
                  " A new item so much like it needs a name of its own: add --label \"" + label_from(slug) +
                  "\".");
}

Result<ExitStatus> set_item(Session& session, const std::string& slug, const TypedPlanFields& typed) {
    const auto at = here(session);
    if (!at) return pass_on(at.error());
    if (!is_slug(slug))
        return refuse("An item is named by small letters, digits and hyphens, such as engine-oil.",
                      {.file = {}, .line = {}, .column = "item", .text = slug});
    if (auto sure = no_slip(*at->bike, slug, typed); !sure) return pass_on(sure.error());
    PlanItem item;
    item.slug = slug;
    item.label = label_from(slug);
    const auto* present = find_plan_item(*at->bike, slug);
    if (present != nullptr) item = present->value;
    if (auto set = set_plan_fields(item, typed, at->as); !set) return pass_on(set.error());
    if (!item.first.any() && !item.repeat.any())
        return fail(ProblemKind::wrong_usage, "Say how often: --every \"6000 km or 12 months\".");
    if (present != nullptr && present->value == item) {
        session.remark("Nothing to change.");
        return ExitStatus::done;
    }
    const std::string verb = present != nullptr ? "Changed: " : "Planned: ";
    const auto missing = typed.contains("--includes") ? not_in_plan(*at->bike, item) : std::string();
    const std::string was = present != nullptr ? interval_words(present->value) : interval_words(item);
    // The garage is read again after the write: what is said about the bike comes first.
    if (const auto written = session.write({change_of(*at, item)}); !written) return pass_on(written.error());
    const std::string now = interval_words(item);
    session.remark(verb + item.label + ", " + now + (was == now ? "." : " (was " + was + ")."));
    if (!missing.empty())
        session.remark("The plan has no item " + missing + " yet; including it counts once there is one.");
    return ExitStatus::done;
}

void add_set(CommandLine& line, CLI::App& group) {
    auto& command = line.command(group, "set", "Plan an item, or change one",
                                 {head + "set engine-oil --every \"6000 km or 12 months\"",
                                  head + "set valve-clearance --first \"1000 km\" --every \"12000 km\" "
                                         "--cost \"240 EUR\" --source \"handbook p. 84\""});
    auto slug = std::make_shared<std::string>();
    auto typed = std::make_shared<TypedPlanFields>();
    command.add_option("item", *slug, "Its name: engine-oil, brake-fluid, or one of your own")->required();
    add_plan_options(command, *typed);
    line.on_run(command, [slug, typed](Session& session) { return set_item(session, *slug, *typed); });
}

void add_drop(CommandLine& line, CLI::App& group) {
    auto& command = line.command(group, "drop", "Take an item off the plan; what was done stays in the log",
                                 {head + "drop cables"});
    auto slug = std::make_shared<std::string>();
    command.add_option("item", *slug, "Its name")->required();
    line.on_run(command, [slug](Session& session) -> Result<ExitStatus> {
        const auto at = here(session);
        if (!at) return pass_on(at.error());
        const auto item = item_named(*at->bike, *slug);
        if (!item) return pass_on(item.error());
        Change gone = change_of(*at, (*item)->value);
        gone.content = Withdrawal{};
        const std::string label = (*item)->value.label;
        if (const auto written = session.write({std::move(gone)}); !written) return pass_on(written.error());
        session.remark(label + " is off the plan.");
        return ExitStatus::done;
    });
}

Result<ExitStatus> start_plan(Session& session) {
    const auto at = here(session);
    if (!at) return pass_on(at.error());
    const auto& settings = at->open->garage.settings;
    const auto odometer = usage::OdometerSeries::of(*at->bike);
    const auto record = odometer.span();
    auto offered =
        upkeep::starter_plan(at->bike->details.value, settings ? settings->value.home_country : std::nullopt,
                             record ? std::optional(record->at_last) : std::nullopt);
    // What the owner has planned already stays as it is.
    std::erase_if(offered,
                  [&](const PlanItem& item) { return find_plan_item(*at->bike, item.slug) != nullptr; });
    if (offered.empty()) {
        session.remark("The plan has every item of a starter plan already.");
        return ExitStatus::done;
    }
    const std::string name = at->bike->details.value.name;
    session.show(compose::offered_plan_json(name, offered), compose::offered_plan_text(name, offered));
    const auto count = std::to_string(offered.size());
    if (auto yes = session.confirm("Put these " + count + " items into the plan of " + name + "?"); !yes)
        return pass_on(yes.error());
    std::vector<Change> changes;
    for (const auto& item : offered)
        changes.push_back(change_of(*at, item));
    if (const auto written = session.write(std::move(changes)); !written) return pass_on(written.error());
    session.remark("Planned " + count + " items for " + name +
                   ". Next: say when they were last done (sumpbook plan baseline --help).");
    return ExitStatus::done;
}

void add_starter(CommandLine& line, CLI::App& group) {
    auto& command = line.command(group, "starter", "A plan to start from, by common practice",
                                 {head + "starter", head + "starter --yes"});
    line.on_run(command, &start_plan);
}

struct TypedBaseline {
    std::string slug;
    std::string date;
    std::string odometer;
    std::string hours;
    std::string evidence;
    bool drop = false;
};

Result<ExitStatus> drop_baseline(Session& session, const Here& at, const PlanItem& item) {
    const auto held = std::ranges::find_if(at.bike->baselines,
                                           [&](const auto& one) { return one.value.slug == item.slug; });
    if (held == at.bike->baselines.end()) return refuse(item.label + " has no baseline.");
    const std::string label = item.label;
    Change gone = change_of(at, held->value);
    gone.content = Withdrawal{};
    if (const auto written = session.write({std::move(gone)}); !written) return pass_on(written.error());
    session.remark(label + " has no baseline any more.");
    return ExitStatus::done;
}

Result<Baseline> baseline_of(const TypedBaseline& typed, const TypedAs& as) {
    Baseline baseline;
    baseline.slug = typed.slug;
    const auto date = typed_date("--date", typed.date, as);
    if (!date) return pass_on(date.error());
    baseline.date = *date;
    if (!typed.odometer.empty()) {
        const auto odometer = typed_distance("--odometer", typed.odometer, as);
        if (!odometer) return pass_on(odometer.error());
        baseline.odometer = *odometer;
    }
    if (!typed.hours.empty()) {
        const auto hours = typed_amount_of_something("--hours", typed.hours, as);
        if (!hours) return pass_on(hours.error());
        baseline.hours = *hours;
    }
    if (!typed.evidence.empty()) {
        const auto evidence = from_slug<Evidence>(typed.evidence);
        if (!evidence) return pass_on(placed(evidence.error(), "--evidence", typed.evidence));
        baseline.evidence = *evidence;
    }
    return baseline;
}

void add_baseline(CommandLine& line, CLI::App& group) {
    auto& command =
        line.command(group, "baseline", "Say when an item was last done before the record began",
                     {head + "baseline engine-oil --date 2022-07-30 --odometer 30500 --evidence stamp",
                      head + "baseline engine-oil --drop"});
    auto typed = std::make_shared<TypedBaseline>();
    command.add_option("item", typed->slug, "Its name")->required();
    auto* date = command.add_option("--date", typed->date, "The day; needed, unless it is dropped");
    command.add_option("--odometer", typed->odometer, "What the dial showed");
    command.add_option("--hours", typed->hours, "What the hour meter showed");
    command.add_option("--evidence", typed->evidence, "invoice, stamp, seen, told or none");
    command.add_flag("--drop", typed->drop, "Take it back: nothing is said of the time before the record")
        ->excludes(date);
    line.on_run(command, [typed](Session& session) -> Result<ExitStatus> {
        const auto at = here(session);
        if (!at) return pass_on(at.error());
        const auto item = item_named(*at->bike, typed->slug);
        if (!item) return pass_on(item.error());
        if (typed->drop) return drop_baseline(session, *at, (*item)->value);
        if (typed->date.empty())
            return fail(ProblemKind::wrong_usage, "Say the day it was done: --date 2022-07-30");
        const auto baseline = baseline_of(*typed, at->as);
        if (!baseline) return pass_on(baseline.error());
        const std::string label = (*item)->value.label;
        if (const auto written = session.write({change_of(*at, *baseline)}); !written)
            return pass_on(written.error());
        session.remark(label + " counts as done on " + spelled_text(baseline->date) + ".");
        return ExitStatus::done;
    });
}

} // namespace

void add_plan_command(CommandLine& line) {
    auto& group = line.group("plan", "The upkeep plan: list, set, drop, starter, baseline");
    add_list(line, group);
    add_set(line, group);
    add_drop(line, group);
    add_starter(line, group);
    add_baseline(line, group);
}

} // namespace sumpbook::cli
