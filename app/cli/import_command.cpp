// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.h"
#include "app/cli/import_report.h"
#include "app/cli/input_file.h"
#include "app/cli/session.h"
#include "model/import/plan.h"
#include "model/import/plan_text.h"

#include <memory>

namespace sumpbook::cli {
namespace {

constexpr std::size_t largest_file_bytes = 16U * 1024U * 1024U; // as much as the reader takes

struct Typed {
    std::string file;
    std::vector<std::string> map;
    std::vector<std::string> units;
    std::string separator;
    std::string encoding;
    bool dry_run = false;
};

using Pairs = std::vector<std::pair<std::string, std::string>>;

Result<Pairs> pairs_of(const std::vector<std::string>& texts) {
    Pairs pairs;
    for (const auto& text : texts) {
        const auto pair = import::read_assignment(text);
        if (!pair) return pass_on(pair.error());
        pairs.push_back(*pair);
    }
    return pairs;
}

Result<import::ImportOptions> options_of(const Typed& typed, const Session& session) {
    import::ImportOptions options;
    if (!session.options().bike.empty()) options.bike = session.options().bike;
    const auto map = pairs_of(typed.map);
    if (!map) return pass_on(map.error());
    options.map = *map;
    const auto units = pairs_of(typed.units);
    if (!units) return pass_on(units.error());
    options.units = *units;
    if (session.date_order() != DateOrder::unknown) options.date_order = session.date_order();
    if (session.decimal_mark() != DecimalMark::unknown) options.decimal_mark = session.decimal_mark();
    if (!typed.separator.empty()) {
        const auto separator = import::read_separator(typed.separator);
        if (!separator) return pass_on(separator.error());
        options.separator = *separator;
    }
    if (!typed.encoding.empty()) {
        const auto encoding = import::read_encoding(typed.encoding);
        if (!encoding) return pass_on(encoding.error());
        options.encoding = *encoding;
    }
    return options;
}

Result<ExitStatus> run(Session& session, import::ImportKind kind, const Typed& typed) {
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    const auto options = options_of(typed, session);
    if (!options) return pass_on(options.error());
    const auto bytes = bytes_of_input(typed.file, largest_file_bytes,
                                      "The file has more than 16 MiB. Split it and import the parts.");
    if (!bytes) return pass_on(bytes.error());
    // Without -b a garage of one bike needs no naming.
    auto named = *options;
    if (!named.bike && (*open)->garage.bikes.size() == 1)
        named.bike = (*open)->garage.bikes.front().details.value.name;
    const auto plan = import::plan_import(kind, typed.file, *bytes, named, (*open)->garage, (*open)->records,
                                          session.today());
    if (!plan) return pass_on(plan.error());
    session.show(import_json(*plan, typed.dry_run), import_text(*plan, typed.dry_run));
    if (!plan->ready()) {
        return refuse("The file leaves something open (above). Nothing was written.", {.file = typed.file});
    }
    if (typed.dry_run || plan->entries.empty()) return ExitStatus::done;
    if (const auto yes = session.confirm("Write " + std::to_string(plan->entries.size()) +
                                         (plan->entries.size() == 1 ? " entry?" : " entries?"));
        !yes) {
        return pass_on(yes.error());
    }
    std::vector<Change> changes;
    for (const auto& planned : plan->entries)
        changes.push_back({planned.bike, planned.entry, {}});
    const auto ids = session.write(std::move(changes));
    if (!ids) return pass_on(ids.error());
    session.remark(ids->size() == 1 ? "Wrote 1 entry, " + ids->front() + "."
                                    : "Wrote " + std::to_string(ids->size()) + " entries, " + ids->front() +
                                          " to " + ids->back() + ", in one action.");
    return ExitStatus::done;
}

} // namespace

void add_import_command(CommandLine& line) {
    auto& group = line.group("import", "Take in CSV files: fuel, work, costs, readings, samples");
    for (const auto kind : {import::ImportKind::fuel, import::ImportKind::work, import::ImportKind::costs,
                            import::ImportKind::readings, import::ImportKind::samples}) {
        const std::string name(import::name_of(kind));
        auto& command = line.command(
            group, name, "Take in a CSV file of " + name,
            {"sumpbook -g my.sumpbook -b \"Old twin\" import " + name + " " + name + ".csv --dry-run",
             "sumpbook -g my.sumpbook -b \"Old twin\" import " + name + " " + name +
                 ".csv --map \"Column=field\" --date-order dmy --decimal comma --yes"});
        auto typed = std::make_shared<Typed>();
        command.add_option("file", typed->file, "The CSV file")->required();
        command.add_flag("--dry-run", typed->dry_run,
                         "Only show what would be added, what is doubtful and what is there already");
        command
            .add_option("--map", typed->map,
                        "Which field a column is: \"Heading=field\" (or #3=field; - keeps it out); repeat")
            ->type_name("HEADING=FIELD")
            ->allow_extra_args(false);
        command
            .add_option("--unit", typed->units,
                        "Unit of a field where the heading has none: \"volume=US gal\"; repeat")
            ->type_name("FIELD=UNIT")
            ->allow_extra_args(false);
        command.add_option("--separator", typed->separator,
                           "comma, semicolon, tab, bar or the character (otherwise found)");
        command.add_option("--encoding", typed->encoding, "utf-8, utf-16 or windows-1252 (otherwise found)");
        line.on_run(command, [kind, typed](Session& session) { return run(session, kind, *typed); });
    }
}

} // namespace sumpbook::cli
