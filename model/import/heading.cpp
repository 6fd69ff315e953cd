// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/heading.h"

#include "model/import/words.h"

#include <algorithm>

namespace sumpbook::import {
namespace {

std::string joined(const std::vector<std::string>& words, std::size_t from, std::size_t to) {
    std::string text;
    for (std::size_t i = from; i < to; ++i)
        text += (i == from ? "" : " ") + words[i];
    return text;
}

bool takes_unit(FieldType type) {
    return type == FieldType::distance || type == FieldType::volume || type == FieldType::money ||
           type == FieldType::unit_price || type == FieldType::quantity;
}

void add_brackets(HeadingMatch& match, const Heading& heading, const Currency& garage) {
    if (!takes_unit(match.field->type)) return;
    for (const auto& bracket : heading.brackets)
        if (!add_unit(match.unit, *match.field, bracket, garage)) match.unclear = bracket;
}

/// "Litres", "km driven", "price per litre": the unit stands among the words themselves. A price needs its
/// "for each" here, so that "Preis" alone is not tried as a currency; money is never written bare.
void add_unit_in_words(HeadingMatch& match, const std::string& plain, const Currency& garage) {
    const FieldType type = match.field->type;
    if (type != FieldType::distance && type != FieldType::volume && type != FieldType::unit_price) return;
    const auto words = pieces_of(plain, ' ');
    for (std::size_t from = 0; from < words.size(); ++from)
        for (std::size_t to = words.size(); to > from; --to) {
            const std::string piece = joined(words, from, to);
            ColumnUnit unit = match.unit;
            if (type == FieldType::unit_price && words[from] != "per" &&
                piece.find('/') == std::string::npos && words[from] != "pro" && words[from] != "je" &&
                words[from] != "par" && words[from] != "por" && words[from] != "al" && words[from] != "au")
                continue;
            if (add_unit(unit, *match.field, piece, garage)) {
                match.unit = unit;
                return;
            }
        }
    if (type == FieldType::volume &&
        std::ranges::any_of(words, [](const auto& word) { return is_unclear_volume(word); }))
        match.unclear = plain;
    if (type == FieldType::unit_price && !words.empty() && is_unclear_volume(words.back()))
        match.unclear = plain;
}

/// The words are a field's own words followed by a unit: "odometer km", "price / us gal".
std::vector<HeadingMatch> matches_with_unit_behind(ImportKind kind, const std::string& plain,
                                                   const Currency& garage) {
    std::vector<HeadingMatch> found;
    const auto words = pieces_of(plain, ' ');
    for (std::size_t split = words.size(); split-- > 1;) {
        const std::string behind = joined(words, split, words.size());
        for (const Field* field : fields_by_words(kind, joined(words, 0, split))) {
            HeadingMatch match{.field = field, .unit = {}, .unclear = {}};
            const bool price_without_each = field->type == FieldType::unit_price &&
                                            behind.find('/') == std::string::npos && words[split] != "per" &&
                                            words[split] != "pro";
            if (!takes_unit(field->type) || price_without_each) continue;
            const bool unclear = field->type != FieldType::money && is_unclear_volume(words.back());
            if (!add_unit(match.unit, *field, behind, garage)) {
                if (!unclear) continue;
                match.unclear = behind;
            }
            found.push_back(std::move(match));
        }
        if (!found.empty()) return found;
    }
    return found;
}

} // namespace

Heading take_apart(std::string_view typed) {
    Heading heading{.typed = std::string(trimmed(typed)), .words = {}, .brackets = {}};
    std::string_view rest = heading.typed;
    while (!rest.empty()) {
        const std::size_t open = std::min(rest.find_first_of("(["), rest.size());
        heading.words += rest.substr(0, open);
        rest.remove_prefix(open);
        if (rest.empty()) break;
        const std::size_t close = rest.find(rest.front() == '(' ? ')' : ']');
        if (close == std::string_view::npos) {
            heading.words += rest;
            break;
        }
        if (const auto inside = trimmed(rest.substr(1, close - 1)); !inside.empty())
            heading.brackets.emplace_back(inside);
        heading.words += ' ';
        rest.remove_prefix(close + 1);
    }
    heading.words = std::string(trimmed(heading.words));
    return heading;
}

HeadingMatch match_with(const Field& field, const Heading& heading, const Currency& garage) {
    HeadingMatch match{.field = &field, .unit = {}, .unclear = {}};
    add_unit_in_words(match, plain_words(heading.words), garage);
    add_brackets(match, heading, garage);
    return match;
}

std::vector<HeadingMatch> matches_of(ImportKind kind, const Heading& heading, const Currency& garage) {
    std::vector<HeadingMatch> found;
    const std::string plain = plain_words(heading.words);
    for (const Field* field :
         fields_by_words(kind, plain_words(heading.typed))) // "used or virgin (u/v)" as a whole
        found.push_back(match_with(*field, heading, garage));
    if (found.empty())
        for (const Field* field : fields_by_words(kind, plain))
            found.push_back(match_with(*field, heading, garage));
    if (found.empty()) {
        found = matches_with_unit_behind(kind, plain, garage);
        for (auto& match : found)
            add_brackets(match, heading, garage);
    }
    return found;
}

} // namespace sumpbook::import
