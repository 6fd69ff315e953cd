// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/review/faults.h"

#include <algorithm>
#include <array>
#include <map>

namespace sumpbook::review {
namespace {

/// "p 0335" and "P0335" are one code.
std::string key_of(std::string_view code) {
    std::string key;
    for (const char c : code) {
        if (c != ' ') key += c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
    }
    return key;
}

FaultReading reading_of(const LogEntry& entry, const Fault& fault, const usage::OdometerSeries& odometer) {
    FaultReading reading;
    reading.entry_id = entry.id;
    reading.date = entry.value.date;
    reading.distance = odometer.at_entry(entry);
    reading.count = fault.count;
    reading.status = fault.status;
    reading.cleared = fault.cleared.value_or(false);
    return reading;
}

/// A stretch while it is being counted.
class Count {
public:
    void add(const FaultReading& reading) {
        if (!reading.was_there()) return;
        ++readings_;
        counter_ = std::max(counter_, reading.count.value_or(0));
    }
    [[nodiscard]] std::uint32_t times() const { return std::max(readings_, counter_); }

private:
    std::uint32_t readings_ = 0;
    std::uint32_t counter_ = 0;
};

struct End {
    std::optional<Date> date;
    std::optional<Distance> distance;
    bool clearing = false;
};

FaultStretch stretch_between(const End& from, const End& until, const Count& count) {
    FaultStretch stretch;
    stretch.from = from.date;
    stretch.until = until.date;
    stretch.from_clearing = from.clearing;
    stretch.until_clearing = until.clearing;
    stretch.times = count.times();
    if (!from.distance || !until.distance) return stretch;
    stretch.distance = std::max(*until.distance - *from.distance, Distance{});
    if (*stretch.distance > Distance{})
        stretch.times_per_1000km = stretch.times / stretch.distance->km() * 1000;
    return stretch;
}

End start_of(const std::optional<usage::RecordSpan>& record) {
    return record ? End{record->first, record->at_first, false} : End{};
}
End end_of(const std::optional<usage::RecordSpan>& record) {
    return record ? End{record->last, record->at_last, false} : End{};
}

void add_stretches(FaultHistory& history, const std::optional<usage::RecordSpan>& record) {
    End from = start_of(record);
    Count count;
    for (const auto& reading : history.readings) {
        count.add(reading);
        if (!reading.cleared) continue;
        const End until{reading.date, reading.distance, true};
        history.stretches.push_back(stretch_between(from, until, count));
        from = until;
        count = {};
    }
    history.stretches.push_back(stretch_between(from, end_of(record), count));
}

FaultState state_of(const FaultHistory& history) {
    if (!history.last_seen) return FaultState::absent;
    if (!history.last_cleared) return FaultState::stored;
    if (history.since().times > 0) return FaultState::present;
    const auto ridden = history.since().distance;
    return ridden && *ridden > Distance{} ? FaultState::temporary : FaultState::cleared;
}

void complete(FaultHistory& history, const std::optional<usage::RecordSpan>& record) {
    for (const auto& reading : history.readings) {
        if (reading.was_there()) history.last_seen = reading;
        if (reading.cleared) history.last_cleared = reading;
    }
    add_stretches(history, record);
    history.state = state_of(history);
}

} // namespace

std::string_view slug(FaultState state) {
    constexpr std::array<std::string_view, 5> words{"present", "stored", "cleared", "temporary", "absent"};
    return words.at(static_cast<std::size_t>(state));
}

std::uint32_t FaultHistory::times() const {
    std::uint32_t sum = 0;
    for (const auto& stretch : stretches)
        sum += stretch.times;
    return sum;
}

const FaultStretch* FaultHistory::before() const {
    return stretches.size() < 2 ? nullptr : &stretches.at(stretches.size() - 2);
}

std::vector<FaultHistory> fault_histories(const Bike& bike, const usage::OdometerSeries& odometer) {
    std::map<std::string, FaultHistory> by_code;
    for (const auto* entry : entries_of<Fault>(bike)) {
        const auto& fault = std::get<Fault>(entry->value.body);
        auto& history = by_code[key_of(fault.code)];
        history.code = fault.code;
        if (fault.text) history.text = fault.text;
        history.readings.push_back(reading_of(*entry, fault, odometer));
    }
    std::vector<FaultHistory> histories;
    for (auto& [key, history] : by_code) {
        complete(history, odometer.span());
        histories.push_back(std::move(history));
    }
    std::ranges::stable_sort(histories, {}, &FaultHistory::state);
    return histories;
}

} // namespace sumpbook::review
