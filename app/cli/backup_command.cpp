// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.h"
#include "app/cli/session.h"
#include "app/cli/typed.h"
#include "reports/compose/backup.h"

#include <filesystem>
#include <memory>

namespace sumpbook::cli {
namespace {

constexpr int most_backups = 100'000;

struct Typed {
    std::string to;
    std::string keep;
};

Result<ExitStatus> back_up(Session& session, const Typed& typed) {
    const auto path = session.garage_path();
    if (!path) return pass_on(path.error());
    std::optional<std::size_t> keep;
    if (!typed.keep.empty()) {
        const auto number = typed_whole_number("--keep", typed.keep, 1, most_backups);
        if (!number) return pass_on(number.error());
        keep = static_cast<std::size_t>(*number);
    }
    std::error_code unknown; // what cannot be looked at is refused when it is written to
    if (std::filesystem::is_regular_file(typed.to, unknown))
        return refuse(typed.to + " is a file; name a folder.");
    const auto backup = store::back_up(session.files(), *path, typed.to, session.today(), keep, {});
    if (!backup) return pass_on(backup.error());
    for (const auto& notice : backup->notices)
        session.remark(notice);
    session.show(compose::backup_json(*backup), compose::backup_text(*backup, typed.to));
    return ExitStatus::done;
}

} // namespace

void add_backup_command(CommandLine& line) {
    auto& command = line.command("backup", "A dated copy of the garage, every byte of it verified",
                                 {"sumpbook -g my.sumpbook backup --to /media/stick/garage",
                                  "sumpbook -g my.sumpbook backup --to /media/stick/garage --keep 12"});
    auto typed = std::make_shared<Typed>();
    command.add_option("--to", typed->to, "The folder for it; made if it is not there")
        ->type_name("FOLDER")
        ->required();
    command
        .add_option(
            "--keep", typed->keep,
            "Remove older backups of this garage there, all but the newest so many; absent: none is removed")
        ->type_name("N");
    line.on_run(command, [typed](Session& session) { return back_up(session, *typed); });
}

} // namespace sumpbook::cli
