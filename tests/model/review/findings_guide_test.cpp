// SPDX-License-Identifier: GPL-3.0-or-later
// The guide holds every finding that the program can give, with its severity, and no other.
#include "model/review/finding.h"
#include "tests/catch.h"

#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <sstream>

using namespace sumpbook::review;

namespace {

struct Described {
    std::string severity;
    std::string text;
};

std::map<std::string, Described> read_guide() {
    std::ifstream in(std::string(SUMPBOOK_SOURCE_DIR) + "/app/guide/findings.md");
    REQUIRE(in);
    std::map<std::string, Described> all;
    Described* now = nullptr;
    const std::regex heading("### `([a-z-]+)` \\(([a-z]+)\\)");
    for (std::string line; std::getline(in, line);) {
        std::smatch match;
        if (std::regex_match(line, match, heading)) {
            REQUIRE(all.count(match[1]) == 0);
            now = &all[match[1]];
            now->severity = match[2];
        } else if (line.starts_with("#")) {
            REQUIRE_FALSE(line.starts_with("###"));
            now = nullptr;
        } else if (now != nullptr) {
            now->text += line + "\n";
        }
    }
    return all;
}

/// All code of model.
std::string model_code() {
    std::ostringstream text;
    for (const auto& file :
         std::filesystem::recursive_directory_iterator(std::string(SUMPBOOK_SOURCE_DIR) + "/model")) {
        if (file.path().extension() == ".cpp") text << std::ifstream(file.path()).rdbuf();
    }
    return std::move(text).str();
}

/// What stands in the first group of the expression, wherever it fits.
std::set<std::string> names_in(const std::string& code, const std::string& expression) {
    const std::regex wanted(expression);
    std::set<std::string> names;
    for (std::sregex_iterator found(code.begin(), code.end(), wanted), end; found != end; ++found)
        names.insert((*found)[1]);
    return names;
}

} // namespace

TEST_CASE("Every finding stands in the guide with its severity, and no other does") {
    const auto guide = read_guide();
    CHECK(guide.size() == finding_kinds().size());
    for (const auto& kind : finding_kinds()) {
        INFO(kind.id);
        const auto found = guide.find(kind.id);
        REQUIRE(found != guide.end());
        CHECK(found->second.severity == slug(kind.severity));
    }
}

TEST_CASE("The guide says of every finding what it means, when it is innocent and what to do") {
    for (const auto& [id, described] : read_guide()) {
        INFO(id);
        CHECK(described.text.find("*What it says.* ") != std::string::npos);
        CHECK(described.text.find("*When it is innocent.* ") != std::string::npos);
        CHECK(described.text.find("*What to do.* ") != std::string::npos);
    }
}

TEST_CASE("The program makes every finding of the table, and no other") {
    const auto code = model_code();
    auto made = names_in(code, "(?:make_finding|finding_of|about)\\(\\s*\"([a-z]+(?:-[a-z]+)+)\"");
    made.merge(names_in(code, "push_back\\(\\s*\\{\\s*\"([a-z]+(?:-[a-z]+)+)\"")); // the store's own
    made.merge(names_in(code, "\"(odometer-[a-z]+)\""));                           // usage::slug
    std::set<std::string> known;
    for (const auto& kind : finding_kinds())
        known.insert(kind.id);
    CHECK(made == known);
}
