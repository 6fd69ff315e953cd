// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/entry_parts.h"
#include "model/import/request.h"

#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::import {

/// How the cells of a column are read.
enum class FieldType { text, date, distance, volume, money, unit_price, number, whole, yes_no, quantity };

/// One thing a column can hold, from fields.csv.
struct Field {
    std::string slug; ///< "price per unit"; also the plain heading of our own files.
    FieldType type = FieldType::text;
    Part part = Part::open;
};

/// All fields of one import, in the order of the data file. Lives as long as the program.
[[nodiscard]] const std::vector<Field>& fields_of(ImportKind kind);
/// By its slug, without regard to case, accents and hyphens; nullptr for none.
[[nodiscard]] const Field* find_field(ImportKind kind, std::string_view slug);
/// Fields of which the words (as `plain_words` leaves them) are a heading: none, one, or several.
[[nodiscard]] std::vector<const Field*> fields_by_words(ImportKind kind, std::string_view plain);

/// True for types whose cells carry numbers, and so a decimal mark.
[[nodiscard]] bool is_numeric(FieldType type);

} // namespace sumpbook::import
