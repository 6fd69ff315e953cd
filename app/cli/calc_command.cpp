// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/calc_consumption.h"
#include "app/cli/calc_numbers.h"
#include "app/cli/calc_trend_file.h"
#include "app/cli/commands.h"
#include "app/cli/session.h"
#include "model/import/encoding.h"
#include "model/oil/viscosity_temperature.h"
#include "model/store/file_layer.h"
#include "reports/compose/calc_results.h"
#include "reports/compose/calc_trend.h"

#include <memory>

namespace sumpbook::cli {
namespace {

using compose::CalcAnswer;
/// A calculator: the words typed behind its name, in the order of its positional options.
using Calculator = std::function<Result<CalcAnswer>(const std::vector<std::string>&, Session&)>;

struct Positional {
    const char* name;
    const char* meaning;
    bool required = true;
};

/// A command that only computes: no garage is opened.
void add_calculator(CommandLine& line, CLI::App& group, const char* name, const char* summary,
                    const std::vector<std::string>& examples, const std::vector<Positional>& positionals,
                    Calculator calculator) {
    auto& command = line.command(group, name, summary, examples);
    auto words = std::make_shared<std::vector<std::string>>(positionals.size());
    for (std::size_t i = 0; i < positionals.size(); ++i) {
        command.add_option(positionals[i].name, (*words)[i], positionals[i].meaning)
            ->required(positionals[i].required);
    }
    line.on_run(command, [words, calculator = std::move(calculator)](Session& session) -> Result<ExitStatus> {
        const auto answer = calculator(*words, session);
        if (!answer) return pass_on(answer.error());
        session.show(answer->json, answer->text);
        return ExitStatus::done;
    });
}

Result<CalcAnswer> viscosity_index(const std::vector<std::string>& words, Session& session) {
    const auto kv40 = calc_number_above_0("kv40", words[0], session.decimal_mark());
    const auto kv100 = calc_number_above_0("kv100", words[1], session.decimal_mark());
    if (!kv40) return pass_on(kv40.error());
    if (!kv100) return pass_on(kv100.error());
    const auto index = oil::viscosity_index(kv40->to_double(), kv100->to_double());
    if (!index) return pass_on(index.error());
    return compose::viscosity_index_answer(*kv40, *kv100, *index);
}

Result<CalcAnswer> grade(const std::vector<std::string>& words, Session& session) {
    const auto kv100 = calc_number_above_0("kv100", words[0], session.decimal_mark());
    if (!kv100) return pass_on(kv100.error());
    std::optional<Decimal> hths;
    if (!words[1].empty()) {
        const auto typed = calc_number_above_0("hths", words[1], session.decimal_mark());
        if (!typed) return pass_on(typed.error());
        hths = *typed;
    }
    return compose::grade_answer(*kv100, hths, oil::classify(*kv100, hths));
}

Result<oil::ViscosityPoint> point(const std::string& temperature, const std::string& viscosity,
                                  DecimalMark mark) {
    const auto celsius = calc_celsius("temperature", temperature, mark);
    if (!celsius) return pass_on(celsius.error());
    const auto mm2_s = calc_number_above_0("viscosity", viscosity, mark);
    if (!mm2_s) return pass_on(mm2_s.error());
    return oil::ViscosityPoint{*celsius, mm2_s->to_double()};
}

Result<CalcAnswer> viscosity_at(const std::vector<std::string>& words, Session& session) {
    const DecimalMark mark = session.decimal_mark();
    const auto celsius = calc_celsius("temperature", words[0], mark);
    if (!celsius) return pass_on(celsius.error());
    const auto first = point(words[1], words[2], mark);
    if (!first) return pass_on(first.error());
    const auto second = point(words[3], words[4], mark);
    if (!second) return pass_on(second.error());
    const auto line = oil::ViscosityLine::through(*first, *second);
    if (!line) return pass_on(line.error());
    const auto mm2_s = line->mm2_s_at(*celsius);
    if (!mm2_s) return pass_on(mm2_s.error());
    return compose::viscosity_at_answer(*celsius, *mm2_s, line->extrapolates_to(*celsius));
}

Result<CalcAnswer> vin(const std::vector<std::string>& words, Session& /*unused*/) {
    return compose::vin_answer(words[0], inspect_vin(words[0]));
}

Result<CalcAnswer> tyre_date(const std::vector<std::string>& words, Session& session) {
    const auto made = read_tyre_date(words[0], session.today());
    if (!made) return pass_on(made.error());
    return compose::tyre_date_answer(words[0], *made, session.today());
}

Result<CalcAnswer> trend(const std::vector<std::string>& words, Session& session) {
    const std::string& file = words[0];
    const auto bytes = store::read_text(session.files(), file, import::largest_file_bytes + 1);
    if (!bytes) {
        return fail(ProblemKind::io, "The file could not be read: " + store::reason_of(bytes.error()) + ".",
                    {.file = file, .line = {}, .column = {}, .text = {}});
    }
    const auto decoded = import::decode_text(*bytes);
    if (!decoded) return pass_on(decoded.error());
    const auto columns = read_paired_columns(decoded->text, file, session.decimal_mark());
    if (!columns) return pass_on(columns.error());
    return compose::trend_answer(columns->xs, columns->ys);
}

void add_consumption(CommandLine& line, CLI::App& group) {
    auto& command =
        line.command(group, "consumption", "Fuel consumption in every usual unit",
                     {"sumpbook calc consumption 12.3 L 250 km", "sumpbook calc consumption 50 mpg US"});
    auto words = std::make_shared<std::vector<std::string>>();
    command.add_option("amounts", *words, "A volume and a distance, or one figure, with their units")
        ->required();
    line.on_run(command, [words](Session& session) -> Result<ExitStatus> {
        const auto consumption = read_consumption(*words, session.decimal_mark());
        if (!consumption) return pass_on(consumption.error());
        const CalcAnswer answer = compose::consumption_answer(*consumption);
        session.show(answer.json, answer.text);
        return ExitStatus::done;
    });
}

void add_viscosity_calculators(CommandLine& line, CLI::App& group) {
    add_calculator(line, group, "viscosity-index", "Viscosity index from two viscosities (ASTM D2270)",
                   {"sumpbook calc viscosity-index 73.3 8.86"},
                   {{"kv40", "Kinematic viscosity at 40 °C, mm2/s"}, {"kv100", "The same at 100 °C"}},
                   &viscosity_index);
    add_calculator(line, group, "grade", "SAE grade of a measured viscosity (SAE J300)",
                   {"sumpbook calc grade 14.2", "sumpbook calc grade 7.0 2.6"},
                   {{"kv100", "Kinematic viscosity at 100 °C, mm2/s"},
                    {"hths", "Viscosity at 150 °C and high shear, mPa s", false}},
                   &grade);
    add_calculator(line, group, "viscosity-at", "Viscosity at another temperature (ASTM D341)",
                   {"sumpbook calc viscosity-at 80 40 32 100 5.4"},
                   {{"temperature", "The temperature asked for, °C unless a unit is given"},
                    {"t1", "First temperature known"},
                    {"v1", "Kinematic viscosity there, mm2/s"},
                    {"t2", "Second temperature known"},
                    {"v2", "Kinematic viscosity there, mm2/s"}},
                   &viscosity_at);
}

} // namespace

void add_calc_command(CommandLine& line) {
    auto& group = line.group("calc", "The calculators on their own, without a garage");
    group.footer("  sumpbook calc grade 14.2\n  sumpbook calc consumption 12.3 L 250 km\n  sumpbook calc "
                 "tyre-date 2319");
    add_viscosity_calculators(line, group);
    add_calculator(line, group, "vin", "What a vehicle identification number says (49 CFR 565)",
                   {"sumpbook calc vin 11111111111111111"}, {{"vin", "The 17 letters and digits"}}, &vin);
    add_calculator(line, group, "tyre-date", "When a tyre was made, from the code on its sidewall",
                   {"sumpbook calc tyre-date 2319"}, {{"code", "Week and year, three or four digits"}},
                   &tyre_date);
    add_consumption(line, group);
    add_calculator(line, group, "trend", "Whether the y of a table rises or falls along its x",
                   {"sumpbook calc trend wear.csv"}, {{"file", "A CSV file with the columns x and y"}},
                   &trend);
}

} // namespace sumpbook::cli
