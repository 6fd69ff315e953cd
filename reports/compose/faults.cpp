// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/faults.h"

#include "model/garage/slugs.h"
#include "reports/compose/words.h"

#include <algorithm>

namespace sumpbook::compose {
namespace {

using document::Align;
using document::Array;
using document::Cell;
using document::Document;
using document::Object;
using document::Severity;
using document::Value;
using review::FaultHistory;
using review::FaultReading;
using review::FaultState;
using review::FaultStretch;

/// Below this many times on both sides together a difference of rates is a hint at most. DESIGN.
constexpr std::uint32_t fewest_times = 5;

Value km(const std::optional<Distance>& distance) {
    return distance ? Value(in_unit(*distance, DistanceUnit::km, 3)) : Value();
}

Value per_1000km(const std::optional<double>& rate) {
    return rate ? Value(decimal_from_double(*rate, 6)) : Value();
}

Object reading_json(const FaultReading& reading) {
    Object object;
    object.add("entry", reading.entry_id).add("date", reading.date).add("at_km", km(reading.distance));
    object.add("count", reading.count);
    object.add("status", reading.status ? Value(slug(*reading.status)) : Value());
    return object.add("cleared", reading.cleared);
}

Object stretch_json(const FaultStretch& stretch) {
    Object object;
    object.add("from_date", stretch.from).add("until_date", stretch.until);
    object.add("from_clearing", stretch.from_clearing).add("until_clearing", stretch.until_clearing);
    object.add("times", stretch.times).add("distance_km", km(stretch.distance));
    return object.add("times_per_1000km", per_1000km(stretch.times_per_1000km));
}

Object code_json(const std::string& bike, const FaultHistory& history) {
    Array readings;
    for (const auto& reading : history.readings)
        readings.emplace_back(reading_json(reading));
    Array stretches;
    for (const auto& stretch : history.stretches)
        stretches.emplace_back(stretch_json(stretch));
    Object object;
    object.add("bike", bike).add("code", history.code).add("text", history.text);
    object.add("state", slug(history.state)).add("times", history.times());
    object.add("last_seen", history.last_seen ? Value(history.last_seen->date) : Value());
    object.add("last_cleared", history.last_cleared ? Value(history.last_cleared->date) : Value());
    object.add("since_clearing_per_1000km",
               history.last_cleared ? per_1000km(history.since().times_per_1000km) : Value());
    object.add("before_per_1000km",
               history.before() != nullptr ? per_1000km(history.before()->times_per_1000km) : Value());
    return object.add("stretches", std::move(stretches)).add("readings", std::move(readings));
}

std::string rate_words(double rate) {
    const int digits = rate >= 1 ? 1 : rate > 0 ? 2 : 0;
    return grouped(decimal_from_double(rate, digits)) + " per 1 000 km";
}

std::string rate_or_dash(const FaultStretch* stretch) {
    return stretch != nullptr && stretch->times_per_1000km ? rate_words(*stretch->times_per_1000km) : "-";
}

std::string when(const std::optional<FaultReading>& reading, DistanceUnit unit) {
    if (!reading) return "-";
    std::string text = spelled_text(reading->date);
    if (reading->distance) text += " at " + words(*reading->distance, unit);
    return text;
}

Severity colour(FaultState state) {
    if (state == FaultState::present) return Severity::danger;
    if (state == FaultState::stored || state == FaultState::cleared) return Severity::caution;
    return Severity::good;
}

std::vector<Cell> row_of(const FaultHistory& history, DistanceUnit unit) {
    const FaultStretch* since = history.last_cleared ? &history.since() : nullptr;
    return {Cell{std::string(slug(history.state)), colour(history.state)},
            Cell{history.code, {}},
            Cell{history.text.value_or(""), {}},
            Cell{std::to_string(history.times()), {}},
            Cell{when(history.last_seen, unit), {}},
            Cell{when(history.last_cleared, unit), {}},
            Cell{rate_or_dash(since), {}},
            Cell{rate_or_dash(history.before()), {}}};
}

document::Table code_table(const BikeFaults& bike) {
    document::Table table{{{"State", {}},
                           {"Code", {}},
                           {"What", {}},
                           {"Times", Align::right},
                           {"Last seen", {}},
                           {"Last cleared", {}},
                           {"Since then", Align::right},
                           {"Before", Align::right}},
                          {}};
    for (const auto& history : bike.codes)
        table.rows.push_back(row_of(history, bike.dial_unit));
    return table;
}

std::string ridden_words(const FaultHistory& history, DistanceUnit unit) {
    const auto& ridden = history.since().distance;
    return ridden && *ridden > Distance{} ? words(*ridden, unit) : std::string();
}

/// " It comes more often than before it was cleared."
std::string rate_sentence(const FaultHistory& history) {
    const auto* before = history.before();
    if (before == nullptr || !before->times_per_1000km || !history.since().times_per_1000km) return "";
    const double was = *before->times_per_1000km;
    const double is = *history.since().times_per_1000km;
    std::string text = is > was   ? " It comes more often than before it was cleared"
                       : is < was ? " It comes less often than before it was cleared"
                                  : " It comes as often as before it was cleared";
    if (before->times + history.since().times < fewest_times)
        text += ", but it was seen so few times that this is a hint at most";
    return text + ".";
}

std::string present_words(const FaultHistory& history, DistanceUnit unit) {
    const auto ridden = ridden_words(history, unit);
    return "present, it came back after it was cleared on " + spelled_text(history.last_cleared->date) +
           (ridden.empty() ? std::string(".") : ", " + ridden + " of record since.") +
           rate_sentence(history) +
           " Look the code up in the maker's manual and have its cause put right; clearing alone does not "
           "help.";
}

std::string state_words(const FaultHistory& history, DistanceUnit unit) {
    switch (history.state) {
    case FaultState::present:
        return present_words(history, unit);
    case FaultState::stored:
        return "stored and never cleared, so nobody knows whether it would come back. Look the code up in "
               "the maker's manual; once it has been seen to, clear it, ride, and read the codes again.";
    case FaultState::cleared:
        return "cleared on " + spelled_text(history.last_cleared->date) +
               "; no ride is recorded since. Ride, then read the codes again: a fault that comes back is "
               "present.";
    case FaultState::temporary:
        return "temporary as far as the record goes, not seen again in " + ridden_words(history, unit) +
               " since it was cleared on " + spelled_text(history.last_cleared->date) +
               ". Write it down if it comes back.";
    case FaultState::absent:
        break;
    }
    return "absent, looked for and never found.";
}

document::Table reading_table(const FaultHistory& history, DistanceUnit unit) {
    document::Table table{
        {{"Entry", {}}, {"Date", {}}, {"Odometer", Align::right}, {"Count", Align::right}, {"", {}}}, {}};
    for (const auto& reading : history.readings) {
        std::string remark = reading.status ? std::string(slug(*reading.status)) : "";
        if (!reading.was_there()) remark = "not found";
        if (reading.cleared) remark += remark.empty() ? "cleared" : ", cleared";
        table.rows.push_back({Cell{reading.entry_id, {}}, Cell{iso_text(reading.date), {}},
                              Cell{reading.distance ? words(*reading.distance, unit) : "-", {}},
                              Cell{reading.count ? std::to_string(*reading.count) : "-", {}},
                              Cell{remark, {}}});
    }
    return table;
}

void add_bike(Document& text, const BikeFaults& bike, bool details) {
    text.heading("Fault codes of " + bike.bike);
    text.table(code_table(bike));
    for (const auto& history : bike.codes) {
        text.sentence(history.code + ": " + state_words(history, bike.dial_unit), colour(history.state));
        if (details) text.table(reading_table(history, bike.dial_unit));
    }
}

} // namespace

Value faults_json(const std::vector<BikeFaults>& bikes) {
    Array items;
    for (const auto& bike : bikes) {
        for (const auto& history : bike.codes)
            items.emplace_back(code_json(bike.bike, history));
    }
    return document::list_of(std::move(items));
}

Document faults_text(const std::vector<BikeFaults>& bikes, bool details) {
    Document text;
    for (const auto& bike : bikes) {
        if (!bike.codes.empty()) add_bike(text, bike, details);
    }
    if (text.blocks.empty()) {
        return text.sentence("No fault code is recorded. Write one down with: sumpbook -g FILE add fault "
                             "--code P0335 --count 2 --date 2026-05-01 --odometer 12345");
    }
    text.sentence("A warning lamp for oil pressure, brakes or coolant: stop where it is safe and do not ride "
                  "on. A code names a circuit, not the part to buy; the maker's handbook and a qualified "
                  "mechanic decide.");
    return text;
}

} // namespace sumpbook::compose
