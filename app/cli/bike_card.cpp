// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/bike_card.h"

#include "app/cli/session.h"
#include "app/cli/suggestions.h"
#include "reports/compose/bike.h"

#include <algorithm>
#include <memory>

namespace sumpbook::cli {
namespace {

struct TypedCard {
    std::string name;
    std::string value;
    std::string unit;
    std::string source;
    bool drop = false;
};

tl::unexpected<Problem> no_such_line(const Bike& bike, const std::string& typed) {
    std::vector<std::string> known;
    for (const auto& line : bike.card)
        known.push_back(line.value.name);
    return refuse("Nothing on the card of " + bike.details.value.name + " is called \"" + typed + "\"." +
                      did_you_mean(typed, known) + " To put it there, give the value too: bike card \"" +
                      typed + "\" 98 --unit Nm",
                  {.file = {}, .line = {}, .column = {}, .text = typed});
}

/// The lines whose name holds what was typed; refused with near misses where none does.
Result<Bike> with_card_lines(const Bike& bike, const std::string& typed) {
    Bike shown = bike;
    std::erase_if(shown.card, [&](const auto& line) { return !compose::names_card_line(line.value, typed); });
    if (shown.card.empty()) return no_such_line(bike, typed);
    return shown;
}

Result<ExitStatus> put_on_card(Session& session, const Bike& bike, const TypedCard& typed) {
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    DataCardValue value{.name = typed.name, .value = typed.value, .unit = {}, .source = {}};
    if (!typed.unit.empty()) value.unit = typed.unit;
    if (!typed.source.empty()) value.source = typed.source;
    const std::string words = bike.details.value.name + ": " + value.name + " " + value.value +
                              (value.unit ? " " + *value.unit : "") + ".";
    std::vector<Change> changes;
    changes.push_back({bike.id, value, heads_like((*open)->records, bike.id, value)});
    if (const auto written = session.write(std::move(changes)); !written) return pass_on(written.error());
    session.remark("On the card of " + words);
    return ExitStatus::done;
}

Result<ExitStatus> take_off_card(Session& session, const Bike& bike, const std::string& name) {
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    const auto line =
        std::ranges::find_if(bike.card, [&](const auto& one) { return one.value.name == name; });
    if (line == bike.card.end()) return no_such_line(bike, name);
    const std::string words = name + " is off the card of " + bike.details.value.name + ".";
    std::vector<Change> changes;
    changes.push_back({bike.id, Withdrawal{}, heads_like((*open)->records, bike.id, line->value)});
    if (const auto written = session.write(std::move(changes)); !written) return pass_on(written.error());
    session.remark(words);
    return ExitStatus::done;
}

Result<ExitStatus> card(Session& session, const TypedCard& typed) {
    const auto bike = session.one_bike();
    if (!bike) return pass_on(bike.error());
    if (typed.drop) return take_off_card(session, **bike, typed.name);
    if (!typed.value.empty()) return put_on_card(session, **bike, typed);
    if (!typed.unit.empty() || !typed.source.empty()) {
        return fail(ProblemKind::wrong_usage,
                    "Give the value too: bike card \"" + typed.name + "\" 98 --unit Nm");
    }
    if (typed.name.empty()) {
        session.show(compose::card_json(**bike), compose::card_text(**bike));
        return ExitStatus::done;
    }
    const auto found = with_card_lines(**bike, typed.name);
    if (!found) return pass_on(found.error());
    session.show(compose::card_json(*found), compose::card_text(*found));
    return ExitStatus::done;
}

} // namespace

void add_card(CommandLine& line, CLI::App& group) {
    auto& command = line.command(
        group, "card", "The data card: torques, capacities, pressures, clearances, plug and filter numbers",
        {"sumpbook -g my.sumpbook -b \"Old twin\" bike card",
         "sumpbook -g my.sumpbook -b \"Old twin\" bike card \"rear axle nut\" 98 --unit Nm --source "
         "\"handbook p. 112\"",
         "sumpbook -g my.sumpbook -b \"Old twin\" bike card axle"});
    auto typed = std::make_shared<TypedCard>();
    auto* name = command.add_option(
        "what", typed->name, "What the value is of; without a value the lines that name it are printed");
    auto* value = command.add_option("value", typed->value, "The value as the handbook gives it");
    command.add_option("--unit", typed->unit, "Its unit");
    command.add_option("--source", typed->source, "Where it stands");
    command.add_flag("--drop", typed->drop, "Take the line off the card")->needs(name)->excludes(value);
    line.on_run(command, [typed](Session& session) { return card(session, *typed); });
}

} // namespace sumpbook::cli
