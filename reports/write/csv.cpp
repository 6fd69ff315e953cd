// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/write/csv.h"

namespace sumpbook::write {
namespace {

std::string cell(const std::string& text) {
    if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
    std::string quoted = "\"";
    for (const char c : text) {
        if (c == '"') quoted += '"';
        quoted += c;
    }
    return quoted + '"';
}

} // namespace

std::string csv(const std::vector<std::vector<std::string>>& rows) {
    std::string out;
    for (const auto& row : rows) {
        for (std::size_t i = 0; i < row.size(); ++i)
            out += (i == 0 ? "" : ",") + cell(row[i]);
        out += "\r\n";
    }
    return out;
}

} // namespace sumpbook::write
