// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.h"
#include "app/cli/pasted_commands.h"
#include "app/cli/session.h"
#include "reports/write/text.h"

#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <exception>

namespace {

using namespace sumpbook;
using namespace sumpbook::cli;

void add_commands(CommandLine& line) {
    add_new_command(line);
    add_bike_command(line);
    add_add_command(line);
    add_log_command(line);
    add_plan_command(line);
    add_due_command(line);
    add_costs_command(line);
    add_oil_command(line);
    add_faults_command(line);
    add_compare_command(line);
    add_import_command(line);
    add_check_command(line);
    add_merge_command(line);
    add_backup_command(line);
    add_recover_command(line);
    add_handover_command(line);
    add_export_command(line);
    add_report_command(line);
    add_verify_command(line);
    add_fingerprint_command(line);
    add_stamp_command(line);
    add_calc_command(line);
}

int report(Problem problem, const GlobalOptions& options) {
    problem.sentence = with_garage(problem.sentence, options);
    std::fflush(stdout); // what was said before stands before
    std::fputs(("sumpbook: " + write::printable(sentence_with_place(problem) + way_out(problem)) + "\n").c_str(), stderr);
    return static_cast<int>(exit_status(problem.kind));
}

extern "C" void on_interrupt(int /*signal*/) { std::_Exit(static_cast<int>(ExitStatus::interrupted)); }

int run(int argc, const char* const* argv) {
    CommandLine line;
    add_commands(line);
    std::string text;
    if (const auto parsed = line.parse(argc, argv, text); !parsed) return report(parsed.error(), line.options());
    Session session(look_around(), line.options());
    auto status = ExitStatus::done;
    if (!text.empty()) {
        session.print(text);
    } else {
        if (const auto ready = session.prepare(); !ready) return report(ready.error(), line.options());
        const auto result = line.action()(session);
        if (!result) return report(result.error(), line.options());
        status = *result;
    }
    if (const auto printed = session.finish_output(); !printed) return report(printed.error(), line.options());
    return static_cast<int>(status);
}

} // namespace

int main(int argc, char* argv[]) {
    std::signal(SIGINT, &on_interrupt); // an append is whole or not there: stopping is safe at any point
    try {
        return run(argc, argv);
    } catch (const std::exception& broken) {
        std::fputs(("sumpbook: Something is wrong in the program itself: " + std::string(broken.what()) +
                    ". Nothing was written by this command unless it said so.\n")
                       .c_str(),
                   stderr);
        return static_cast<int>(ExitStatus::io_failed);
    }
}
