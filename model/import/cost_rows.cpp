// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/entry_rows.h"

#include "model/import/words.h"

#include <fmt/format.h>

#include <algorithm>

namespace sumpbook::import {
namespace {

std::vector<std::string> categories_here(const Garage& garage) {
    return garage.settings ? categories_of(garage.settings->value) : default_categories();
}

/// One of the garage's categories, by its own name or, for the usual ones, by another word for it.
std::string read_category(RowReader& reader) {
    reader.use("category");
    const auto typed = reader.cell("category");
    const auto known = categories_here(reader.context().garage);
    const auto fits = [&](std::string_view name) {
        return std::ranges::find_if(
            known, [name](const auto& own) { return plain_words(own) == plain_words(name); });
    };
    if (const auto own = fits(typed); own != known.end() && !typed.empty()) return *own;
    if (const auto usual = value_of_word("category", typed))
        if (const auto own = fits(*usual); own != known.end()) return *own;
    reader.doubt("category", "one of the categories " + listed(known));
    return {};
}

} // namespace

RowVerdict read_cost(RowReader& reader, Entry& entry) {
    if (!reader.has("amount")) return {.holds_entry = false, .reason = "it has no amount"};
    Cost cost;
    cost.category = read_category(reader);
    entry.paid = reader.money("amount");
    cost.text = reader.text("text");
    cost.covers_from = reader.date("covers from");
    cost.covers_until = reader.date("covers until");
    if (cost.covers_from && cost.covers_until && *cost.covers_until < *cost.covers_from)
        reader.doubt("covers until", "a day not before " + iso_text(*cost.covers_from) +
                                         "; it stays as typed until this is settled");
    cost.every_months = reader.whole("every");
    if (cost.every_months == 0U) {
        reader.doubt("every", "a number of months above 0");
        cost.every_months.reset();
    }
    cost.until = reader.date("until");
    cost.valuation = reader.yes_no("valuation").value_or(false);
    entry.body = std::move(cost);
    return {};
}

} // namespace sumpbook::import
