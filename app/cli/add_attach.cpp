// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/add_attach.h"

#include "app/cli/add_command_write.h"
#include "app/cli/entry_fields.h"
#include "app/cli/input_file.h"
#include "app/cli/log_command_entry.h"
#include "app/cli/media_type.h"
#include "model/store/archive.h"
#include "model/store/new_action.h"
#include "reports/compose/entry_json.h"
#include "reports/compose/entry_words.h"

#include <filesystem>
#include <memory>

namespace sumpbook::cli {
namespace {

struct Typed {
    std::string file;
    std::string to; ///< Id of an entry; empty: a new one.
    TypedEntry fields;
    bool keep = false;
};

/// A file that was read in, and how the entry will name it.
struct ReadFile {
    AttachmentRef reference;
    store::Bytes bytes;
};

/// Only the last piece of the path is kept: the folders of this computer are nobody's business.
Result<ReadFile> read_file(const std::string& path) {
    std::error_code unknown; // what cannot be looked at is refused when it is opened
    if (std::filesystem::is_directory(path, unknown))
        return refuse("This is a folder. Attach the files in it one by one.", {.file = path});
    const auto text =
        bytes_of_input(path, store::max_attachment_bytes,
                       "The file has more than 64 MiB, the most that is kept in a garage. Make it "
                       "smaller, or keep it elsewhere and write down where. Nothing was written.");
    if (!text) return pass_on(text.error());
    const std::string name = std::filesystem::path(path).filename().string();
    if (!store::is_utf8(name))
        return refuse("The name of this file is not written in UTF-8. Rename it first.", {.file = path});
    ReadFile read{{name, media_type_of(name), text->size(), {}}, {text->begin(), text->end()}};
    return read;
}

Result<Entry> new_entry(Session& session, const Bike& bike, const Typed& typed) {
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    const auto as = entry_typed_as((*open)->garage, bike, marks_of(session));
    Entry entry;
    entry.date = session.today();
    entry.body = Attach{};
    if (auto set = set_entry_fields(entry, typed.fields, as); !set) return pass_on(set.error());
    const auto objections = objections_to(entry, typed.fields, bike, std::nullopt, session.today());
    if (auto kept = keep_or_refuse(session, entry, objections, typed.keep); !kept)
        return pass_on(kept.error());
    return entry;
}

/// What the file is put to: the bike, the entry without the file, and the versions that the new one replaces.
struct Target {
    const Bike* bike = nullptr;
    Entry entry;
    std::vector<RecordName> replaces;
    std::string verb;
};

Result<Target> target_of(Session& session, const Typed& typed) {
    if (!typed.to.empty()) {
        if (!typed.fields.empty())
            return fail(ProblemKind::wrong_usage,
                        "With --to the file joins an entry that is there already, which has its own fields. "
                        "Change them with: sumpbook log correct " +
                            typed.to);
        const auto found = entry_by_id(session, typed.to);
        if (!found) return pass_on(found.error());
        return Target{found->bike, found->entry->value, sorted_heads(*found->entry),
                      " with " + found->entry->id + ", now"};
    }
    const auto bike = session.one_bike();
    if (!bike) return pass_on(bike.error());
    auto entry = new_entry(session, **bike, typed);
    if (!entry) return pass_on(entry.error());
    return Target{*bike, std::move(*entry), {}, "Recorded"};
}

Result<ExitStatus> attach(Session& session, const Typed& typed) {
    auto target = target_of(session, typed);
    if (!target) return pass_on(target.error());
    auto file = read_file(typed.file);
    if (!file) return pass_on(file.error());
    auto attachment = store::new_attachment(target->bike->id, std::move(file->bytes), session.random());
    if (!attachment) return pass_on(attachment.error());
    file->reference.part_hash = attachment->hash;
    target->entry.attachments.push_back(file->reference);
    if (!typed.to.empty()) target->verb = "Kept " + file->reference.name + target->verb;
    return write_entry(session, *target->bike, target->entry, target->replaces, target->verb, {*attachment});
}

} // namespace

void add_attach(CommandLine& line, CLI::App& group) {
    auto& command =
        line.command(group, "attach", "A file kept inside the garage: an invoice, a photo; up to 64 MiB",
                     {"sumpbook -g my.sumpbook -b \"Old twin\" add attach invoice.pdf --date 2026-05-03 "
                      "--text \"Clutch cable\"",
                      "sumpbook -g my.sumpbook add attach invoice.pdf --to k7-142"});
    auto typed = std::make_shared<Typed>();
    command.add_option("file", typed->file, "The file; it is copied into the garage and stays where it is")
        ->required();
    command.add_option("--to", typed->to, "Keep it with this entry instead of in one of its own")
        ->type_name("ENTRY-ID");
    command.preparse_callback([&command, typed](std::size_t) { // made only where they are meant
        add_entry_options(command, entry_fields("attach"), typed->fields);
        command.add_flag("--keep", typed->keep, "Record it as typed, doubts and all");
    });
    line.on_run(command, [typed](Session& session) { return attach(session, *typed); });
}

} // namespace sumpbook::cli
