// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "tests/bench/rows.h"

#include <sqlite3.h>

#include <string>

namespace sumpbook::bench {

/// A database of SQLite, closed at the end. Ends the program when something fails.
class Database {
public:
    explicit Database(const std::string& path);
    ~Database() { sqlite3_close(handle_); }
    Database(const Database&) = delete;
    Database& operator=(const Database&) = delete;

    void run(const std::string& sql);
    /// The first column of the first row.
    [[nodiscard]] std::string text_of(const std::string& sql);
    void make_table();
    void insert(const Row& row);

    /// Steps all rows and looks at every column; with `hashed`, the SHA-256 of each row's columns is
    /// computed, through the same class the garage file is verified with. Returns the rows.
    std::size_t step_all(bool hashed);

private:
    void require(bool worked) const;

    sqlite3* handle_ = nullptr;
    sqlite3_stmt* insert_ = nullptr;
};

} // namespace sumpbook::bench
