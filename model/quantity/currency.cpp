// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/currency.h"

#include "embedded/currencies_csv.h"

#include <algorithm>
#include <map>

namespace sumpbook {
namespace {

using Code = std::array<char, 3>;

/// code -> minor digits, from lines "code,numeric,minor_units,status,note".
const std::map<Code, int>& minor_digits_by_code() {
    static const std::map<Code, int> table = [] {
        std::map<Code, int> digits;
        std::string_view rest = data::currencies_csv();
        while (!rest.empty()) {
            const auto end = rest.find('\n');
            const std::string_view line = rest.substr(0, end);
            rest = end == std::string_view::npos ? std::string_view{} : rest.substr(end + 1);
            // "EUR,978,2,..." only: the heading and comment lines have another shape
            if (line.size() > 8 && line[3] == ',' && line[7] == ',' && line[8] >= '0' && line[8] <= '9') {
                digits[Code{line[0], line[1], line[2]}] = line[8] - '0';
            }
        }
        return digits;
    }();
    return table;
}

} // namespace

Result<Currency> Currency::from_code(std::string_view code) {
    Currency currency;
    if (code.size() == 3) {
        std::transform(code.begin(), code.end(), currency.code_.begin(),
                       [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c; });
        if (minor_digits_by_code().contains(currency.code_)) return currency;
    }
    return refuse("There is no ISO 4217 currency code \"" + std::string(code) +
                      "\". Use three letters, such as EUR, GBP or USD.",
                  {.file = {}, .line = {}, .column = {}, .text = std::string(code)});
}

int Currency::minor_digits() const {
    const auto found = minor_digits_by_code().find(code_);
    return found == minor_digits_by_code().end() ? 0 : found->second;
}

std::vector<Currency> all_currencies() {
    std::vector<Currency> all;
    for (const auto& [code, digits] : minor_digits_by_code()) {
        all.push_back(Currency::from_code(std::string_view(code.data(), code.size())).value_or(Currency{}));
    }
    return all;
}

} // namespace sumpbook
