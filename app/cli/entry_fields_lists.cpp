// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/entry_fields_lists.h"

#include "app/cli/no_currency.h"
#include "model/garage/slugs.h"

#include <optional>
#include <string_view>

namespace sumpbook::cli {
namespace {

std::string trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t");
    if (first == std::string_view::npos) return {};
    return std::string(text.substr(first, text.find_last_not_of(" \t") - first + 1));
}

tl::unexpected<Problem> refuse_text(std::string sentence, const std::string& field, const std::string& text) {
    return refuse(std::move(sentence), {.file = {}, .line = {}, .column = field, .text = text});
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// Text in two at a separator; absent where it is not there.
struct Halves {
    std::string before;
    std::string behind;
};
std::optional<Halves> split_at(const std::string& text, std::string_view separator, bool last = false) {
    const auto at = last ? text.rfind(separator) : text.find(separator);
    if (at == std::string::npos) return std::nullopt;
    return Halves{trimmed(text.substr(0, at)), trimmed(text.substr(at + separator.size()))};
}

/// Takes `word` off the end of the text, where it stands there behind a blank.
bool take_off_end(std::string& text, std::string_view word) {
    if (!text.ends_with(" " + std::string(word))) return false;
    text = trimmed(std::string_view(text).substr(0, text.size() - word.size()));
    return true;
}

/// Start of the last word that begins with a digit; absent where none does or it is the first word.
std::optional<std::size_t> last_number_at(const std::string& text) {
    for (std::size_t at = text.size(); at-- > 1;) {
        if (is_digit(text[at]) && text[at - 1] == ' ') return at;
    }
    return std::nullopt;
}

/// "name x2": the name and, where the text ends with it, the quantity.
Result<PartUsed> name_and_quantity(const std::string& field, const std::string& text,
                                   const std::string& typed, const TypedAs& as) {
    PartUsed part{.name = text, .number = {}, .quantity = {}, .price = {}, .replaces_number = {}};
    const auto at = text.rfind(" x");
    if (at == std::string::npos || at + 2 >= text.size() || !is_digit(text[at + 2])) return part;
    const auto quantity = typed_amount_of_something(field, text.substr(at + 2), as);
    if (!quantity) return pass_on(placed(quantity.error(), field, typed));
    part.name = trimmed(text.substr(0, at));
    part.quantity = *quantity;
    return part;
}

void set_numbers(PartUsed& part, const std::string& numbers) {
    constexpr std::string_view word = "replaces ";
    const auto at = numbers.find(word);
    const std::string number = trimmed(numbers.substr(0, at));
    if (!number.empty()) part.number = number;
    if (at != std::string::npos) part.replaces_number = trimmed(numbers.substr(at + word.size()));
}

/// Where the part's name and quantity end and its price begins, when there are no brackets: behind "x2".
std::size_t end_of_name(const std::string& text) {
    for (auto at = text.rfind(" x"); at != std::string::npos && at > 0; at = text.rfind(" x", at - 1)) {
        if (at + 2 >= text.size() || !is_digit(text[at + 2])) continue;
        const auto end = text.find(' ', at + 2);
        return end == std::string::npos ? text.size() : end;
    }
    return text.size();
}

/// Nearly every price on a pump has three decimals, so that 1.859 is read as it stands there; a price of a
/// thousand for one unit has to be typed without marks. Where the owner stated the mark, that one counts.
DecimalMark mark_in_price(const std::string& text, DecimalMark stated) {
    if (stated != DecimalMark::unknown) return stated;
    const std::string plain = trimmed(text);
    const std::string number = plain.substr(0, plain.find_first_not_of("0123456789.,"));
    if (!is_ambiguous_number(number)) return stated;
    return number.find('.') != std::string::npos ? DecimalMark::point : DecimalMark::comma;
}

constexpr const char* part_form = "Write a part as \"oil filter x1 [HF-11] 12.90\".";

} // namespace

Result<CheckDone> typed_check(const std::string& field, const std::string& text) {
    const auto halves = split_at(text, ":", true);
    if (!halves || halves->before.empty()) {
        return refuse_text(
            "Write a check with its outcome (pass, adjusted or failed): \"chain slack: adjusted, 30 mm\".",
            field, text);
    }
    const auto behind = split_at(halves->behind, ",");
    const auto outcome = from_slug<CheckOutcome>(behind ? behind->before : halves->behind);
    if (!outcome) return pass_on(placed(outcome.error(), field, text));
    CheckDone check{.name = halves->before, .outcome = *outcome, .reading = {}};
    if (behind && !behind->behind.empty()) check.reading = behind->behind;
    return check;
}

Result<PartUsed> typed_part(const std::string& field, const std::string& text, const TypedAs& as) {
    const auto open = text.find('[');
    const auto close = text.rfind(']');
    const bool brackets = open != std::string::npos && close != std::string::npos && open < close;
    if (!brackets && (open != std::string::npos || close != std::string::npos))
        return refuse_text(std::string("A bracket is open. ") + part_form, field, text);
    const std::size_t name_end = brackets ? open : end_of_name(text);
    const std::string price = trimmed(text.substr(brackets ? close + 1 : name_end));
    auto part = name_and_quantity(field, trimmed(text.substr(0, name_end)), text, as);
    if (!part) return part;
    if (part->name.empty())
        return refuse_text(std::string("The part has no name. ") + part_form, field, text);
    const bool bare_number = !brackets && !part->quantity && last_number_at(part->name) &&
                             part->name.find_first_of(".,", *last_number_at(part->name)) != std::string::npos;
    if (bare_number)
        return refuse_text("Is the number at the end a price? Then write x1 before it. " +
                               std::string(part_form),
                           field, text);
    if (brackets) set_numbers(*part, text.substr(open + 1, close - open - 1));
    if (price.empty()) return part;
    const auto money = typed_money(field, price, as);
    if (!money) return pass_on(placed(money.error(), field, text));
    part->price = *money;
    return part;
}

Result<TorqueApplied> typed_torque(const std::string& field, const std::string& text, const TypedAs& as) {
    std::string rest = trimmed(text);
    std::optional<bool> painted;
    if (take_off_end(rest, "not painted")) {
        painted = false;
    } else if (take_off_end(rest, "painted")) {
        painted = true;
    }
    const auto at = last_number_at(rest);
    if (!at) return refuse_text("Write a torque as \"oil drain plug 24 Nm painted\".", field, text);
    const auto split = split_number_and_unit(std::string_view(rest).substr(*at), as.mark);
    if (!split) return pass_on(placed(split.error(), field, text));
    if (split->number.is_zero()) return refuse_text("A torque must be above 0.", field, text);
    const auto unit = read_torque_unit(split->unit);
    if (!unit) return pass_on(placed(unit.error(), field, text));
    return TorqueApplied{trimmed(rest.substr(0, *at)), {split->number, *unit}, painted};
}

Result<PaintMarkSeen> typed_paint_mark(const std::string& field, const std::string& text) {
    std::string fastener = trimmed(text);
    if (take_off_end(fastener, "moved") || take_off_end(fastener, "not aligned"))
        return PaintMarkSeen{fastener, false};
    if (take_off_end(fastener, "aligned")) {
        take_off_end(fastener, "still");
        return PaintMarkSeen{fastener, true};
    }
    return refuse_text("Write a paint mark seen as \"axle nut aligned\" or \"axle nut moved\".", field, text);
}

Result<ClockChange> typed_clock_change(const std::string& field, const std::string& text, const TypedAs& as) {
    const auto halves = split_at(text, " to ");
    if (!halves) {
        return refuse_text(
            "Write the last reading of the old dial and the first of the new one: \"48210 km to 0 km\".",
            field, text);
    }
    const auto old_last = typed_distance(field, halves->before, as);
    if (!old_last) return pass_on(placed(old_last.error(), field, text));
    const auto new_first = typed_distance(field, halves->behind, as);
    if (!new_first) return pass_on(placed(new_first.error(), field, text));
    return ClockChange{*old_last, *new_first};
}

Result<UnitPrice> typed_unit_price(const std::string& field, const std::string& text, const TypedAs& as) {
    const auto split = split_number_and_unit(text, mark_in_price(text, as.mark));
    if (!split) return pass_on(placed(split.error(), field, text));
    if (split->number.is_negative() || split->number.is_zero())
        return refuse_text("A price must be above 0.", field, text);
    UnitPrice price{split->number, as.currency, as.volume_unit};
    std::string code = trimmed(split->unit);
    if (const auto halves = split_at(code, "/")) {
        const auto unit = read_volume_unit(halves->behind);
        if (!unit) return pass_on(placed(unit.error(), field, text));
        price.per = *unit;
        code = halves->before;
    }
    if (code.empty() && as.currency == Currency{}) return pass_on(no_currency(field, text));
    if (code.empty()) return price;
    const auto currency = Currency::from_code(code);
    if (!currency) return pass_on(placed(currency.error(), field, text));
    price.currency = *currency;
    return price;
}

} // namespace sumpbook::cli
