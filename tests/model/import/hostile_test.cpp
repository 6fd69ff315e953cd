// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/plan.h"
#include "model/import/plan_text.h"

#include "tests/catch.h"
#include "tests/model/import/fuel_file_generator.h"
#include "tests/model/import/import_garage.h"

#include <filesystem>
#include <fstream>
#include <random>
#include <sstream>
#include <string>
#include <vector>

using namespace sumpbook;
using namespace sumpbook::import;

// Whatever bytes come in, the answer is a refusal with a sentence or a plan whose counts add up; never a
// crash, an exception or an entry from nowhere. The sanitizer builds run this too.

namespace {

constexpr ImportKind all_kinds[] = {ImportKind::fuel, ImportKind::work, ImportKind::costs,
                                    ImportKind::readings, ImportKind::samples};

void survive(ImportKind kind, const std::string& bytes) {
    const auto plan = plan_import(kind, "hostile.csv", bytes, {}, one_bike(), {}, import_day);
    if (!plan) {
        CHECK_FALSE(plan.error().sentence.empty());
        return;
    }
    if (plan->ready())
        CHECK(plan->entries.size() + plan->duplicates.size() + plan->kept_out.size() == plan->rows);
    else
        CHECK(plan->entries.empty());
    for (const auto& lines : {layout_lines(*plan), entry_lines(*plan), doubt_lines(*plan),
                              duplicate_lines(*plan), kept_out_lines(*plan), question_lines(*plan)})
        for (const auto& line : lines)
            CHECK(line.find('\n') == std::string::npos);
}

std::vector<std::string> case_files() {
    std::vector<std::string> all;
    const std::filesystem::path cases =
        std::filesystem::path(SUMPBOOK_SOURCE_DIR) / "tests/model/import/cases";
    for (const auto& item : std::filesystem::directory_iterator(cases)) {
        std::ifstream in(item.path() / "input.csv", std::ios::binary);
        std::ostringstream text;
        text << in.rdbuf();
        all.push_back(text.str());
    }
    return all;
}

std::string mutated(std::string bytes, std::mt19937_64& engine) {
    static const std::vector<std::string> pieces = {
        "\"",        "\"\"", ";",          ",", "\t",    "|",
        "\r",        "\n",   "\r\n",       "-", "1e999", "99999999999999999999",
        "0,000,000", "(",    "]",          "=", "\xFF",  std::string(1, '\0'),
        "\xC3",      "€",    "31/02/2024", "<", "NaN"};
    for (auto changes = engine() % 8 + 1; changes > 0 && !bytes.empty(); --changes) {
        const auto at = engine() % bytes.size();
        switch (engine() % 5) {
        case 0:
            bytes[at] = static_cast<char>(engine() & 0xFF);
            break;
        case 1:
            bytes.erase(at, engine() % 20 + 1);
            break;
        case 2:
            bytes.insert(at, pieces[engine() % pieces.size()]);
            break;
        case 3:
            bytes.insert(at, bytes.substr(engine() % bytes.size(), engine() % 40));
            break;
        default:
            bytes.resize(at);
        }
    }
    return bytes;
}

} // namespace

TEST_CASE("Random bytes are survived") {
    std::mt19937_64 engine(Catch::rngSeed());
    for (int run = 0; run < 400; ++run) {
        std::string bytes(engine() % 400, '\0');
        const bool printable = run % 2 == 0;
        for (char& c : bytes)
            c = static_cast<char>(printable ? 32 + engine() % 95 : engine() & 0xFF);
        for (const auto kind : all_kinds)
            survive(kind, bytes);
        survive(ImportKind::fuel, "date;odometer;volume;total\n" + bytes);
    }
}

TEST_CASE("Files of the cases with random changes are survived") {
    std::mt19937_64 engine(Catch::rngSeed());
    for (const auto& file : case_files())
        for (int run = 0; run < 60; ++run) {
            const std::string bytes = mutated(file, engine);
            for (const auto kind : all_kinds)
                survive(kind, bytes);
        }
}

TEST_CASE("Generated files with random changes are survived") {
    std::mt19937_64 engine(Catch::rngSeed());
    for (std::uint64_t number = 0; number < 60; ++number)
        survive(ImportKind::fuel, mutated(generate_fuel_file(engine()).bytes, engine));
}

TEST_CASE("Shapes made to be slow or large are survived") {
    std::string falling = "date,odometer\n";
    for (int i = 0; i < 20000; ++i)
        falling += "2024-01-01," + std::to_string(i % 2 == 0 ? 1000000 - i : i) + "\n";
    survive(ImportKind::readings, falling);
    std::string same = "date,odometer,volume\n";
    for (int i = 0; i < 20000; ++i)
        same += "2024-01-01,5," + std::to_string(i + 1) + "\n";
    survive(ImportKind::fuel, same);
    survive(ImportKind::fuel, std::string(2'000'000, ','));
    survive(ImportKind::fuel, std::string(200'000, '"'));
    survive(ImportKind::fuel, std::string(200'000, '('));
    survive(ImportKind::fuel, "date,volume\n" + std::string(300'000, '9') + "," + std::string(300'000, '1'));
    survive(ImportKind::work, "date,parts\n2024-01-01," + std::string(300'000, '|') + "\n2024-01-02," +
                                  std::string(100'000, '[') + "\n");
    survive(ImportKind::work,
            "date,torques\n2024-01-01," + std::string(20'000, '1') + " " + std::string(20'000, ' ') + "x\n");
    std::string words = "date";
    for (int i = 0; i < 900; ++i)
        words += ",price per per per us gal gal gal gal";
    survive(ImportKind::fuel, words + "\n");
}

TEST_CASE("A row longer than a text may be is kept out, and one as long is not") {
    const auto plan_of = [](std::size_t bytes) {
        const std::string row = "2024-01-01,5," + std::string(bytes - 20, 'x'); // 11 in front, 9 between
        return plan_import(ImportKind::fuel, "long.csv", "date,volume,note\n" + row + "\n", {}, one_bike(), {},
                           import_day);
    };
    const auto fits = plan_of(most_row_bytes);
    REQUIRE(fits);
    CHECK(fits->entries.size() == 1);
    const auto longer = plan_of(most_row_bytes + 1);
    REQUIRE(longer);
    CHECK(longer->entries.empty());
    REQUIRE(longer->kept_out.size() == 1);
    CHECK(longer->kept_out.front().reason == "it is longer than 65536 bytes");
}

TEST_CASE("However many pieces of a cell are unclear, the doubt about them stays short") {
    std::string pieces;
    for (int i = 0; i < 2000; ++i)
        pieces += "no such thing|";
    const auto plan = plan_import(ImportKind::work, "pieces.csv", "date,text,does\n2024-01-01,x," + pieces + "\n",
                                  {}, one_bike(), {}, import_day);
    REQUIRE(plan);
    const auto doubts = plan->doubts();
    REQUIRE(doubts.size() == 1);
    CHECK(doubts.front().expected.size() < 1000);
    CHECK(doubts.front().expected.ends_with("And so on."));
}

TEST_CASE("Parts and labour past any amount are doubted, not added up") {
    const auto plan = plan_import(ImportKind::work, "dear.csv",
                                  "date,text,parts price,labour price\n2024-01-01,x,9000000000000,9000000000000\n",
                                  {}, one_bike(), {}, import_day);
    REQUIRE(plan);
    REQUIRE(plan->entries.size() == 1);
    CHECK_FALSE(plan->entries.front().entry.paid);
    REQUIRE(plan->doubts().size() == 1);
    CHECK(plan->doubts().front().expected == "18000000000000.00 EUR, parts and labour: more than an amount may be");
}

TEST_CASE("A file with far more rows than its size allows is refused with the line") {
    std::string rows = "date,volume\n";
    for (int i = 0; i < 400'000; ++i)
        rows += "x\n";
    const auto plan = plan_import(ImportKind::fuel, "rows.csv", rows, {}, one_bike(), {}, import_day);
    REQUIRE_FALSE(plan);
    CHECK(plan.error().kind == ProblemKind::refused);
    CHECK(plan.error().place.line > 10'000U);
    CHECK(plan.error().sentence.find("Split it") != std::string::npos);
}

TEST_CASE("As many of the shortest fills as a lifetime never has are taken") {
    std::string rows = "date,volume\n";
    for (int i = 0; i < 20'000; ++i)
        rows += "2024-01-01," + std::to_string(i + 1) + "\n";
    const auto plan = plan_import(ImportKind::fuel, "fills.csv", rows, {}, one_bike(), {}, import_day);
    REQUIRE(plan);
    CHECK(plan->entries.size() == 20'000);
}
