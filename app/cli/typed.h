// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/dates.h"
#include "model/quantity/distance.h"
#include "model/quantity/money.h"
#include "model/quantity/number_text.h"
#include "model/quantity/volume.h"

#include <string>

namespace sumpbook::cli {

/// How typed text is to be read: the owner's marks and orders, and the units and currency that are meant
/// where none was typed.
struct TypedAs {
    DecimalMark mark = DecimalMark::unknown;
    DateOrder order = DateOrder::unknown;
    DistanceUnit distance_unit = DistanceUnit::km;
    VolumeUnit volume_unit = VolumeUnit::l;
    Currency currency;
    Date today;
};

// Each takes the name of the option or field, so that a refusal has its place: "--volume: ...". Numbers
// without a unit get the unit of `as`; nothing is rounded or bent.
[[nodiscard]] Result<Decimal> typed_number(const std::string& field, const std::string& text,
                                           const TypedAs& as);
/// 0 or more.
[[nodiscard]] Result<Decimal> typed_amount_of_something(const std::string& field, const std::string& text,
                                                        const TypedAs& as);
/// A whole number from `low` to `high`.
[[nodiscard]] Result<int> typed_whole_number(const std::string& field, const std::string& text, int low,
                                             int high);
/// "12345", "12345 km", "7671 mi"; 0 or more.
[[nodiscard]] Result<WrittenDistance> typed_distance(const std::string& field, const std::string& text,
                                                     const TypedAs& as);
/// "12.3", "12.3 L", "2.7 imp gal"; above 0.
[[nodiscard]] Result<WrittenVolume> typed_volume(const std::string& field, const std::string& text,
                                                 const TypedAs& as);
/// "22.10", "22.10 GBP"; may be negative where `below_zero` is allowed.
[[nodiscard]] Result<Money> typed_money(const std::string& field, const std::string& text, const TypedAs& as,
                                        bool below_zero = false);
/// Any day to today, and also later ones where `future` is allowed; "today" and "yesterday" are understood.
[[nodiscard]] Result<Date> typed_date(const std::string& field, const std::string& text, const TypedAs& as,
                                      bool future = false);
/// yes/no, y/n, true/false.
[[nodiscard]] Result<bool> typed_yes_no(const std::string& field, const std::string& text);

/// Puts the field's name and the typed text into a problem's place.
[[nodiscard]] Problem placed(Problem problem, const std::string& field, const std::string& text);

} // namespace sumpbook::cli
