// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/plan.h"
#include "model/import/plan_text.h"
#include "model/import/words.h"

#include "tests/catch.h"
#include "tests/model/import/import_garage.h"

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

using namespace sumpbook;
using namespace sumpbook::import;

// Each folder below cases/ is one case: input.csv, and expected.txt, whose first line is what the owner types
// (kind and options, without quotes, options separated by " --") and whose rest is the plan. With
// SUMPBOOK_ACCEPT=1 the rest is written anew; read the difference before believing it.

namespace {

namespace fs = std::filesystem;

std::string contents(const fs::path& path) {
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

struct Command {
    ImportKind kind = ImportKind::fuel;
    ImportOptions options;
};

void set_option(ImportOptions& options, const std::string& name, const std::string& value) {
    if (name == "bike")
        options.bike = value;
    else if (name == "map")
        options.map.push_back(read_assignment(value).value());
    else if (name == "unit")
        options.units.push_back(read_assignment(value).value());
    else if (name == "date-order")
        options.date_order = read_date_order(value).value();
    else if (name == "decimal")
        options.decimal_mark = read_decimal_mark(value).value();
    else if (name == "separator")
        options.separator = read_separator(value).value();
    else if (name == "encoding")
        options.encoding = read_encoding(value).value();
    else
        throw std::runtime_error("unknown option " + name);
}

Command command_of(std::string line) {
    Command command;
    std::size_t at = std::min(line.find(" --"), line.size());
    command.kind = read_import_kind(line.substr(0, at)).value();
    while (at < line.size()) {
        const std::size_t end = std::min(line.find(" --", at + 1), line.size());
        const std::string option = line.substr(at + 3, end - at - 3);
        const std::size_t blank = std::min(option.find(' '), option.size());
        set_option(command.options, option.substr(0, blank), std::string(trimmed(option.substr(blank))));
        at = end;
    }
    return command;
}

void append(std::string& out, const std::string& title, const std::vector<std::string>& lines) {
    if (lines.empty()) return;
    out += title + "\n";
    for (const auto& line : lines)
        out += "  " + line + "\n";
}

std::string plan_text(const Command& command, const std::string& bytes) {
    const auto plan =
        plan_import(command.kind, "input.csv", bytes, command.options, two_bikes(), {}, import_day);
    if (!plan) {
        const auto& place = plan.error().place;
        return "refused" + (place.line ? " at line " + std::to_string(*place.line) : std::string()) + "\n  " +
               plan.error().sentence + "\n";
    }
    std::string out;
    append(out, "found", layout_lines(*plan));
    append(out, "questions", question_lines(*plan));
    append(out, "taken for granted", plan->notices);
    append(out, "to add", entry_lines(*plan));
    append(out, "doubts", doubt_lines(*plan));
    append(out, "duplicates", duplicate_lines(*plan));
    append(out, "kept out", kept_out_lines(*plan));
    return out + count_line(*plan) + "\n";
}

} // namespace

TEST_CASE("Every case of the folder gives the plan written beside it") {
    std::vector<fs::path> folders;
    for (const auto& item :
         fs::directory_iterator(fs::path(SUMPBOOK_SOURCE_DIR) / "tests/model/import/cases"))
        if (item.is_directory()) folders.push_back(item.path());
    std::sort(folders.begin(), folders.end());
    REQUIRE(folders.size() >= 20);
    for (const auto& folder : folders) {
        INFO(folder.filename().string());
        const std::string expected = contents(folder / "expected.txt");
        const std::size_t line_end = std::min(expected.find('\n'), expected.size());
        const std::string first = expected.substr(0, line_end);
        const std::string found = first + "\n" + plan_text(command_of(first), contents(folder / "input.csv"));
        if (std::getenv("SUMPBOOK_ACCEPT") != nullptr)
            std::ofstream(folder / "expected.txt", std::ios::binary) << found;
        CHECK(found == expected);
    }
}
