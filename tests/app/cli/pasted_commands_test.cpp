// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/pasted_commands.h"

#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::cli;

namespace {

GlobalOptions typed(const std::string& file) {
    GlobalOptions options;
    options.garage_file = file;
    return options;
}

} // namespace

TEST_CASE("Commands in a sentence name the garage that was named by -g", "[pasted commands]") {
    const auto options = typed("my bikes.sumpbook");
    CHECK(with_garage("See: sumpbook log show k7-2. Or: sumpbook due", options) ==
          "See: sumpbook -g 'my bikes.sumpbook' log show k7-2. Or: sumpbook -g 'my bikes.sumpbook' due");
    CHECK(with_garage("(\"sumpbook verify\").", typed("a.sumpbook")) == "(\"sumpbook -g a.sumpbook verify\").");
}

TEST_CASE("Commands without a garage, with one, and questions for help stay as they are", "[pasted commands]") {
    const auto options = typed("a.sumpbook");
    for (const std::string text : {"sumpbook merge A B --to OUT", "sumpbook recover A --to NEW",
                                   "sumpbook -g other.sumpbook check", "sumpbook add fuel --help",
                                   "a sumpbook", "sumpbook new b.sumpbook",
                                   "sumpbook -g my.sumpbook log settle k7-2"})
        CHECK(with_garage(text, options) == text);
    CHECK(with_garage("sumpbook due", GlobalOptions()) == "sumpbook due");
}

TEST_CASE("Sentences and cells of an answer are treated alike; facts are what somebody wrote", "[pasted commands]") {
    document::Document answer;
    answer.sentence("sumpbook due");
    answer.table({{{"", {}}}, {{document::Cell{"sumpbook log", {}}}}});
    answer.facts({{{"Note", "sumpbook log"}}});
    const auto changed = with_garage(answer, typed("a"));
    CHECK(std::get<document::Sentence>(changed.blocks[0]).text == "sumpbook -g a due");
    CHECK(std::get<document::Table>(changed.blocks[1]).rows[0][0].text == "sumpbook -g a log");
    CHECK(std::get<document::Facts>(changed.blocks[2]).lines[0].second == "sumpbook log");
}
