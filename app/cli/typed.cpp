// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/typed.h"

#include "app/cli/no_currency.h"
#include "model/garage/slugs.h"

namespace sumpbook::cli {
namespace {

tl::unexpected<Problem> refuse_typed(std::string sentence, const std::string& field,
                                     const std::string& text) {
    return refuse(std::move(sentence), {.file = {}, .line = {}, .column = field, .text = text});
}

/// The number and, where one was typed, its unit read by `read_unit`; else the given unit.
template <class Unit>
Result<Written<Unit>> with_unit(const std::string& field, const std::string& text, DecimalMark mark,
                                Unit otherwise, Result<Unit> (*read_unit)(std::string_view)) {
    const auto split = split_number_and_unit(text, mark);
    if (!split) return pass_on(placed(split.error(), field, text));
    if (split->unit.empty()) return Written<Unit>{split->number, otherwise};
    const auto unit = read_unit(split->unit);
    if (!unit) return pass_on(placed(unit.error(), field, text));
    return Written<Unit>{split->number, *unit};
}

} // namespace

Problem placed(Problem problem, const std::string& field, const std::string& text) {
    problem.place.column = field;
    problem.place.text = text;
    return problem;
}

Result<Decimal> typed_number(const std::string& field, const std::string& text, const TypedAs& as) {
    auto number = read_number(text, as.mark);
    if (!number) return pass_on(placed(number.error(), field, text));
    return number;
}

Result<Decimal> typed_amount_of_something(const std::string& field, const std::string& text,
                                          const TypedAs& as) {
    const auto number = typed_number(field, text, as);
    if (number && number->is_negative()) return refuse_typed("This cannot be negative.", field, text);
    return number;
}

Result<int> typed_whole_number(const std::string& field, const std::string& text, int low, int high) {
    const auto number = Decimal::parse(text);
    if (!number || number->scale() != 0 || *number < Decimal{low} || *number > Decimal{high}) {
        return refuse_typed("A whole number from " + std::to_string(low) + " to " + std::to_string(high) +
                                " is expected.",
                            field, text);
    }
    return static_cast<int>(number->coefficient());
}

Result<WrittenDistance> typed_distance(const std::string& field, const std::string& text, const TypedAs& as) {
    auto written = with_unit(field, text, as.mark, as.distance_unit, &read_distance_unit);
    if (!written) return written;
    if (written->number.is_negative()) return refuse_typed("A distance cannot be negative.", field, text);
    if (const auto distance = distance_of(*written); !distance)
        return pass_on(placed(distance.error(), field, text));
    return written;
}

Result<WrittenVolume> typed_volume(const std::string& field, const std::string& text, const TypedAs& as) {
    auto written = with_unit(field, text, as.mark, as.volume_unit, &read_volume_unit);
    if (!written) return written;
    if (written->number.is_negative()) return refuse_typed("A volume cannot be negative.", field, text);
    if (written->number.is_zero()) return refuse_typed("A volume must be above 0.", field, text);
    if (const auto volume = volume_of(*written); !volume) return pass_on(placed(volume.error(), field, text));
    return written;
}

Result<Money> typed_money(const std::string& field, const std::string& text, const TypedAs& as,
                          bool below_zero) {
    const auto split = split_number_and_unit(text, as.mark);
    if (!split) return pass_on(placed(split.error(), field, text));
    Currency currency = as.currency;
    if (!split->unit.empty()) {
        const auto typed = Currency::from_code(split->unit);
        if (!typed) return pass_on(placed(typed.error(), field, text));
        currency = *typed;
    } else if (currency == Currency{}) {
        return pass_on(no_currency(field, text));
    }
    if (!below_zero && split->number.is_negative())
        return refuse_typed("An amount cannot be negative here.", field, text);
    auto money = money_of(split->number, currency);
    if (!money) return pass_on(placed(money.error(), field, text));
    return money;
}

Result<Date> typed_date(const std::string& field, const std::string& text, const TypedAs& as, bool future) {
    if (text == "today") return as.today;
    if (text == "yesterday") return plus_days(as.today, -1);
    const auto date = read_date(text, as.order);
    if (!date) return pass_on(placed(date.error(), field, text));
    if (!future && *date > as.today) {
        return refuse_typed("This day is still to come (today is " + iso_text(as.today) + ").", field, text);
    }
    return date;
}

Result<bool> typed_yes_no(const std::string& field, const std::string& text) {
    if (text == "yes" || text == "y" || text == "true") return true;
    if (text == "no" || text == "n" || text == "false") return false;
    return refuse_typed("Answer yes or no.", field, text);
}

} // namespace sumpbook::cli
