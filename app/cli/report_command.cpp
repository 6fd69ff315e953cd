// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.h"
#include "app/cli/log_conflicts.h"
#include "app/cli/output_file.h"
#include "app/cli/report_parts.h"
#include "reports/write/html.h"
#include "reports/write/text.h"

#include <memory>

namespace sumpbook::cli {
namespace {

struct Typed {
    bool html = false;
    bool text = false;
    std::string to;
};

/// HTML where it is asked for, or where the file's name says so; else text.
bool wants_html(const Typed& typed) {
    return typed.html || (!typed.text && (typed.to.ends_with(".html") || typed.to.ends_with(".htm")));
}

using Make = Result<document::Document> (*)(Session& session, const compose::ReportFront& front);

Result<ExitStatus> run(Session& session, const Typed& typed, Make make) {
    if (session.options().json || session.options().plain) {
        return fail(
            ProblemKind::wrong_usage,
            "A report is text or HTML. For programs there are \"due\", \"oil assess\", \"costs spent\" "
            "and \"log\" with --json.");
    }
    const auto front = report_front_of(session);
    if (!front) return pass_on(front.error());
    const auto report = make(session, *front);
    if (!report) return pass_on(report.error());
    if (auto said = remark_conflicts(session); !said) return pass_on(said.error());
    if (wants_html(typed)) {
        const auto code = fingerprint_code_of(session);
        if (!code) return pass_on(code.error());
        return put_out(session, write::html(*report, *code), typed.to);
    }
    if (typed.to.empty() || typed.to == "-") {
        session.show({}, *report);
        return ExitStatus::done;
    }
    return put_out(session, write::text(*report, {.width = text_file_width, .colour = false}), typed.to);
}

void add_report(CommandLine& line, CLI::App& group, const std::string& name, const std::string& summary,
                Make make) {
    auto& command = line.command(group, name, summary,
                                 {"sumpbook -g my.sumpbook report " + name + " --to " + name + ".html",
                                  "sumpbook -g my.sumpbook -b \"Old twin\" report " + name});
    auto typed = std::make_shared<Typed>();
    auto* html = command.add_flag("--html", typed->html, "As one HTML file that needs nothing else");
    command.add_flag("--text", typed->text, "As text, whatever the file is called")->excludes(html);
    command.add_option("--to", typed->to, "The file to write (otherwise standard output)");
    line.on_run(command, [typed, make](Session& session) { return run(session, *typed, make); });
}

} // namespace

void add_report_command(CommandLine& line) {
    auto& group = line.group("report", "A document to read, print or hand on: due, oil, costs, history");
    add_report(line, group, "due", "What to do now, soon and later, with the days", &due_report);
    add_report(line, group, "oil", "Is the engine wearing, is the oil fit, what next, and how sure is that",
               &oil_report);
    add_report(line, group, "costs", "Spent by year and category, for the distance, against the budget",
               &costs_report);
    add_report(line, group, "history", "Everything done, gaps, doubts and corrections, for a buyer to read",
               &history_report);
}

} // namespace sumpbook::cli
