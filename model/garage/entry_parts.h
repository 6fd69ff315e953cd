// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/dates.h"
#include "model/quantity/distance.h"
#include "model/quantity/money.h"
#include "model/quantity/units.h"

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace sumpbook {

/// Where a record comes from. Absent: not stated. `none`: the owner says there is nothing to show.
enum class Evidence : std::uint8_t { invoice = 0, stamp = 1, seen = 2, told = 3, none = 4 };
enum class DoneBy : std::uint8_t { self = 0, workshop = 1 };

/// The part of a record a field belongs to; parts can be withheld from a hand-over.
enum class Part : std::uint8_t { open = 0, money = 1, personal = 2 };

/// A cell or field that could not be accepted as typed. It is kept with the entry until settled.
struct Doubt {
    std::string file;
    std::uint32_t line = 0; ///< Counted from 1; 0 when not from a file.
    std::string column;
    std::string text; ///< Exactly as typed.
    std::string expected;
    Part part = Part::open; ///< The doubted field's part; the doubt is written in that part.
    bool operator==(const Doubt&) const = default;
};

/// "imported from FILE on DATE".
struct ImportedFrom {
    std::string file;
    Date date;
    bool operator==(const ImportedFrom&) const = default;
};

/// A file kept in the garage; its bytes stand in a frame of their own, named by the hash of that part.
struct AttachmentRef {
    std::string name;                         // private
    std::string media_type;                   // private
    std::uint64_t size_bytes = 0;             // private
    std::array<std::uint8_t, 32> part_hash{}; // private
    bool operator==(const AttachmentRef&) const = default;
};

/// The dial was replaced or its unit changed: the last reading of the old one, the first of the new one.
struct ClockChange {
    WrittenDistance old_last;
    WrittenDistance new_first;
    bool operator==(const ClockChange&) const = default;
};

enum class CheckOutcome : std::uint8_t { pass = 0, adjusted = 1, failed = 2 };

/// One line of a check list: "chain slack, adjusted, 30 mm".
struct CheckDone {
    std::string name;
    CheckOutcome outcome = CheckOutcome::pass;
    std::optional<std::string> reading;
    bool operator==(const CheckDone&) const = default;
};

struct PartUsed {
    std::string name;
    std::optional<std::string> number;
    std::optional<Decimal> quantity;            ///< Absent: 1.
    std::optional<Money> price;                 // money; of the whole line
    std::optional<std::string> replaces_number; ///< The number this one stands in for.
    bool operator==(const PartUsed& other) const = default;
};

/// A fastener tightened, and whether a paint mark was drawn across it and its seat.
struct TorqueApplied {
    std::string fastener;
    Written<TorqueUnit> torque;
    std::optional<bool> paint_mark;
    bool operator==(const TorqueApplied&) const = default;
};

struct PaintMarkSeen {
    std::string fastener;
    bool still_aligned = true;
    bool operator==(const PaintMarkSeen&) const = default;
};

enum class ValueState : std::uint8_t { measured = 0, below = 1, detected = 2, not_detected = 3 };

/// One value of an oil sample. `number` is the value, or the detection limit for `below`; it is without
/// meaning for the other two states.
struct SampleValue {
    std::string quantity; ///< Slug: Fe, Cr, ..., kv100, tbn, fuel, water, glycol, ...
    ValueState state = ValueState::measured;
    Decimal number;
    std::string unit;                  ///< "mg/kg", "mm2/s", "mg KOH/g", "%", "abs/cm", "C".
    std::optional<std::string> method; ///< "ASTM D2896".
    bool operator==(const SampleValue& other) const {
        return quantity == other.quantity && state == other.state && number.same_as_written(other.number) &&
               unit == other.unit && method == other.method;
    }
};

/// The laboratory's own verdict, on the common ladder, with its own words beside.
enum class LabFlag : std::uint8_t { within = 0, watch = 1, act = 2 };

} // namespace sumpbook
