// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::outside {

// Checks against published figures. Each table of data/*.csv holds figures with the source beside them.
//
//     TEST_CASE("Units of volume have the published size", "[outside][units]") {
//         for (const CheckRow& row : check_table("std-units.csv")) {
//             if (row["quantity"] != "US liquid gallon in litres") continue; // another test case's row
//             TESTING_ROW(row);
//             CHECK(Volume::from_litres(row.number("value")) == one_us_gallon);
//         }
//     }
//
// Rows of one table may be tested in several test cases and files. When all test cases have run, in any
// order, the program prints one line a table ("std-units.csv: 25 read, 23 tested, 2 skipped: ...") and
// fails when a row was neither tested nor listed in data/skipped.csv with its reason, when a listed row
// was tested after all, or when the list names a row that does not exist. A run of chosen test cases
// (test_outside "[units]") prints its lines and judges nothing.

/// A row of a table, its cells by the names of the heading.
class CheckRow {
public:
    CheckRow(std::string table, std::string key, std::map<std::string, std::string, std::less<>> cells);

    /// Text of the cell as published. A column the table lacks throws std::logic_error.
    [[nodiscard]] const std::string& operator[](std::string_view column) const;
    /// The cell as a number. Dots behind the last digit of a recurring decimal ("235.2145833...") are
    /// left out. Text that is no number throws std::logic_error.
    [[nodiscard]] double number(std::string_view column) const;
    [[nodiscard]] bool empty(std::string_view column) const { return (*this)[column].empty(); }

    /// What tells the row from the others of its table: its first cells, joined by " | ", as many as are
    /// needed in this table. The name of the row in data/skipped.csv.
    [[nodiscard]] const std::string& key() const { return key_; }
    /// "std-units.csv: mile in km", for messages.
    [[nodiscard]] std::string where() const { return table_ + ": " + key_; }
    /// Counts the row as tested. Use TESTING_ROW.
    void count_as_tested() const;

private:
    std::string table_;
    std::string key_;
    std::map<std::string, std::string, std::less<>> cells_;
};

/// All rows of tests/outside/data/<file>. Throws when the file is missing, has no rows or is not CSV by
/// RFC 4180 with the same number of cells in every line.
[[nodiscard]] const std::vector<CheckRow>& check_table(const std::string& file);
/// The one row with this key; throws std::logic_error when there is none.
[[nodiscard]] const CheckRow& check_row(const std::string& file, std::string_view key);

/// The records of a CSV text by RFC 4180, the heading among them. Throws std::logic_error on text that
/// breaks the rules.
[[nodiscard]] std::vector<std::vector<std::string>> csv_records(std::string_view text);

/// What became of the rows of the tables: the book the end of the run is judged by.
struct Account {
    std::map<std::string, std::vector<std::string>> read;           ///< table -> keys of its rows
    std::map<std::string, std::map<std::string, int>> tested;       ///< table -> key -> times
    std::map<std::string, std::map<std::string, std::string>> skip; ///< table -> key -> reason
};
/// One line a table: rows read, tested, skipped with the reasons.
[[nodiscard]] std::vector<std::string> summary_of(const Account& account);
/// What is wrong with the account, one sentence each; empty when every row is accounted for.
[[nodiscard]] std::vector<std::string> complaints_about(const Account& account);

/// The account of this run, over every table of data/, opened by a test or not.
[[nodiscard]] Account account_of_this_run();

} // namespace sumpbook::outside

/// Names the row in the messages of the checks that follow in this block, and counts it as tested.
#define TESTING_ROW(row)                                                                                     \
    INFO((row).where());                                                                                     \
    (row).count_as_tested()
