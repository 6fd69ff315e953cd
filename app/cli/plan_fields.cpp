// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/plan_fields.h"

#include "model/garage/slugs.h"

#include <algorithm>
#include <functional>

namespace sumpbook::cli {
namespace {

constexpr int most_months = 1200;
constexpr int most_days = 36'500;

std::string trimmed(const std::string& text) {
    const auto begin = text.find_first_not_of(' ');
    if (begin == std::string::npos) return {};
    return text.substr(begin, text.find_last_not_of(' ') - begin + 1);
}

/// The parts of a text, without the blanks round them and without empty ones.
std::vector<std::string> split_at(const std::string& text, const std::string& between) {
    std::vector<std::string> parts;
    for (std::size_t at = 0; at <= text.size();) {
        const auto end = std::min(text.find(between, at), text.size());
        if (auto part = trimmed(text.substr(at, end - at)); !part.empty()) parts.push_back(std::move(part));
        at = end + between.size();
    }
    return parts;
}

bool is_one_of(std::string_view word, std::initializer_list<std::string_view> words) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

/// One part of a limit or margin: an amount and what it counts.
struct Amount {
    Decimal number;
    std::string unit;
};

Result<Amount> amount_in(const std::string& field, const std::string& part, const TypedAs& as) {
    const auto split = split_number_and_unit(part, as.mark);
    if (!split) return pass_on(placed(split.error(), field, part));
    if (split->number.is_negative() || split->number.is_zero())
        return pass_on(placed({ProblemKind::refused, "An interval must be above 0.", {}}, field, part));
    return Amount{split->number, std::string(split->unit)};
}

Result<int> whole(const std::string& field, const std::string& part, const Decimal& number, int most) {
    const Decimal rounded_number = rounded(number, 0);
    if (rounded_number != number || number > Decimal{most}) {
        return pass_on(placed(
            {ProblemKind::refused, "A whole number up to " + std::to_string(most) + " is expected.", {}},
            field, part));
    }
    return static_cast<int>(rounded_number.coefficient());
}

bool counts_months(const Amount& amount) { return is_one_of(amount.unit, {"month", "months", "mo"}); }
bool counts_years(const Amount& amount) { return is_one_of(amount.unit, {"year", "years", "a"}); }
bool counts_days(const Amount& amount) { return is_one_of(amount.unit, {"day", "days", "d"}); }
bool counts_hours(const Amount& amount) { return is_one_of(amount.unit, {"h", "hour", "hours"}); }

/// Limits are met whichever comes first, never both.
Result<void> joined_by_or(const std::string& field, const std::string& text) {
    if (text.find(" and ") == std::string::npos) return {};
    return pass_on(placed({ProblemKind::refused,
                           "Join limits with \"or\": \"6000 km or 12 months\". Whichever comes first counts.",
                           {}},
                          field, text));
}

Result<void> set_distance(std::optional<WrittenDistance>& to, const std::string& field,
                          const std::string& part, const TypedAs& as) {
    const auto distance = typed_distance(field, part, as);
    if (!distance) return pass_on(distance.error());
    to = *distance;
    return {};
}

Result<void> put_limit(Limits& limits, const std::string& field, const std::string& part, const TypedAs& as) {
    const auto amount = amount_in(field, part, as);
    if (!amount) return pass_on(amount.error());
    if (counts_hours(*amount)) {
        limits.hours = amount->number;
        return {};
    }
    if (!counts_months(*amount) && !counts_years(*amount))
        return set_distance(limits.distance, field, part, as);
    const int months_each = counts_years(*amount) ? 12 : 1;
    const auto number = whole(field, part, amount->number, most_months / months_each);
    if (!number) return pass_on(number.error());
    limits.months = *number * months_each;
    return {};
}

Result<void> put_margin(Margin& margin, const std::string& field, const std::string& part,
                        const TypedAs& as) {
    const auto amount = amount_in(field, part, as);
    if (!amount) return pass_on(amount.error());
    if (counts_hours(*amount)) {
        margin.hours = amount->number;
        return {};
    }
    if (!counts_days(*amount)) return set_distance(margin.distance, field, part, as);
    const auto days = whole(field, part, amount->number, most_days);
    if (!days) return pass_on(days.error());
    margin.days = *days;
    return {};
}

/// One option of `plan set`: its help and what it does to an item. Given more than once, the texts are
/// joined: --every 6000km --every 12months is "6000km or 12months".
struct Field {
    std::string option;
    std::string help;
    std::function<Result<void>(PlanItem&, const std::string&, const TypedAs&)> set;
};

std::optional<std::string> text_or_none(const std::string& text) {
    return text == "none" ? std::nullopt : std::optional(text);
}

template <class T, class Typed>
Result<void> put(T& to, const Typed& typed) {
    if (!typed) return pass_on(typed.error());
    to = *typed;
    return {};
}

Result<void> put_words(std::vector<std::string>& to, const std::string& text) {
    to = text == "none" ? std::vector<std::string>{} : split_at(text, ",");
    return {};
}

template <class Enum>
Result<void> put_word(auto& to, const std::string& field, const std::string& text) {
    const auto word = from_slug<Enum>(text);
    if (!word) return pass_on(placed(word.error(), field, text));
    to = *word;
    return {};
}

const std::vector<Field>& fields() {
    static const std::vector<Field> all{
        {"--label", "What you call it",
         [](PlanItem& item, const std::string& text, const TypedAs&) -> Result<void> {
             item.label = text;
             return {};
         }},
        {"--every", "Repeating limits: \"6000 km or 12 months or 100 h\"",
         [](PlanItem& item, const std::string& text, const TypedAs& as) {
             return put(item.repeat, typed_limits("--every", text, as));
         }},
        {"--first", "Limits until it has been done once: \"1000 km or 1 month\"",
         [](PlanItem& item, const std::string& text, const TypedAs& as) {
             return put(item.first, typed_limits("--first", text, as));
         }},
        {"--counted-from", "last-done (the usual) or grid",
         [](PlanItem& item, const std::string& text, const TypedAs&) {
             return put_word<CountedFrom>(item.counted_from, "--counted-from", text);
         }},
        {"--window", "The maker's window either side: \"500 km or 14 days\"",
         [](PlanItem& item, const std::string& text, const TypedAs& as) {
             return put(item.window, typed_margin("--window", text, as));
         }},
        {"--lead", "How long before it is soon: \"500 km or 30 days\"",
         [](PlanItem& item, const std::string& text, const TypedAs& as) {
             return put(item.lead, typed_margin("--lead", text, as));
         }},
        {"--kind", "upkeep, safety, statutory or renewal",
         [](PlanItem& item, const std::string& text, const TypedAs&) {
             return put_word<PlanKind>(item.kind, "--kind", text);
         }},
        {"--includes", "Items that it does as well: \"oil-filter, air-filter\"",
         [](PlanItem& item, const std::string& text, const TypedAs&) {
             return put_words(item.includes, text);
         }},
        {"--compartment", "Whose oil it is: engine, gearbox, primary, final-drive, ...",
         [](PlanItem& item, const std::string& text, const TypedAs&) -> Result<void> {
             item.compartment = text_or_none(text);
             return {};
         }},
        {"--slot", "The component it renews: battery, rear-tyre, chain-set, ...",
         [](PlanItem& item, const std::string& text, const TypedAs&) -> Result<void> {
             item.slot = text_or_none(text);
             return {};
         }},
        {"--cost", "What it is likely to cost: \"120 EUR\"",
         [](PlanItem& item, const std::string& text, const TypedAs& as) -> Result<void> {
             if (text != "none") return put(item.estimate, typed_money("--cost", text, as));
             item.estimate.reset();
             return {};
         }},
        {"--done-by", "self or workshop",
         [](PlanItem& item, const std::string& text, const TypedAs&) {
             return put_word<DoneBy>(item.done_by, "--done-by", text);
         }},
        {"--parts", "Parts it needs: \"filter AF-1131, drain washer\"",
         [](PlanItem& item, const std::string& text, const TypedAs&) { return put_words(item.parts, text); }},
        {"--in-force-from", "Jobs before this day are not judged",
         [](PlanItem& item, const std::string& text, const TypedAs& as) -> Result<void> {
             if (text != "none")
                 return put(item.in_force_from, typed_date("--in-force-from", text, as, true));
             item.in_force_from.reset();
             return {};
         }},
        {"--source", "Where the interval stands: \"handbook p. 112\"",
         [](PlanItem& item, const std::string& text, const TypedAs&) -> Result<void> {
             item.source = text_or_none(text);
             return {};
         }}};
    return all;
}

/// What stands between the texts of an option that may be given more than once; empty where it may not.
std::string joins_with(std::string_view option) {
    if (is_one_of(option, {"--every", "--first", "--window", "--lead"})) return " or ";
    return is_one_of(option, {"--includes", "--parts"}) ? ", " : "";
}

} // namespace

void add_plan_options(CLI::App& command, TypedPlanFields& typed) {
    for (const auto& field : fields()) {
        const auto join = [&typed, name = field.option](const std::vector<std::string>& texts) {
            const std::string between = joins_with(name);
            std::string all;
            for (const auto& text : texts)
                all += (all.empty() ? "" : between) + text;
            typed[name] = all;
        };
        auto* option = command.add_option_function<std::vector<std::string>>(field.option, join, field.help);
        option->expected(1)->allow_extra_args(false);
        if (!joins_with(field.option).empty()) option->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
    }
}

Result<Limits> typed_limits(const std::string& field, const std::string& text, const TypedAs& as) {
    Limits limits;
    if (trimmed(text) == "none") return limits;
    if (auto joined = joined_by_or(field, text); !joined) return pass_on(joined.error());
    for (const auto& part : split_at(text, " or ")) {
        if (auto put = put_limit(limits, field, part, as); !put) return pass_on(put.error());
    }
    return limits;
}

Result<std::optional<Margin>> typed_margin(const std::string& field, const std::string& text,
                                           const TypedAs& as) {
    if (trimmed(text) == "none") return std::optional<Margin>{};
    Margin margin;
    if (auto joined = joined_by_or(field, text); !joined) return pass_on(joined.error());
    for (const auto& part : split_at(text, " or ")) {
        if (auto put = put_margin(margin, field, part, as); !put) return pass_on(put.error());
    }
    return std::optional(margin);
}

Result<void> set_plan_fields(PlanItem& item, const TypedPlanFields& typed, const TypedAs& as) {
    for (const auto& field : fields()) {
        const auto found = typed.find(field.option);
        if (found == typed.end()) continue;
        if (auto set = field.set(item, found->second, as); !set) return pass_on(set.error());
    }
    return {};
}

} // namespace sumpbook::cli
