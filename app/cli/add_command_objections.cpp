// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/add_command_objections.h"

#include "app/cli/entry_fields_doubted.h"
#include "model/garage/fuel_total.h"
#include "model/garage/tyre_date.h"
#include "model/import/duplicates.h"
#include "model/usage/longest_run.h"
#include "model/usage/odometer.h"
#include "reports/compose/words.h"

#include <algorithm>
#include <initializer_list>

namespace sumpbook::cli {
namespace {

using compose::words;

// DESIGN: above what any motorcycle takes at one time; such a figure is nearly always a wrong unit.
constexpr Volume most_fuel = Volume::from_picolitres(60'000'000'000'000);
constexpr Volume most_oil = Volume::from_picolitres(10'000'000'000'000);

Objection doubted(std::string option, std::string text, std::string sentence, std::string expected,
                  Part part = Part::open) {
    Doubt doubt{.file = {},
                .line = 0,
                .column = option.substr(2),
                .text = text,
                .expected = std::move(expected),
                .part = part};
    return {std::move(option), std::move(text), std::move(sentence), std::move(doubt)};
}

class Objections {
public:
    Objections(const Entry& entry, const TypedEntry& typed, const Bike& bike, const Date& today)
        : entry_(entry)
        , typed_(typed)
        , bike_(bike)
        , today_(today) {}

    std::vector<Objection> all() && {
        against_odometer();
        against_hours();
        against_repetition();
        std::visit([this](const auto& body) { against(body); }, entry_.body);
        return std::move(found_);
    }

private:
    using Options = std::initializer_list<const char*>;

    /// `beside`: the fields that the doubted one is held against. `index`: which of several texts.
    void object(Objection objection, Options beside = {}, std::size_t index = 0) {
        const auto typed = typed_.find(objection.option);
        if (typed == typed_.end()) {
            if (any_typed(beside) && !doubted_already(objection.option))
                found_.push_back(std::move(objection));
            return;
        }
        if (!typed->second.empty()) {
            objection.text = typed->second[std::min(index, typed->second.size() - 1)];
            if (objection.doubt) objection.doubt->text = objection.text;
        }
        found_.push_back(std::move(objection));
    }
    bool any_typed(Options options) const {
        return std::ranges::any_of(options, [this](const char* one) { return typed_.contains(one); });
    }
    bool doubted_already(const std::string& option) const {
        return std::ranges::any_of(entry_.doubts, [&](const Doubt& doubt) {
            return is_about(doubt, kind_slug(entry_.body), option);
        });
    }

    void against_odometer() {
        const auto* reading = std::get_if<Reading>(&entry_.body);
        const bool clock = reading != nullptr && reading->clock_change;
        const auto written = clock ? std::optional(reading->clock_change->old_last) : entry_.odometer;
        if (!written) return;
        const std::string option = clock ? "--clock-change" : "--odometer";
        const auto series = usage::OdometerSeries::of(bike_);
        const auto distance = series.dials().true_distance(*written, entry_.date);
        if (!distance) return;
        against_neighbours(option, *written, *distance, series);
    }

    /// Accepted readings of other days: the last one before and the first one after this entry.
    void against_neighbours(const std::string& option, const WrittenDistance& written, Distance distance,
                            const usage::OdometerSeries& series) {
        const usage::OdometerReading* before = nullptr;
        const usage::OdometerReading* after = nullptr;
        for (const auto& reading : series.readings()) {
            if (!reading.accepted) continue;
            if (reading.date < entry_.date) before = &reading;
            if (reading.date > entry_.date && after == nullptr) after = &reading;
        }
        if (before != nullptr && distance < before->distance) {
            object(against_reading(option, written, "below the reading of ", "not below ", *before),
                   {"--date"});
        } else if (after != nullptr && distance > after->distance) {
            object(against_reading(option, written, "above the later reading of ", "not above ", *after),
                   {"--date"});
        } else if (before != nullptr && leaps(*before, distance)) {
            object(against_reading(option, written, "further than can be ridden since the reading of ",
                                   "at most 2 500 km a day since ", *before),
                   {"--date"});
        }
    }

    bool leaps(const usage::OdometerReading& before, Distance distance) const {
        const usage::DatedValue from{0, before.distance.micrometres()};
        const usage::DatedValue to{days_between(before.date, entry_.date), distance.micrometres()};
        return usage::is_leap(from, to, usage::leap_a_day.micrometres());
    }

    static Objection against_reading(const std::string& option, const WrittenDistance& written,
                                     const std::string& how, const std::string& expected,
                                     const usage::OdometerReading& other) {
        const std::string what =
            words(other.written) + " on " + spelled_text(other.date) + " (" + other.entry_id + ")";
        return doubted(option, words(written), words(written) + " is " + how + what + ".", expected + what);
    }

    void against_hours() {
        if (!entry_.hours) return;
        const LogEntry* before = nullptr;
        const LogEntry* after = nullptr;
        for (const auto& other : bike_.log) {
            if (!other.value.hours) continue;
            if (other.value.date < entry_.date) before = &other;
            if (other.value.date > entry_.date && after == nullptr) after = &other;
        }
        if (before != nullptr && *entry_.hours < *before->value.hours) hours_differ("below", *before);
        if (after != nullptr && *entry_.hours > *after->value.hours) hours_differ("above", *after);
    }
    void hours_differ(const std::string& how, const LogEntry& other) {
        const std::string what = compose::grouped(*other.value.hours) + " h on " +
                                 spelled_text(other.value.date) + " (" + other.id + ")";
        const std::string text = compose::grouped(*entry_.hours) + " h";
        object(doubted("--hours", text, text + " is " + how + " the reading of " + what + ".",
                       "not " + how + " " + what),
               {"--date"});
    }

    void against_repetition() {
        const auto same = std::ranges::find_if(
            bike_.log, [this](const LogEntry& other) { return import::says_the_same(other.value, entry_); });
        if (same == bike_.log.end() || typed_.empty()) return;
        found_.push_back({"", "", "The same entry is recorded already: " + same->id + ".", std::nullopt});
    }

    void against_volume(const std::string& option, const std::optional<WrittenVolume>& volume, Volume most) {
        const auto exact = volume ? volume_of(*volume) : Volume();
        if (!exact || *exact <= most) return;
        object(doubted(option, words(*volume),
                       words(*volume) + " is more than a motorcycle takes at one time.",
                       "at most " + words(most, VolumeUnit::l, 0)));
    }
    void against_order(const std::string& option, const std::optional<Date>& later, const std::string& what,
                       const std::optional<Date>& earlier, const char* earlier_option) {
        if (!later || !earlier || *later >= *earlier) return;
        object(doubted(option, iso_text(*later),
                       spelled_text(*later) + " is before " + what + ", " + spelled_text(*earlier) + ".",
                       "not before " + iso_text(*earlier)),
               {earlier_option});
    }

    void against(const Fuel& fuel) {
        against_volume("--volume", fuel.volume, most_fuel);
        if (const auto product = contradicting_product(fuel, entry_.paid)) {
            object(doubted("--total", words(*entry_.paid),
                           "The total is " + words(*entry_.paid) + ", but price x volume is " +
                               words(*product) + ".",
                           words(*product) + ", price x volume; the total as typed counts", Part::money),
                   {"--price", "--volume"});
        }
    }
    void against(const OilChange& change) {
        against_volume("--volume-in", change.volume_in, most_oil);
        against_volume("--volume-drained", change.volume_drained, most_oil);
    }
    void against(const TopUp& top_up) { against_volume("--volume", top_up.volume, most_oil); }
    void against(const Fit& fit) {
        if (!fit.tyre_date_code) return;
        if (const auto code = read_tyre_date(*fit.tyre_date_code, today_); !code) {
            object(doubted("--tyre-code", *fit.tyre_date_code, code.error().sentence,
                           "week and year, such as 2319"));
        }
    }
    void against(const Sample& sample) {
        against_order("--sent", sample.sent, "the sample was drawn", entry_.date, "--date");
        against_order("--result-date", sample.result, "the sample was drawn", entry_.date, "--date");
        if (sample.oil_change_date && entry_.date < *sample.oil_change_date) {
            object(doubted("--oil-change-date", iso_text(*sample.oil_change_date),
                           "The oil went in after the sample was drawn.",
                           "not after " + iso_text(entry_.date)),
                   {"--date"});
        }
        for (auto value = sample.values.begin(); value != sample.values.end(); ++value) {
            const bool again = std::any_of(sample.values.begin(), value, [&](const auto& other) {
                return other.quantity == value->quantity;
            });
            if (again)
                object(doubted("--value", value->quantity, value->quantity + " is given twice.", "one value"),
                       {}, static_cast<std::size_t>(value - sample.values.begin()));
        }
    }
    void against(const Cost& cost) {
        against_order("--covers-until", cost.covers_until, "the first day covered", cost.covers_from,
                      "--covers-from");
    }
    void against(const Layup& layup) {
        against_order("--until", layup.until, "the first day laid up", entry_.date, "--date");
    }
    void against(const auto& /*body*/) {}

    const Entry& entry_;
    const TypedEntry& typed_;
    const Bike& bike_;
    Date today_;
    std::vector<Objection> found_;
};

} // namespace

std::vector<Objection> objections_to(const Entry& entry, const TypedEntry& typed, const Bike& bike,
                                     const std::optional<std::string>& own_id, const Date& today) {
    if (!own_id) return Objections(entry, typed, bike, today).all();
    Bike others = bike;
    std::erase_if(others.log, [&](const LogEntry& one) { return one.id == *own_id; });
    return Objections(entry, typed, others, today).all();
}

} // namespace sumpbook::cli
