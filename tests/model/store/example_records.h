// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/record.h"

#include <vector>

namespace sumpbook::store {

[[nodiscard]] inline Date day(int year, unsigned month, unsigned of_month) {
    return std::chrono::year(year) / std::chrono::month(month) / std::chrono::day(of_month);
}
[[nodiscard]] inline SubjectId subject_of(std::uint8_t number) {
    SubjectId subject;
    subject.bytes.fill(number);
    return subject;
}
[[nodiscard]] Currency eur();
[[nodiscard]] GarageSettings full_settings();
/// An entry with every common field set.
[[nodiscard]] Entry full_entry(EntryBody body);
/// One body of every kind, with every field set.
[[nodiscard]] std::vector<EntryBody> full_bodies();
/// One record of every kind of content and every kind of entry, with every field set.
[[nodiscard]] std::vector<Record> full_records();
/// The same kinds with nothing set that need not be.
[[nodiscard]] std::vector<Record> bare_records();
/// "Filled up", with a price and a note.
[[nodiscard]] Record fuel_record(int number);

} // namespace sumpbook::store
