// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/messages.h"

#include "app/cli/exit_status.h"

namespace sumpbook::window {
namespace {

using document::Document;
using document::Severity;

std::string what_helps(ProblemKind kind) {
    switch (kind) {
    case ProblemKind::damaged:
        return "Nothing was changed. Put a good copy in its place, or look at what is wrong with it: "
               "sumpbook -g FILE check";
    case ProblemKind::newer_format:
        return "Nothing was changed. Open it with the version that wrote it, or a later one.";
    case ProblemKind::locked:
        return "Wait until the other program is done, then press F5 to read it again.";
    case ProblemKind::io:
        return "Is this the right file? Choose another with Garage, Open (Ctrl+O), or make a new one: "
               "sumpbook new my.sumpbook --currency EUR";
    case ProblemKind::wrong_usage:
    case ProblemKind::refused:
    case ProblemKind::unconfirmed:
        break;
    }
    return "Choose another garage with Garage, Open (Ctrl+O).";
}

} // namespace

Document nothing_open_message() {
    Document text;
    text.heading("No garage is open", 1);
    text.sentence("Open a garage file with Garage, Open (Ctrl+O), or start the window with one: "
                  "sumpbook-desk my.sumpbook");
    return text.sentence("A new garage is made with: sumpbook new my.sumpbook --currency EUR");
}

Document reading_message(const std::string& path) {
    Document text;
    return text.sentence("Reading " + path + " ...");
}

Document no_bike_message(const std::string& path) {
    Document text;
    text.heading("The garage has no bike yet", 1);
    text.sentence("Add one, then press F5 here:");
    text.sentence("sumpbook -g " + path + " bike add \"Old twin\" --odometer-unit km");
    return text.sentence("Its history can be typed entry by entry (sumpbook add --help) or taken in from a "
                         "spreadsheet (sumpbook import --help).");
}

Document problem_message(const Problem& problem, const std::string& path) {
    Document text;
    text.heading("The garage cannot be shown", 1);
    text.sentence(cli::sentence_with_place(problem), Severity::danger);
    if (problem.sentence.find(path) == std::string::npos) text.facts({{{"File", path}}});
    return text.sentence(what_helps(problem.kind));
}

} // namespace sumpbook::window
