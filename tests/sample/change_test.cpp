// SPDX-License-Identifier: GPL-3.0-or-later
// One cell of one source file is changed, the garage is built again, and exactly the answers that depend on
// the cell are other ones. changes.csv says which cell, and which answers.
#include "tests/sample/answers.h"
#include "tests/sample/changed_cell.h"
#include "tests/sample/garage_run.h"

#include "model/quantity/data_table.h"

#include "tests/catch.h"

#include <sstream>

using namespace sumpbook::sample;
using sumpbook::DataRow;

namespace {

namespace fs = std::filesystem;

/// What due, oil assess, costs spent and log answer, the latter three bike by bike.
Figures all_answers(const fs::path& garage) {
    Figures figures;
    add_figures(figures, "due", answer(garage, "due"));
    add_figures(figures, "costs", answer(garage, "costs spent"));
    for (const auto& bike : bikes_of(garage)) {
        add_figures(figures, "oil/" + bike, answer(garage, "-b " + bike + " oil assess"));
        add_figures(figures, "log/" + bike, answer(garage, "-b " + bike + " log"));
    }
    return figures;
}

std::vector<std::string> words(const std::string& text) {
    std::istringstream in(text);
    return {std::istream_iterator<std::string>(in), {}};
}

std::string joined(const std::vector<std::string>& lines) {
    std::string text;
    for (const auto& line : lines)
        text += line + "\n";
    return text;
}

std::vector<DataRow> changes() {
    return sumpbook::read_data_table(
        bytes_of(fs::path(SUMPBOOK_SOURCE_DIR) / "tests" / "sample" / "changes.csv"));
}

} // namespace

TEST_CASE("A changed cell changes what depends on it and nothing else", "[sample]") {
    const TemporaryFolder folder;
    const auto example = folder.path() / "example";
    const auto garage = folder.path() / "collection.sumpbook";
    copy_example(example);
    build_garage(example, garage);
    const Figures before = all_answers(garage);
    REQUIRE(before.size() > 1000);

    const auto rows = changes();
    REQUIRE(rows.size() >= 10);
    for (const auto& row : rows) {
        INFO(row["what"]);
        const auto file = example / row["file"];
        const std::string as_it_was = bytes_of(file);
        const CellPlace place{static_cast<std::size_t>(row.required("line").coefficient()), row["column"]};
        REQUIRE(cell_at(as_it_was, place) == row["was"]);
        write_bytes(file, with_cell(as_it_was, place, row["becomes"]));
        build_garage(example, garage);
        write_bytes(file, as_it_was);

        const auto changed = changed_paths(before, all_answers(garage));
        CHECK(joined(surprises(words(row["changes"]), changed)) == "");
    }
}
