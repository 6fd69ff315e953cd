// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.h"
#include "app/cli/session.h"
#include "app/cli/suggestions.h"
#include "model/usage/as_of.h"
#include "reports/compose/faults.h"

#include <algorithm>
#include <memory>

namespace sumpbook::cli {
namespace {

struct Typed {
    std::string code;
    bool details = false;
    bool exit_code = false;
};

std::string plainly(std::string text) {
    std::erase(text, ' ');
    std::ranges::transform(text, text.begin(), [](char c) {
        return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
    });
    return text;
}

compose::BikeFaults faults_of(const Bike& whole_bike, const Date& today) {
    const Bike bike = usage::as_of(whole_bike, today);
    return {bike.details.value.name, bike.details.value.odometer_unit,
            review::fault_histories(bike, usage::OdometerSeries::of(bike))};
}

/// Leaves one code; refused with near misses where no bike has it.
Result<void> keep_only(const std::string& code, std::vector<compose::BikeFaults>& bikes) {
    std::vector<std::string> known;
    bool found = false;
    for (auto& bike : bikes) {
        for (const auto& history : bike.codes)
            known.push_back(history.code);
        std::erase_if(bike.codes,
                      [&](const auto& history) { return plainly(history.code) != plainly(code); });
        found = found || !bike.codes.empty();
    }
    if (found) return {};
    return refuse("No fault code \"" + code + "\" is recorded." + did_you_mean(code, known) +
                      " See: sumpbook faults",
                  {.file = {}, .line = {}, .column = {}, .text = code});
}

bool needs_attention(const std::vector<compose::BikeFaults>& bikes) {
    return std::ranges::any_of(bikes, [](const auto& bike) {
        return std::ranges::any_of(bike.codes, [](const auto& history) {
            return history.state == review::FaultState::present ||
                   history.state == review::FaultState::stored;
        });
    });
}

Result<ExitStatus> run(Session& session, const Typed& typed) {
    const auto bikes = session.bikes();
    if (!bikes) return pass_on(bikes.error());
    std::vector<compose::BikeFaults> faults;
    for (const auto* bike : *bikes)
        faults.push_back(faults_of(*bike, session.today()));
    if (!typed.code.empty()) {
        if (const auto kept = keep_only(typed.code, faults); !kept) return pass_on(kept.error());
    }
    session.show(compose::faults_json(faults),
                 compose::faults_text(faults, typed.details || !typed.code.empty()));
    return typed.exit_code && needs_attention(faults) ? ExitStatus::findings : ExitStatus::done;
}

} // namespace

void add_faults_command(CommandLine& line) {
    auto& command = line.command("faults", "Fault codes: which came back after clearing, and how often",
                                 {"sumpbook -g my.sumpbook faults",
                                  "sumpbook -g my.sumpbook -b \"Old twin\" faults P0335",
                                  "sumpbook -g my.sumpbook faults --exit-code --json"});
    auto typed = std::make_shared<Typed>();
    command.add_option("code", typed->code, "Only this code, with every reading of it")->type_name("CODE");
    command.add_flag("--details", typed->details, "Every reading of every code");
    command.add_flag("--exit-code", typed->exit_code, "End with 1 where a code is present or stored");
    line.on_run(command, [typed](Session& session) { return run(session, *typed); });
}

} // namespace sumpbook::cli
