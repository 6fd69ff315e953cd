// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/cell_values.h"

#include "model/import/amount_text.h"
#include "model/import/fields.h"
#include "model/import/marks.h"
#include "model/import/value_words.h"
#include "model/import/words.h"

#include <fmt/format.h>

#include <limits>

namespace sumpbook::import {
namespace {

tl::unexpected<Problem> no_number(std::string_view cell) {
    return refuse(fmt::format("\"{}\" is no number.", cell));
}

/// The number of a cell under the file's mark. 1.859 under a decimal comma would be one thousand eight
/// hundred; in a column of numbers with decimals that is not believed.
Result<Decimal> believable_number(std::string_view number, const CellRules& rules) {
    auto read = read_number(number, rules.mark);
    if (!read) return read;
    const bool grouped = read->scale() == 0 && is_ambiguous_number(number);
    if (rules.has_decimals && grouped)
        return refuse(fmt::format("\"{}\" would be {}, and the other numbers of this column have decimals.",
                                  number, read->text()));
    return read;
}

Result<Decimal> not_below_zero(Result<Decimal> number) {
    if (number && number->is_negative()) return refuse("It cannot be below 0.");
    return number;
}

tl::unexpected<Problem> unit_differs(std::string_view cell) {
    return refuse(fmt::format("\"{}\" has another unit than the heading of its column.", cell));
}

Result<DistanceUnit> distance_unit_of(std::string_view cell, std::string_view behind,
                                      const CellRules& rules) {
    if (behind.empty())
        return rules.stated.distance.value_or(rules.usual.distance.value_or(DistanceUnit::km));
    auto unit = read_distance_unit(behind);
    if (unit && rules.stated.distance && *unit != *rules.stated.distance) return unit_differs(cell);
    return unit;
}

Result<VolumeUnit> volume_unit_of(std::string_view cell, std::string_view behind, const CellRules& rules) {
    if (behind.empty()) return rules.stated.volume.value_or(rules.usual.volume.value_or(VolumeUnit::l));
    auto unit = read_volume_unit(behind);
    const auto stated = rules.stated.volume;
    const bool measured_in_gallons = stated == VolumeUnit::us_gal || stated == VolumeUnit::imp_gal;
    if (!unit && measured_in_gallons && plain_words(behind).starts_with("gal")) return *stated;
    if (unit && stated && *unit != *stated) return unit_differs(cell);
    return unit;
}

Result<Currency> currency_of(std::string_view cell, std::string_view word, const CellRules& rules) {
    if (word.empty()) {
        const auto currency = rules.stated.currency.value_or(rules.usual.currency.value_or(rules.garage));
        if (currency == Currency{})
            return refuse("It has no currency, and neither has this garage file, which has no settings.");
        return currency;
    }
    auto currency = read_currency(word, rules.garage);
    if (currency && rules.stated.currency && *currency != *rules.stated.currency) return unit_differs(cell);
    return currency;
}

Result<SampleValue> with_number(SampleValue value, std::string_view cell, const AmountText& apart,
                                const CellRules& rules) {
    const auto number = believable_number(apart.number, rules);
    if (!number) return pass_on(number.error());
    value.number = *number;
    if (apart.behind.empty()) return value;
    ColumnUnit unit;
    const Field field{.slug = value.quantity, .type = FieldType::quantity};
    if (const auto added = add_unit(unit, field, apart.behind, rules.garage); !added)
        return pass_on(added.error());
    if (!unit.quantity || (rules.stated.quantity && *unit.quantity != *rules.stated.quantity))
        return unit_differs(cell);
    value.unit = *unit.quantity;
    return value;
}

} // namespace

Result<Date> date_in(std::string_view cell, const CellRules& rules) {
    return read_date(date_part(cell), rules.order);
}

Result<Decimal> number_in(std::string_view cell, const CellRules& rules) {
    const auto apart = take_amount_apart(cell);
    if (apart.number.empty() || !apart.before.empty() || !apart.behind.empty()) return no_number(cell);
    return believable_number(apart.number, rules);
}

Result<std::uint32_t> whole_in(std::string_view cell, const CellRules& rules) {
    const auto number = not_below_zero(number_in(cell, rules));
    if (!number) return pass_on(number.error());
    const bool fits = number->coefficient() <= std::numeric_limits<std::uint32_t>::max();
    if (number->scale() != 0 || !fits) return refuse(fmt::format("\"{}\" is no whole number.", cell));
    return static_cast<std::uint32_t>(number->coefficient());
}

Result<WrittenDistance> distance_in(std::string_view cell, const CellRules& rules) {
    const auto apart = take_amount_apart(cell);
    if (apart.number.empty() || !apart.before.empty()) return no_number(cell);
    const auto number = not_below_zero(believable_number(apart.number, rules));
    if (!number) return pass_on(number.error());
    const auto unit = distance_unit_of(cell, apart.behind, rules);
    if (!unit) return pass_on(unit.error());
    const WrittenDistance written{*number, *unit};
    if (const auto fits = distance_of(written); !fits) return pass_on(fits.error());
    return written;
}

Result<WrittenVolume> volume_in(std::string_view cell, const CellRules& rules) {
    const auto apart = take_amount_apart(cell);
    if (apart.number.empty() || !apart.before.empty()) return no_number(cell);
    const auto number = believable_number(apart.number, rules);
    if (!number) return pass_on(number.error());
    if (number->is_negative() || number->is_zero()) return refuse("It must be above 0.");
    const auto unit = volume_unit_of(cell, apart.behind, rules);
    if (!unit) return pass_on(unit.error());
    const WrittenVolume written{*number, *unit};
    if (const auto fits = volume_of(written); !fits) return pass_on(fits.error());
    return written;
}

Result<Money> money_in(std::string_view cell, const CellRules& rules) {
    const auto apart = take_amount_apart(cell);
    if (apart.number.empty() || (!apart.before.empty() && !apart.behind.empty())) return no_number(cell);
    const auto number = believable_number(apart.number, rules);
    if (!number) return pass_on(number.error());
    const auto currency = currency_of(cell, apart.before.empty() ? apart.behind : apart.before, rules);
    if (!currency) return pass_on(currency.error());
    return money_of(*number, *currency);
}

Result<UnitPrice> unit_price_in(std::string_view cell, const CellRules& rules) {
    const auto apart = take_amount_apart(cell);
    if (apart.number.empty()) return no_number(cell);
    const auto number = not_below_zero(believable_number(apart.number, rules));
    if (!number) return pass_on(number.error());
    const std::size_t slash = apart.behind.find('/');
    const bool each = slash != std::string_view::npos;
    const auto before_slash = each ? trimmed(apart.behind.substr(0, slash)) : apart.behind;
    if (!apart.before.empty() && !before_slash.empty()) return no_number(cell);
    const auto currency = currency_of(cell, apart.before.empty() ? before_slash : apart.before, rules);
    if (!currency) return pass_on(currency.error());
    const auto per =
        volume_unit_of(cell, each ? trimmed(apart.behind.substr(slash + 1)) : std::string_view(), rules);
    if (!per) return pass_on(per.error());
    return UnitPrice{.amount = *number, .currency = *currency, .per = *per};
}

Result<bool> yes_no_in(std::string_view cell, std::string_view list) {
    auto value = value_of_word("yes-no", cell);
    if (!value) value = value_of_word(list, cell);
    if (!value) return refuse(fmt::format("\"{}\" is neither yes nor no.", cell));
    return *value == "yes";
}

Result<SampleValue> sample_value_in(std::string_view cell, std::string_view quantity,
                                    const CellRules& rules) {
    SampleValue value{.quantity = std::string(quantity),
                      .state = ValueState::measured,
                      .number = {},
                      .unit = {},
                      .method = {}};
    value.unit = rules.stated.quantity.value_or(usual_unit_of(quantity));
    value.method = rules.stated.method;
    if (const auto word = value_of_word("presence", cell)) {
        value.state = *word == "detected" ? ValueState::detected : ValueState::not_detected;
        return value;
    }
    const auto apart = take_amount_apart(cell);
    if (apart.number.empty() || (!apart.before.empty() && apart.before != "<"))
        return refuse(
            fmt::format("\"{}\" is no value, no <value and neither detected nor not detected.", cell));
    if (apart.before == "<") value.state = ValueState::below;
    return with_number(std::move(value), cell, apart, rules);
}

} // namespace sumpbook::import
