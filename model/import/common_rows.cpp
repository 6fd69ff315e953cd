// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/entry_rows.h"

#include <fmt/format.h>

namespace sumpbook::import {
namespace {

/// The row's currency column is used by the amounts; by itself it only has to be a currency.
void check_currency(RowReader& reader) {
    reader.use("currency");
    if (!reader.has("currency")) return;
    const auto garage = currency_of(reader.context().garage);
    const auto currency = read_currency(reader.cell("currency"), garage);
    if (!currency) reader.doubt("currency", "a currency: " + currency.error().sentence);
}

} // namespace

RowVerdict read_common(RowReader& reader, Entry& entry) {
    reader.use("bike");
    auto date = reader.date("date");
    if (!date && !reader.has("date")) {
        date = reader.date("sent"); // a sample is dated by its sending where its drawing is not
        if (!date && !reader.has("sent")) return {.holds_entry = false, .reason = "it has no date"};
    }
    if (!date) return {.holds_entry = false, .reason = "its date could not be read"};
    entry.date = *date;
    if (entry.date > reader.context().today)
        reader.doubt("date", "a day that is not in the future; it stays as typed until this is settled");
    entry.odometer = reader.distance("odometer");
    entry.hours = reader.number_from_zero("hours");
    entry.note = reader.text("note");
    entry.place = reader.text("place");
    entry.who = reader.text("who");
    entry.evidence = reader.choice<Evidence>("evidence", "evidence");
    entry.visit = reader.text("visit");
    check_currency(reader);
    return {};
}

} // namespace sumpbook::import
