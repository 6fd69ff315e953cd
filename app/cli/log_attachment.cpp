// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/log_attachment.h"

#include "app/cli/left_out.h"
#include "app/cli/log_command_entry.h"
#include "app/cli/output_file.h"
#include "app/cli/typed.h"
#include "model/store/garage_file.h"

#include <algorithm>
#include <filesystem>
#include <memory>

namespace sumpbook::cli {
namespace {

namespace fs = std::filesystem;

struct Typed {
    std::string id;
    std::string number;
    std::string to;
};

Result<const AttachmentRef*> chosen(const LogEntry& entry, const Typed& typed, bool names_left_out) {
    const auto& files = entry.value.attachments;
    if (files.empty() && names_left_out)
        return refuse("What files are called was left out of this file when it was handed over, so none of " +
                      entry.id + " can be written out here. Ask for a file with the private notes in it.");
    if (files.empty()) return refuse("The entry " + entry.id + " holds no file.");
    if (typed.number.empty() && files.size() == 1) return &files.front();
    std::string list;
    for (std::size_t i = 0; i < files.size(); ++i)
        list += (i == 0 ? "" : ", ") + std::to_string(i + 1) + " " + files[i].name;
    if (typed.number.empty())
        return fail(ProblemKind::wrong_usage, "The entry " + entry.id +
                                                  " holds several files. Choose one with --number: " + list +
                                                  ".");
    const auto number = typed_whole_number("--number", typed.number, 1, static_cast<int>(files.size()));
    if (!number) return pass_on(number.error());
    return &files[static_cast<std::size_t>(*number - 1)];
}

/// Into a folder under its own name, of which only the last piece counts, whatever somebody wrote there.
std::string written_to(const std::string& to, const AttachmentRef& file) {
    std::error_code unknown;
    if (!fs::is_directory(to, unknown)) return to;
    const auto name = fs::path(file.name).filename();
    // A name out of somebody's file: none that is hidden, climbs out of the folder or plays with the terminal.
    const auto text = name.string();
    const bool usable = !text.empty() && text.front() != '.' &&
                        std::ranges::none_of(text, [](unsigned char c) { return c < 0x20 || c == 0x7F; });
    return (fs::path(to) / (usable ? name : fs::path("attachment"))).string();
}

Result<ExitStatus> write_out(Session& session, const Typed& typed) {
    const auto found = entry_by_id(session, typed.id);
    if (!found) return pass_on(found.error());
    const auto left_out = left_out_of(session);
    if (!left_out) return pass_on(left_out.error());
    const auto reference = chosen(*found->entry, typed, left_out->notes);
    if (!reference) return pass_on(reference.error());
    const auto file = session.file();
    if (!file) return pass_on(file.error());
    const auto bytes = (*file)->attachment((*reference)->part_hash);
    if (!bytes) {
        auto problem = bytes.error();
        problem.sentence = "\"" + (*reference)->name + "\" of " + found->entry->id + ": " + problem.sentence;
        return pass_on(problem);
    }
    return put_out(session, {bytes->begin(), bytes->end()}, written_to(typed.to, **reference));
}

} // namespace

void add_log_attachment(CommandLine& line, CLI::App& group) {
    auto& command =
        line.command(group, "attachment", "Write a file that an entry holds out again, exactly as it was",
                     {"sumpbook -g my.sumpbook log attachment k7-142 --to invoice.pdf",
                      "sumpbook -g my.sumpbook log attachment k7-142 --number 2 --to papers/"});
    auto typed = std::make_shared<Typed>();
    command.add_option("entry", typed->id, "The entry, by the id of any of its versions")->required();
    command
        .add_option("--number", typed->number, "Which file, where the entry holds several: 1 is the first")
        ->type_name("N");
    command.add_option("--to", typed->to, "The file to write, or a folder; - for standard output")
        ->type_name("FILE")
        ->required();
    line.on_run(command, [typed](Session& session) { return write_out(session, *typed); });
}

} // namespace sumpbook::cli
