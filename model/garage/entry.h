// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/entry_parts.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace sumpbook {

// Fields are optional also where an owner must type them: an imported cell that could not be read is
// absent here and stands in the entry's doubts. Comments "money" and "private" name the part a field is
// written in; all others are open.

struct Reading {
    std::optional<ClockChange> clock_change;
    bool operator==(const Reading&) const = default;
};

/// A stop for fuel. The amount paid stands in Entry::paid.
struct Fuel {
    std::optional<WrittenVolume> volume;
    std::optional<UnitPrice> price; // money
    bool full = true;               ///< Filled to the same mark as usual; false: a part fill.
    bool missed_before = false;     ///< At least one fill before this one was not recorded.
    std::optional<Decimal> octane;
    std::optional<WrittenDistance> trip; ///< Used only where there is no odometer.
    bool operator==(const Fuel&) const = default;
};

struct OilChange {
    std::string compartment = "engine";
    std::optional<std::string> oil_name;
    std::optional<std::string> sae_grade; ///< "10W-40".
    std::optional<std::string> jaso_class;
    std::optional<std::string> jaso_edition; ///< "2016": a class means little without its edition.
    std::optional<WrittenVolume> volume_in;
    std::optional<WrittenVolume> volume_drained;
    std::optional<bool> filter_changed;
    std::optional<std::string> filter_number;
    std::optional<Decimal> level_after;       ///< 0 at the lower mark, 1 at the upper one.
    std::optional<std::string> virgin_sample; ///< Sample number of the new oil's own sample.
    bool operator==(const OilChange&) const = default;
};

struct TopUp {
    std::string compartment = "engine";
    std::optional<WrittenVolume> volume;
    std::optional<Decimal> level_before; ///< Fraction between the marks.
    std::optional<Decimal> level_after;
    std::optional<bool> same_oil;
    bool operator==(const TopUp&) const = default;
};

/// A job. Work that satisfies no plan item and is not marked planned is a repair.
struct Work {
    std::optional<std::string> text;
    std::vector<CheckDone> checks;
    std::vector<PartUsed> parts;
    std::optional<Decimal> labour_hours;
    std::optional<Money> labour_price; // money
    std::optional<DoneBy> done_by;
    bool planned = false;
    std::vector<TorqueApplied> torques;
    std::vector<PaintMarkSeen> paint_marks_seen;
    bool operator==(const Work&) const = default;
};

/// A component fitted to a slot; it ends the one before. Its price stands in Entry::paid.
struct Fit {
    std::string
        slot; ///< engine gearbox front-tyre rear-tyre chain-set battery front-pads rear-pads clutch, or own.
    std::optional<std::string> maker;
    std::optional<std::string> number;
    std::optional<std::string> serial;
    std::optional<std::string> tyre_date_code;
    std::optional<WrittenDistance> distance_before; ///< What it had already run.
    std::optional<Decimal> hours_before;
    bool operator==(const Fit&) const = default;
};

struct Modification {
    std::string what;
    std::optional<bool> reversible;
    std::optional<bool> original_parts_kept;
    std::optional<std::string> approval_paper;
    std::optional<std::string> setting_before; ///< Engine map, gearing or setting.
    std::optional<std::string> setting_after;
    bool operator==(const Modification&) const = default;
};

struct Measure {
    std::string quantity; ///< pad tread chain valve-clearance brake-fluid-water battery pressure ... or own.
    std::optional<Decimal> value;
    std::string unit;
    std::optional<std::string> at; ///< Where on the bike: "front", "cylinder 1 inlet".
    std::optional<Decimal> limit;
    bool operator==(const Measure&) const = default;
};

enum class OilUse : std::uint8_t { used = 0, virgin = 1 };
enum class TopUpSide : std::uint8_t { before = 0, after = 1 };

/// A sample of oil and what the laboratory found. The entry's date is the day it was drawn.
struct Sample {
    OilUse use = OilUse::used;
    std::optional<std::string> laboratory; // private
    std::optional<std::string> number;
    std::optional<Date> sent;
    std::optional<Date> result;
    std::string compartment = "engine";
    std::optional<std::string> oil_name; ///< A virgin sample names its oil.
    std::optional<Date> oil_change_date; ///< Absent: the latest oil change before the sample.
    std::optional<WrittenDistance> distance_on_oil;
    std::optional<Decimal> hours_on_oil;
    std::optional<TopUpSide> drawn; ///< Before or after a top-up of the same day.
    std::vector<SampleValue> values;
    std::optional<LabFlag> flag;
    std::optional<std::string> flag_words;
    std::optional<std::string> remark;
    bool operator==(const Sample&) const = default;
};

enum class FaultStatus : std::uint8_t { stored = 0, pending = 1, permanent = 2 };

struct Fault {
    std::string code;
    std::optional<std::string> text;
    std::optional<std::uint32_t> count;
    std::optional<FaultStatus> status;
    std::optional<bool> cleared;
    bool operator==(const Fault&) const = default;
};

enum class RecallType : std::uint8_t { recall = 0, bulletin = 1 };
enum class Applies : std::uint8_t { yes = 0, no = 1, unknown = 2 };

struct Recall {
    RecallType type = RecallType::recall;
    std::string number;
    std::optional<std::string> text;
    Applies applies = Applies::unknown;
    bool done = false; ///< false: open.
    std::optional<std::string> how;
    bool recurring = false;
    std::optional<Date> next_due;
    bool operator==(const Recall&) const = default;
};

/// Money for something that is no other entry. The amount stands in Entry::paid.
struct Cost {
    std::string category;
    std::optional<std::string> text;
    std::optional<Date> covers_from;
    std::optional<Date> covers_until;
    std::optional<std::uint32_t> every_months; ///< Recurring; absent: once.
    std::optional<Date> until;                 ///< End of the recurrence; absent: open.
    bool valuation = false;                    ///< What the bike is worth: recorded, never spending.
    bool operator==(const Cost&) const = default;
};

/// Laid up from the entry's date.
struct Layup {
    std::optional<Date> until; ///< Absent: still laid up.
    bool planned = false;
    bool operator==(const Layup&) const = default;
};

struct Note {
    bool operator==(const Note&) const = default;
};

struct Attach {
    std::optional<std::string> text;
    bool operator==(const Attach&) const = default;
};

/// The order of the alternatives is the kind's number in garage files: append only.
using EntryBody = std::variant<Reading, Fuel, OilChange, TopUp, Work, Fit, Modification, Measure, Sample,
                               Fault, Recall, Cost, Layup, Note, Attach>;

/// One thing that happened to a bike.
struct Entry {
    Date date;
    std::optional<WrittenDistance> odometer; ///< As on the dial.
    std::optional<Decimal> hours;            ///< Of the hour meter.
    std::optional<std::string> note;         // private
    std::optional<std::string> place;        // private
    std::optional<std::string> who;          // private
    std::optional<Evidence> evidence;
    std::optional<std::string> visit; ///< Entries of one visit share the invoice and the person who vouches.
    std::vector<std::string> does;    ///< Plan item slugs that this entry satisfies.
    std::optional<Money> paid;        // money: the total as typed
    std::optional<ImportedFrom> imported;
    std::vector<AttachmentRef> attachments; // private
    std::vector<Doubt> doubts;              ///< Each written in its own part.
    EntryBody body;
    bool operator==(const Entry&) const = default;
};

/// "reading", "fuel", "oil-change", "top-up", ... as in commands and JSON.
[[nodiscard]] std::string_view kind_slug(const EntryBody& body);
[[nodiscard]] const std::vector<std::string_view>& entry_kind_slugs();
/// An empty body of the kind; absent for an unknown slug.
[[nodiscard]] std::optional<EntryBody> body_of_kind(std::string_view slug);

} // namespace sumpbook
