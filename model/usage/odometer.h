// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "model/usage/dial.h"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::usage {

/// A step above this a day is flagged. DESIGN (numbers.md 1.2): longer than any day's ride.
inline constexpr Distance leap_a_day = Distance::from_whole_km(2500);

/// What one entry says about the distance of the bike.
struct OdometerReading {
    std::string entry_id;
    Date date;
    WrittenDistance written; ///< As on the dial; of a clock change the last reading of the old dial.
    Distance distance;       ///< True distance.
    bool accepted = true;
};

enum class OdometerFlagKind {
    falls, ///< Not accepted: it contradicts more readings than it agrees with.
    leaps, ///< Accepted, but more than `leap_a_day` after the accepted one before it.
};
/// "odometer-falls", "odometer-leaps".
[[nodiscard]] std::string_view slug(OdometerFlagKind kind);

/// A reading that does not fit, with the entries beside it that it was held against.
struct OdometerFlag {
    OdometerFlagKind kind = OdometerFlagKind::falls;
    std::string entry_id;
    std::vector<std::string> against_ids; ///< Accepted neighbours: the one before, the one after.
    std::string sentence;
    bool operator==(const OdometerFlag&) const = default;
};

/// True distance at the end of a day.
struct DayEnd {
    Date date;
    Distance distance;
};

/// First and last accepted reading.
struct RecordSpan {
    Date first;
    Date last;
    Distance at_first; ///< At the end of the first day.
    Distance at_last;
    [[nodiscard]] int days() const { return days_between(first, last); }
    [[nodiscard]] Distance distance() const { return at_last - at_first; }
};

/// Distance of the part of a period that the record covers.
struct PeriodDistance {
    Date from; ///< First day covered; on the first day of the record nothing is ridden before its reading.
    Date to;
    Distance distance;
    bool whole_period = true;
};

/// All readings of a bike's odometer, in log order (numbers.md 1).
///
/// Accepted are the longest non-falling run of true distances; of several the one with the fewest leaps,
/// then the one that keeps the earliest entries. Nothing is deleted: readings that are not accepted stay,
/// flagged. An entry whose number is past the range of Distance is left out.
class OdometerSeries {
public:
    /// From every entry with an odometer.
    [[nodiscard]] static OdometerSeries of(const Bike& bike);

    [[nodiscard]] const std::vector<OdometerReading>& readings() const { return readings_; }
    [[nodiscard]] const std::vector<OdometerFlag>& flags() const { return flags_; }
    /// Absent without an accepted reading.
    [[nodiscard]] std::optional<RecordSpan> span() const;

    /// Distance at the end of a day, linear by days between accepted readings, of which the last of a day
    /// counts. Absent outside the record.
    [[nodiscard]] std::optional<Distance> position(const Date& date) const;
    /// position(to) - position(day before from), so that months add up to years; outside the record only
    /// the covered part. Absent where nothing is covered.
    [[nodiscard]] std::optional<PeriodDistance> period(const Date& from, const Date& to) const;
    /// The accepted reading of an entry; absent where it has none.
    [[nodiscard]] std::optional<Distance> of_entry(std::string_view entry_id) const;
    /// Where the bike stood at an entry: its accepted reading, else the position of its day. Absent outside
    /// the record.
    [[nodiscard]] std::optional<Distance> at_entry(const LogEntry& entry) const;
    /// First day at whose end the bike had gone so far; absent before the record, and past its end.
    [[nodiscard]] std::optional<Date> day_reached(Distance distance) const;

    /// The last accepted reading of each day that has one, by date.
    [[nodiscard]] const std::vector<DayEnd>& day_ends() const { return day_ends_; }
    [[nodiscard]] const Dials& dials() const { return dials_; }

private:
    void add(const LogEntry& entry);
    void choose_accepted();

    Dials dials_;
    std::vector<OdometerReading> readings_;
    std::vector<OdometerFlag> flags_;
    std::vector<DayEnd> day_ends_;
    std::map<std::string, Distance, std::less<>> accepted_by_entry_;
};

} // namespace sumpbook::usage
