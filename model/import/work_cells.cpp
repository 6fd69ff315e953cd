// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/work_cells.h"

#include "model/garage/slugs.h"
#include "model/import/value_words.h"
#include "model/import/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace sumpbook::import {
namespace {

tl::unexpected<Problem> unclear(std::string_view piece, std::string_view form) {
    return refuse(fmt::format("\"{}\" does not have the form \"{}\".", piece, form));
}

/// Text before and behind the first or last `mark`, trimmed; nothing without the mark.
std::optional<std::pair<std::string_view, std::string_view>> split_at(std::string_view text, std::size_t at,
                                                                      std::size_t length) {
    if (at == std::string_view::npos) return std::nullopt;
    return std::pair{trimmed(text.substr(0, at)), trimmed(text.substr(at + length))};
}

constexpr std::string_view part_form = "name x quantity [number replaces number] = price";

/// Takes "= 19.80" off the end.
Result<void> take_price(std::string_view& rest, PartUsed& part, const CellRules& rules) {
    const auto sides = split_at(rest, rest.rfind('='), 1);
    if (!sides) return {};
    auto price = money_in(sides->second, rules);
    if (!price) return pass_on(price.error());
    if (price->minor < 0) return refuse("A price cannot be below 0.");
    part.price = *price;
    rest = sides->first;
    return {};
}

/// Takes "[K-204 replaces K-203]" off the end.
bool take_numbers(std::string_view& rest, PartUsed& part) {
    if (!rest.ends_with(']')) return rest.find_first_of("[]") == std::string_view::npos;
    const std::size_t open = rest.rfind('[');
    if (open == std::string_view::npos) return false;
    const auto inside = trimmed(rest.substr(open + 1, rest.size() - open - 2));
    constexpr std::string_view word = "replaces ";
    const auto both = split_at(inside, inside.find(word), word.size());
    const auto number = both ? both->first : inside;
    if (number.empty() && !both) return false;
    if (!number.empty()) part.number = std::string(number);
    if (both) part.replaces_number = std::string(both->second);
    rest = trimmed(rest.substr(0, open));
    return true;
}

/// Takes "x 2" off the end, where a number stands behind the x.
Result<void> take_quantity(std::string_view& rest, PartUsed& part, const CellRules& rules) {
    constexpr std::string_view times = " x ";
    const auto sides = split_at(rest, rest.rfind(times), times.size());
    if (!sides || sides->second.find_first_not_of("0123456789.,") != std::string_view::npos) return {};
    const auto quantity = number_in(sides->second, rules);
    if (!quantity) return pass_on(quantity.error());
    part.quantity = *quantity;
    rest = sides->first;
    return {};
}

/// Takes a last word off the end where it is one of two.
std::optional<bool> take_painted(std::string_view& rest) {
    for (const auto& [word, painted] :
         {std::pair{std::string_view(" not painted"), false}, {" painted", true}})
        if (rest.ends_with(word)) {
            rest = trimmed(rest.substr(0, rest.size() - word.size()));
            return painted;
        }
    return std::nullopt;
}

} // namespace

Result<CheckDone> check_in(std::string_view piece) {
    constexpr std::string_view form = "name: pass, adjusted or failed, reading";
    const auto sides = split_at(piece, piece.find(':'), 1);
    if (!sides || sides->first.empty()) return unclear(piece, form);
    const std::size_t end = std::min(sides->second.find_first_of(" ,"), sides->second.size());
    const auto outcome = value_of_word("check-outcome", sides->second.substr(0, end));
    if (!outcome) return unclear(piece, form);
    CheckDone check{.name = std::string(sides->first),
                    .outcome = from_slug<CheckOutcome>(*outcome).value(),
                    .reading = {}};
    auto reading = sides->second.substr(end);
    if (reading.starts_with(',')) reading.remove_prefix(1);
    if (!trimmed(reading).empty()) check.reading = std::string(trimmed(reading));
    return check;
}

Result<PartUsed> part_in(std::string_view piece, const CellRules& rules) {
    PartUsed part;
    std::string_view rest = trimmed(piece);
    if (const auto taken = take_price(rest, part, rules); !taken) return pass_on(taken.error());
    if (!take_numbers(rest, part)) return unclear(piece, part_form);
    if (const auto taken = take_quantity(rest, part, rules); !taken) return pass_on(taken.error());
    if (rest.empty()) return unclear(piece, part_form);
    part.name = std::string(rest);
    return part;
}

Result<TorqueApplied> torque_in(std::string_view piece, const CellRules& rules) {
    TorqueApplied applied;
    std::string_view rest = trimmed(piece);
    applied.paint_mark = take_painted(rest);
    for (std::size_t at = rest.find(' '); at != std::string_view::npos; at = rest.find(' ', at + 1)) {
        const auto amount = split_number_and_unit(rest.substr(at + 1), rules.mark);
        if (!amount || amount->number.is_negative()) continue;
        const auto unit = read_torque_unit(amount->unit);
        if (!unit) continue;
        applied.fastener = std::string(trimmed(rest.substr(0, at)));
        applied.torque = {amount->number, *unit};
        return applied;
    }
    return unclear(piece, "fastener 24 Nm painted");
}

Result<PaintMarkSeen> paint_mark_in(std::string_view piece) {
    const auto sides = split_at(piece, piece.rfind(':'), 1);
    const auto seen = sides ? value_of_word("paint-seen", sides->second) : std::nullopt;
    if (!seen || sides->first.empty()) return unclear(piece, "fastener: aligned or moved");
    return PaintMarkSeen{.fastener = std::string(sides->first), .still_aligned = *seen == "aligned"};
}

} // namespace sumpbook::import
