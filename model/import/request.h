// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/import/encoding.h"
#include "model/quantity/currency.h"
#include "model/quantity/dates.h"
#include "model/quantity/number_text.h"

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace sumpbook::import {

/// What the rows of a file are about.
enum class ImportKind { fuel, work, costs, readings, samples };

/// "fuel", "work", "costs", "readings", "samples".
[[nodiscard]] std::string_view name_of(ImportKind kind);
/// Refused (wrong usage) for any other word.
[[nodiscard]] Result<ImportKind> read_import_kind(std::string_view text);

/// What the owner states beside the file. Everything absent or empty is found in the file and shown.
struct ImportOptions {
    std::optional<std::string> bike; ///< For rows without a bike of their own.
    /// Heading (or #3 for the third column) and field; the field "-" keeps the column out.
    std::vector<std::pair<std::string, std::string>> map;
    std::vector<std::pair<std::string, std::string>> units; ///< Field and unit: volume, US gal.
    std::optional<DateOrder> date_order;
    std::optional<DecimalMark> decimal_mark;
    std::optional<char> separator;
    std::optional<Encoding> encoding;
};

/// Something the file leaves open. Nothing is imported until it is answered with `option`.
struct Question {
    std::string sentence;
    std::string option; ///< What to type, an example: --date-order dmy.
    bool operator==(const Question&) const = default;
};

/// Each side of "Heading=field", split at the last =; refused (wrong usage) without one.
[[nodiscard]] Result<std::pair<std::string, std::string>> read_assignment(std::string_view text);
/// day-month-year, month-day-year or year-month-day, also dmy, mdy, ymd.
[[nodiscard]] Result<DateOrder> read_date_order(std::string_view text);
[[nodiscard]] std::string_view name_of(DateOrder order);
/// point or comma, also . and , themselves.
[[nodiscard]] Result<DecimalMark> read_decimal_mark(std::string_view text);
[[nodiscard]] std::string_view name_of(DecimalMark mark);
/// comma, semicolon, tab, bar, or the character.
[[nodiscard]] Result<char> read_separator(std::string_view text);
[[nodiscard]] std::string_view name_of_separator(char separator);

} // namespace sumpbook::import
