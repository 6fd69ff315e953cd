// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/write/table_fit.h"

#include "reports/write/wrap.h"

#include <algorithm>
#include <numeric>

namespace sumpbook::write {
namespace {

constexpr std::size_t readable = 10; // a column of text narrower than this is hard to read

std::size_t least(const TextColumn& column) {
    return std::min(column.natural, std::max(column.narrowest, readable));
}

} // namespace

std::vector<std::string> lines_of(std::string_view text, std::size_t width) {
    std::string rest = wrapped(text, width);
    std::vector<std::string> lines;
    for (auto end = rest.find('\n'); end != std::string::npos; end = rest.find('\n')) {
        lines.push_back(rest.substr(0, end));
        rest.erase(0, end + 1);
    }
    lines.push_back(std::move(rest));
    return lines;
}

TextColumn with_cell(TextColumn column, std::string_view printable_cell) {
    column.natural = std::max(column.natural, columns_of(printable_cell));
    for (const auto& piece : lines_of(printable_cell, 1))
        column.narrowest = std::max(column.narrowest, columns_of(piece));
    return column;
}

std::vector<std::size_t> fitted_widths(const std::vector<TextColumn>& columns, std::size_t room) {
    std::vector<std::size_t> widths;
    for (const auto& column : columns)
        widths.push_back(column.natural);
    while (std::accumulate(widths.begin(), widths.end(), std::size_t{0}) > room) {
        std::size_t* widest = nullptr;
        for (std::size_t i = 0; i < widths.size(); ++i) {
            if (widths[i] > least(columns[i]) && (widest == nullptr || widths[i] > *widest))
                widest = &widths[i];
        }
        if (widest == nullptr) return widths;
        --*widest;
    }
    return widths;
}

} // namespace sumpbook::write
