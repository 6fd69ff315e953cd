// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/fields.h"

#include "embedded/columns_csv.h"
#include "embedded/fields_csv.h"
#include "model/import/words.h"
#include "model/quantity/data_table.h"

#include <algorithm>
#include <array>
#include <map>
#include <stdexcept>

namespace sumpbook::import {
namespace {

constexpr std::array<std::string_view, 10> type_words = {
    "text", "date", "distance", "volume", "money", "unit-price", "number", "whole", "yes-no", "quantity"};
constexpr std::array<std::string_view, 3> part_words = {"open", "money", "personal"};

template <class Enum, std::size_t n>
Enum enum_of(const std::array<std::string_view, n>& words, const std::string& word) {
    const auto found = std::ranges::find(words, word);
    if (found == words.end()) throw std::logic_error("fields.csv: unknown word " + word);
    return static_cast<Enum>(found - words.begin());
}

/// Everything known about the columns of one import.
struct Catalogue {
    std::vector<Field> fields;
    std::multimap<std::string, std::size_t, std::less<>> by_words; ///< Plain words to positions in `fields`.
};

bool row_is_for(const DataRow& row, ImportKind kind) {
    const auto kinds = pieces_of(row["kinds"], '|');
    return std::ranges::find(kinds, name_of(kind)) != kinds.end();
}

void add_words(Catalogue& catalogue, std::string_view words, std::size_t at) {
    const std::string plain = plain_words(words);
    const auto [first, last] = catalogue.by_words.equal_range(plain);
    const bool there = std::any_of(first, last, [at](const auto& known) { return known.second == at; });
    if (!there) catalogue.by_words.emplace(plain, at);
}

std::size_t position_of(const Catalogue& catalogue, const std::string& slug) {
    const auto found = std::ranges::find(catalogue.fields, slug, &Field::slug);
    if (found == catalogue.fields.end()) throw std::logic_error("columns.csv: no field " + slug);
    return static_cast<std::size_t>(found - catalogue.fields.begin());
}

Catalogue load(ImportKind kind) {
    Catalogue catalogue;
    for (const auto& row : read_data_table(data::fields_csv())) {
        if (!row_is_for(row, kind)) continue;
        catalogue.fields.push_back({.slug = row["field"],
                                    .type = enum_of<FieldType>(type_words, row["type"]),
                                    .part = enum_of<Part>(part_words, row["part"])});
        add_words(catalogue, row["field"], catalogue.fields.size() - 1);
    }
    for (const auto& row : read_data_table(data::columns_csv())) {
        if (!row_is_for(row, kind)) continue;
        for (const auto& words : pieces_of(row["words"], '|'))
            add_words(catalogue, words, position_of(catalogue, row["field"]));
    }
    return catalogue;
}

const Catalogue& catalogue_of(ImportKind kind) {
    static const std::array<Catalogue, 5> all = {load(ImportKind::fuel), load(ImportKind::work),
                                                 load(ImportKind::costs), load(ImportKind::readings),
                                                 load(ImportKind::samples)};
    return all.at(static_cast<std::size_t>(kind));
}

} // namespace

const std::vector<Field>& fields_of(ImportKind kind) { return catalogue_of(kind).fields; }

const Field* find_field(ImportKind kind, std::string_view slug) {
    const std::string plain = plain_words(slug);
    for (const auto& field : fields_of(kind))
        if (plain_words(field.slug) == plain) return &field;
    return nullptr;
}

std::vector<const Field*> fields_by_words(ImportKind kind, std::string_view plain) {
    const auto& catalogue = catalogue_of(kind);
    std::vector<const Field*> found;
    const auto [first, last] = catalogue.by_words.equal_range(plain);
    for (auto it = first; it != last; ++it)
        found.push_back(&catalogue.fields[it->second]);
    return found;
}

bool is_numeric(FieldType type) {
    switch (type) {
    case FieldType::distance:
    case FieldType::volume:
    case FieldType::money:
    case FieldType::unit_price:
    case FieldType::number:
    case FieldType::quantity:
        return true;
    default:
        return false;
    }
}

} // namespace sumpbook::import
