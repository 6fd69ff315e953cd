// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/outside/check_table.h"

#include <algorithm>
#include <charconv>
#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>
#include <stdexcept>

namespace sumpbook::outside {
namespace {

using Records = std::vector<std::vector<std::string>>;
using TestedRows = std::map<std::string, std::map<std::string, int>>;

std::filesystem::path data_folder() {
    return std::filesystem::path(SUMPBOOK_SOURCE_DIR) / "tests" / "outside" / "data";
}

TestedRows& tested_rows() {
    static TestedRows rows;
    return rows;
}

Records records_of_file(const std::string& file) {
    std::ifstream in(data_folder() / file, std::ios::binary);
    if (!in) throw std::logic_error("no check table " + file);
    std::ostringstream text;
    text << in.rdbuf();
    Records records = csv_records(text.str());
    if (records.empty()) throw std::logic_error("no heading in " + file);
    for (const auto& record : records) {
        if (record.size() != records.front().size()) {
            throw std::logic_error(file + ": a line with another number of cells: " + record.front());
        }
    }
    return records;
}

std::string joined(const std::vector<std::string>& cells, std::size_t count) {
    std::string text = cells.front();
    for (std::size_t i = 1; i < count; ++i)
        text += " | " + cells[i];
    return text;
}

/// As many first cells as make every row of the table another one.
std::vector<std::string> keys_of(const Records& records, const std::string& file) {
    for (std::size_t count = 1; count <= records.front().size(); ++count) {
        std::vector<std::string> keys;
        for (std::size_t i = 1; i < records.size(); ++i)
            keys.push_back(joined(records[i], count));
        if (std::set<std::string>(keys.begin(), keys.end()).size() == keys.size()) return keys;
    }
    throw std::logic_error(file + ": two rows are the same");
}

std::vector<CheckRow> rows_of_file(const std::string& file) {
    const Records records = records_of_file(file);
    const auto keys = keys_of(records, file);
    std::vector<CheckRow> rows;
    for (std::size_t i = 1; i < records.size(); ++i) {
        std::map<std::string, std::string, std::less<>> cells;
        for (std::size_t column = 0; column < records[i].size(); ++column) {
            cells[records.front()[column]] = records[i][column];
        }
        rows.emplace_back(file, keys[i - 1], std::move(cells));
    }
    return rows;
}

std::string counted(const std::vector<std::string>& reasons) {
    std::map<std::string, int> times;
    for (const auto& reason : reasons)
        ++times[reason];
    std::string text;
    for (const auto& [reason, count] : times) {
        text += (text.empty() ? ": " : "; ") + reason + (count > 1 ? " (" + std::to_string(count) + ")" : "");
    }
    return text;
}

/// What is left of a CSV text, taken from the front.
struct CsvText {
    std::string_view rest;

    bool take(char c) {
        const bool there = rest.starts_with(c);
        if (there) rest.remove_prefix(1);
        return there;
    }

    std::string take_up_to(std::string_view ends) {
        const std::size_t length = std::min(rest.find_first_of(ends), rest.size());
        std::string cell(rest.substr(0, length));
        rest.remove_prefix(length);
        return cell;
    }

    std::string take_cell() {
        if (!take('"')) {
            std::string cell = take_up_to(",\r\n\"");
            if (rest.starts_with('"')) throw std::logic_error("CSV: a bare quote behind " + cell);
            return cell;
        }
        std::string cell = take_up_to("\"");
        if (!take('"')) throw std::logic_error("CSV: a quote is never closed");
        while (take('"')) {
            cell += '"' + take_up_to("\"");
            if (!take('"')) throw std::logic_error("CSV: a quote is never closed");
        }
        return cell;
    }

    std::vector<std::string> take_record() {
        std::vector<std::string> record{take_cell()};
        while (take(','))
            record.push_back(take_cell());
        take('\r');
        if (!rest.empty() && !take('\n')) throw std::logic_error("CSV: text behind a quoted cell");
        return record;
    }
};

} // namespace

CheckRow::CheckRow(std::string table, std::string key, std::map<std::string, std::string, std::less<>> cells)
    : table_(std::move(table))
    , key_(std::move(key))
    , cells_(std::move(cells)) {}

const std::string& CheckRow::operator[](std::string_view column) const {
    const auto found = cells_.find(column);
    if (found == cells_.end()) throw std::logic_error(table_ + " has no column " + std::string(column));
    return found->second;
}

double CheckRow::number(std::string_view column) const {
    std::string_view text = (*this)[column];
    while (text.ends_with(".."))
        text.remove_suffix(1);
    if (text.ends_with('.')) text.remove_suffix(1);
    double value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc{} || end != text.data() + text.size()) {
        throw std::logic_error(where() + ": no number in column " + std::string(column));
    }
    return value;
}

void CheckRow::count_as_tested() const { ++tested_rows()[table_][key_]; }

const std::vector<CheckRow>& check_table(const std::string& file) {
    static std::map<std::string, std::vector<CheckRow>> tables;
    const auto found = tables.find(file);
    if (found != tables.end()) return found->second;
    auto rows = rows_of_file(file);
    if (rows.empty()) throw std::logic_error("no rows in " + file);
    return tables.emplace(file, std::move(rows)).first->second;
}

const CheckRow& check_row(const std::string& file, std::string_view key) {
    for (const CheckRow& row : check_table(file)) {
        if (row.key() == key) return row;
    }
    throw std::logic_error(file + " has no row " + std::string(key));
}

Records csv_records(std::string_view text) {
    Records records;
    for (CsvText csv{text}; !csv.rest.empty();)
        records.push_back(csv.take_record());
    return records;
}

std::vector<std::string> summary_of(const Account& account) {
    std::vector<std::string> lines;
    for (const auto& [table, keys] : account.read) {
        const auto tested = account.tested.find(table);
        const auto skip = account.skip.find(table);
        std::vector<std::string> reasons;
        if (skip != account.skip.end()) {
            for (const auto& [key, reason] : skip->second)
                reasons.push_back(reason);
        }
        const std::size_t tested_count = tested == account.tested.end() ? 0 : tested->second.size();
        lines.push_back(table + ": " + std::to_string(keys.size()) + " read, " +
                        std::to_string(tested_count) + " tested, " + std::to_string(reasons.size()) +
                        " skipped" + counted(reasons));
    }
    return lines;
}

std::vector<std::string> complaints_about(const Account& account) {
    std::vector<std::string> complaints;
    for (const auto& [table, keys] : account.read) {
        for (const auto& key : keys) {
            const auto tested = account.tested.find(table);
            const auto skip = account.skip.find(table);
            const bool is_tested = tested != account.tested.end() && tested->second.contains(key);
            const bool is_skipped = skip != account.skip.end() && skip->second.contains(key);
            if (!is_tested && !is_skipped)
                complaints.push_back(table + ": neither tested nor skipped: " + key);
            if (is_tested && is_skipped)
                complaints.push_back(table + ": listed as skipped, but tested: " + key);
        }
    }
    for (const auto& [table, rows] : account.skip) {
        const auto read = account.read.find(table);
        const auto keys = read == account.read.end()
                              ? std::set<std::string>{}
                              : std::set<std::string>(read->second.begin(), read->second.end());
        for (const auto& [key, reason] : rows) {
            if (!keys.contains(key))
                complaints.push_back(table + ": the list of skips names no such row: " + key);
            if (reason.empty()) complaints.push_back(table + ": skipped without a reason: " + key);
        }
    }
    return complaints;
}

Account account_of_this_run() {
    Account account;
    for (const auto& entry : std::filesystem::directory_iterator(data_folder())) {
        const std::string file = entry.path().filename().string();
        if (entry.path().extension() != ".csv" || file == "skipped.csv") continue;
        for (const CheckRow& row : check_table(file))
            account.read[file].push_back(row.key());
    }
    for (const CheckRow& row : rows_of_file("skipped.csv"))
        account.skip[row["file"]][row["row"]] = row["reason"];
    account.tested = tested_rows();
    return account;
}

} // namespace sumpbook::outside
