// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/output_file.h"

#include <filesystem>
#include <fstream>

namespace sumpbook::cli {
namespace {

namespace fs = std::filesystem;

bool written(std::ofstream& out, const std::string& text) {
    out << text;
    out.close();
    return !out.fail();
}

/// Beside the file first, then in its place: a reader finds the old file or the new one, never half of one.
/// What is no plain file (a pipe, a terminal) is written to as it is.
bool write_whole(const std::string& text, const fs::path& to) {
    std::error_code problem;
    if (fs::exists(to, problem) && !fs::is_regular_file(to, problem)) {
        std::ofstream out(to, std::ios::binary);
        return written(out, text);
    }
    const fs::path target = fs::exists(to, problem) ? fs::canonical(to, problem) : to;
    fs::path beside = target;
    beside += ".sumpbook-part";
    std::ofstream out(beside, std::ios::binary | std::ios::trunc);
    if (written(out, text)) {
        fs::rename(beside, target, problem);
        if (!problem) return true;
    }
    fs::remove(beside, problem);
    return false;
}

} // namespace

Result<ExitStatus> put_out(Session& session, const std::string& text, const std::string& to) {
    if (to.empty() || to == "-") {
        session.print(text);
        return ExitStatus::done;
    }
    std::error_code unknown; // a path that cannot be looked at is refused when it is opened
    if (fs::equivalent(to, session.options().garage_file, unknown)) {
        return refuse("This is the garage file itself. Choose another name.", {.file = to});
    }
    if (fs::exists(to, unknown)) {
        if (const auto yes = session.confirm("Write over " + to + "?"); !yes) return pass_on(yes.error());
    }
    if (!write_whole(text, to)) return fail(ProblemKind::io, "The file could not be written.", {.file = to});
    session.remark("Wrote " + to + ".");
    return ExitStatus::done;
}

} // namespace sumpbook::cli
