// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/add_attach.h"
#include "app/cli/add_command_objections.h"
#include "app/cli/add_command_write.h"
#include "app/cli/commands.h"
#include "app/cli/entry_fields.h"
#include "reports/compose/entry_words.h"

#include <memory>

namespace sumpbook::cli {
namespace {

struct Kind {
    std::string slug;
    std::string summary;
    std::vector<std::string> examples;
};

const std::vector<Kind>& kinds() {
    const std::string head = "sumpbook -g my.sumpbook -b \"Old twin\" add ";
    static const std::vector<Kind> all{
        {"reading",
         "An odometer or hour meter reading, or a change of dial",
         {head + "reading --odometer 48210", head + "reading --clock-change \"48210 km to 0 km\""}},
        {"fuel",
         "A stop for fuel",
         {head + "fuel --odometer 12345 --volume \"12.3 L\" --total 22.10",
          head +
              "fuel --date 2026-05-03 --odometer 12480 --volume \"6.1 L\" --price \"1.859 EUR/L\" --part"}},
        {"oil-change",
         "An oil change",
         {head + "oil-change --odometer 12345 --volume-in \"2.9 L\" --grade 10W-40 --filter-changed"}},
        {"top-up",
         "Oil or another liquid added",
         {head + "top-up --odometer 12345 --volume \"0.2 L\" --level-before 0.3"}},
        {"work",
         "A job: upkeep or a repair",
         {head + "work --odometer 12345 --does chain-adjust --check \"chain slack: adjusted, 30 mm\"",
          head + "work --text \"Replaced the clutch cable\" --part \"clutch cable x1 [CC-20] 24.50\" "
                 "--done-by self"}},
        {"fit",
         "A component fitted: a tyre, a chain set, a battery",
         {head + "fit --slot rear-tyre --tyre-code 2319 --odometer 12345 --paid 128.00"}},
        {"modification",
         "Something changed from how it was made",
         {head + "modification --what \"Steel brake hoses\" --reversible"}},
        {"measure",
         "Something measured",
         {head + "measure --quantity pad --at front --value \"3.2 mm\" --limit 1.5"}},
        {"sample",
         "A sample of oil and what the laboratory found",
         {head + "sample --odometer 12345 --number S-17 --value Fe=12 --value \"Pb=<2\" --value \"tbn=8.1 mg "
                 "KOH/g ASTM D2896\""}},
        {"fault", "A fault code", {head + "fault --code P0130 --status stored"}},
        {"recall",
         "A recall or service bulletin",
         {head + "recall --number RC-204 --applies yes --done --how \"New fuel hose\""}},
        {"cost",
         "Money for something that is no other entry",
         {head + "cost --category insurance --amount 182.40 --covers-from 2026-04-01 --covers-until "
                 "2027-03-31 --every 12"}},
        {"layup",
         "Laid up, from a day until a day",
         {head + "layup --date 2026-11-01 --until 2027-03-15 --planned"}},
        {"note", "A note", {head + "note --note \"Rattle at 4 000 rpm, cold only\""}}};
    return all;
}

struct Typed {
    TypedEntry fields;
    bool keep = false;
};

Result<ExitStatus> add_entry(Session& session, const std::string& kind, Typed typed) {
    typed.fields = with_own_word_for_paid(std::move(typed.fields), kind);
    const auto bike = session.one_bike();
    if (!bike) return pass_on(bike.error());
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    const auto as = entry_typed_as((*open)->garage, **bike, marks_of(session));
    Entry entry;
    entry.date = session.today();
    entry.body = *body_of_kind(kind);
    if (auto set = set_entry_fields(entry, typed.fields, as); !set) return pass_on(set.error());
    if (auto complete = check_complete(entry); !complete) return pass_on(complete.error());
    const auto objections = objections_to(entry, typed.fields, **bike, std::nullopt, session.today());
    if (auto kept = keep_or_refuse(session, entry, objections, typed.keep); !kept)
        return pass_on(kept.error());
    return write_entry(session, **bike, entry, {}, "Recorded");
}

} // namespace

void add_add_command(CommandLine& line) {
    auto& group =
        line.group("add", "Write an entry: fuel, oil-change, work, sample, ... each with its fields");
    for (const auto& kind : kinds()) {
        auto& command = line.command(group, kind.slug, kind.summary, kind.examples);
        auto typed = std::make_shared<Typed>();
        // Some three hundred options in all: those of the kind that is meant are enough.
        command.preparse_callback([&command, typed, slug = kind.slug](std::size_t) {
            add_entry_options(command, entry_fields(slug), typed->fields);
            command.add_flag("--keep", typed->keep, "Record it as typed, doubts and all");
        });
        line.on_run(command,
                    [typed, slug = kind.slug](Session& session) { return add_entry(session, slug, *typed); });
    }
    add_attach(line, group);
}

} // namespace sumpbook::cli
