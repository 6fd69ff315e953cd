// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/bench/database.h"

#include <filesystem>

namespace sumpbook::bench {
namespace {

constexpr const char* table =
    "CREATE TABLE entries (number INTEGER PRIMARY KEY, bike INTEGER, recorded INTEGER, day INTEGER, odometer "
    "INTEGER, odometer_unit TEXT, millilitres INTEGER, volume_unit TEXT, full INTEGER, missed_before "
    "INTEGER, "
    "octane INTEGER, paid INTEGER, currency TEXT, note TEXT)";

/// The bytes of a column: the text, or the number's eight.
void take_column(sqlite3_stmt* statement, int column, store::Bytes& row) {
    if (sqlite3_column_type(statement, column) == SQLITE_TEXT) {
        const auto* text = sqlite3_column_text(statement, column);
        store::put_bytes(row, {text, static_cast<std::size_t>(sqlite3_column_bytes(statement, column))});
    } else { // nothing counts as 0
        const auto number = sqlite3_column_int64(statement, column);
        const auto* bytes = reinterpret_cast<const std::uint8_t*>(&number); // NOLINT: eight bytes of a number
        store::put_bytes(row, {bytes, sizeof number});
    }
}

} // namespace

Database::Database(const std::string& path) { require(sqlite3_open(path.c_str(), &handle_) == SQLITE_OK); }

void Database::require(bool worked) const {
    if (!worked) give_up(std::string("SQLite: ") + sqlite3_errmsg(handle_));
}

void Database::run(const std::string& sql) {
    require(sqlite3_exec(handle_, sql.c_str(), nullptr, nullptr, nullptr) == SQLITE_OK);
}

std::string Database::text_of(const std::string& sql) {
    sqlite3_stmt* statement = nullptr;
    require(sqlite3_prepare_v2(handle_, sql.c_str(), -1, &statement, nullptr) == SQLITE_OK);
    require(sqlite3_step(statement) == SQLITE_ROW);
    store::Bytes text;
    take_column(statement, 0, text);
    sqlite3_finalize(statement);
    return {text.begin(), text.end()};
}

void Database::make_table() { run(table); }

void Database::insert(const Row& row) {
    if (insert_ == nullptr) {
        require(sqlite3_prepare_v2(handle_, "INSERT INTO entries VALUES (NULL,?,?,?,?,?,?,?,?,?,?,?,?,?)", -1,
                                   &insert_, nullptr) == SQLITE_OK);
    }
    int column = 0;
    const auto number = [&](std::int64_t value) {
        require(sqlite3_bind_int64(insert_, ++column, value) == SQLITE_OK);
    };
    const auto text = [&](const std::string& value) {
        require(sqlite3_bind_text(insert_, ++column, value.c_str(), -1, nullptr) == SQLITE_OK);
    };
    number(row.bike);
    number(row.recorded);
    number(row.day);
    number(row.odometer);
    text(row.odometer_unit);
    number(row.millilitres);
    text(row.volume_unit);
    number(row.full);
    number(row.missed_before);
    if (row.octane) {
        number(*row.octane);
    } else {
        require(sqlite3_bind_null(insert_, ++column) == SQLITE_OK);
    }
    number(row.paid);
    text(row.currency);
    text(row.note);
    require(sqlite3_step(insert_) == SQLITE_DONE && sqlite3_reset(insert_) == SQLITE_OK);
}

std::size_t Database::step_all(bool hashed) {
    sqlite3_stmt* statement = nullptr;
    require(
        sqlite3_prepare_v2(handle_,
                           "SELECT bike, recorded, day, odometer, odometer_unit, millilitres, volume_unit, "
                           "full, missed_before, octane, paid, currency, note FROM entries",
                           -1, &statement, nullptr) == SQLITE_OK);
    std::size_t rows = 0;
    unsigned seen = 0; // so that nothing is left out as unused
    store::Bytes bytes;
    while (sqlite3_step(statement) == SQLITE_ROW) {
        bytes.clear();
        for (int column = 0; column < columns; ++column)
            take_column(statement, column, bytes);
        seen += hashed ? store::sha256({bytes})[0] : bytes.back();
        ++rows;
    }
    sqlite3_finalize(statement);
    if (seen == 0 && rows > 0) give_up("SQLite: the rows are empty");
    return rows;
}

std::uint64_t write_database(const std::string& path, std::size_t rows) {
    std::filesystem::remove(path);
    {
        Database database(path);
        database.make_table();
        database.run("BEGIN");
        for (std::size_t i = 0; i < rows; ++i)
            database.insert(row_of(i));
        database.run("COMMIT");
    }
    return std::filesystem::file_size(path);
}

} // namespace sumpbook::bench
