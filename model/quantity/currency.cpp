// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/currency.h"

#include "embedded/currencies_csv.h"

#include <algorithm>
#include <cstdint>

namespace sumpbook {
namespace {

using Code = std::array<char, 3>;

struct Row {
    Code code;
    int minor_digits = 0;
};

/// One number for a code, in the order of codes: every amount in a garage file looks its currency up.
constexpr std::uint32_t number_of(const Code& code) {
    return static_cast<std::uint32_t>(code[0]) << 16U | static_cast<std::uint32_t>(code[1]) << 8U |
           static_cast<std::uint32_t>(code[2]);
}

/// In order of code, from lines "code,numeric,minor_units,status,note".
const std::vector<Row>& table() {
    static const std::vector<Row> rows = [] {
        std::vector<Row> read;
        std::string_view rest = data::currencies_csv();
        while (!rest.empty()) {
            const auto end = rest.find('\n');
            const std::string_view line = rest.substr(0, end);
            rest = end == std::string_view::npos ? std::string_view{} : rest.substr(end + 1);
            // "EUR,978,2,..." only: the heading and comment lines have another shape
            if (line.size() > 8 && line[3] == ',' && line[7] == ',' && line[8] >= '0' && line[8] <= '9') {
                read.push_back({{line[0], line[1], line[2]}, line[8] - '0'});
            }
        }
        std::ranges::sort(read, {}, [](const Row& row) { return number_of(row.code); });
        return read;
    }();
    return rows;
}

/// Nothing when no currency has this code.
const Row* find(const Code& code) {
    const auto found = std::ranges::lower_bound(table(), number_of(code), {},
                                                [](const Row& row) { return number_of(row.code); });
    return found != table().end() && found->code == code ? &*found : nullptr;
}

} // namespace

Result<Currency> Currency::from_code(std::string_view code) {
    Currency currency;
    if (code.size() == 3) {
        std::transform(code.begin(), code.end(), currency.code_.begin(),
                       [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c; });
        if (find(currency.code_) != nullptr) return currency;
    }
    return refuse("There is no ISO 4217 currency code \"" + std::string(code) +
                      "\". Use three letters, such as EUR, GBP or USD.",
                  {.file = {}, .line = {}, .column = {}, .text = std::string(code)});
}

int Currency::minor_digits() const {
    const auto* row = find(code_);
    return row == nullptr ? 0 : row->minor_digits;
}

std::vector<Currency> all_currencies() {
    std::vector<Currency> all;
    for (const auto& row : table()) {
        all.push_back(
            Currency::from_code(std::string_view(row.code.data(), row.code.size())).value_or(Currency{}));
    }
    return all;
}

} // namespace sumpbook
