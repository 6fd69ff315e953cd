// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/exit_status.h"

namespace sumpbook::cli {

ExitStatus exit_status(ProblemKind kind) {
    switch (kind) {
    case ProblemKind::wrong_usage:
        return ExitStatus::wrong_usage;
    case ProblemKind::refused:
    case ProblemKind::unconfirmed:
        return ExitStatus::refused;
    case ProblemKind::damaged:
    case ProblemKind::newer_format:
        return ExitStatus::damaged;
    case ProblemKind::io:
        return ExitStatus::io_failed;
    case ProblemKind::locked:
        return ExitStatus::locked;
    }
    return ExitStatus::refused;
}

std::string sentence_with_place(const Problem& problem) {
    const Place& place = problem.place;
    std::string where = place.file;
    const auto append = [&where](const std::string& piece) { where += (where.empty() ? "" : ", ") + piece; };
    if (place.line) append("line " + std::to_string(*place.line));
    if (!place.column.empty()) append(place.column);
    std::string text = where.empty() ? std::string{} : where + ": ";
    // A sentence that quotes the text itself needs no second quotation.
    if (!place.text.empty() && problem.sentence.find(place.text) == std::string::npos) {
        text += "\"" + place.text + "\": ";
    }
    return text + problem.sentence;
}

} // namespace sumpbook::cli
