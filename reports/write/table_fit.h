// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::write {

/// A column of a table as text, in columns of the terminal.
struct TextColumn {
    std::size_t natural = 0;   ///< Its widest cell.
    std::size_t narrowest = 0; ///< Its widest piece that stays on one line; never narrowed below it.
    bool operator==(const TextColumn&) const = default;
};

/// `column` with one more cell.
[[nodiscard]] TextColumn with_cell(TextColumn column, std::string_view printable_cell);

/// Widths whose sum is at most `room`: the widest column is narrowed first, none below its narrowest or below
/// ten columns. Where even that is too wide, those smallest widths. DESIGN.
[[nodiscard]] std::vector<std::size_t> fitted_widths(const std::vector<TextColumn>& columns,
                                                     std::size_t room);

/// `text` at most `width` columns wide, by lines; at least one.
[[nodiscard]] std::vector<std::string> lines_of(std::string_view text, std::size_t width);

} // namespace sumpbook::write
