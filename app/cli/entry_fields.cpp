// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/entry_fields.h"

#include "app/cli/entry_fields_build.h"
#include "app/cli/suggestions.h"
#include "model/import/value_words.h"

#include <algorithm>
#include <array>

namespace sumpbook::cli {
namespace {

tl::unexpected<Problem> refuse_field(std::string sentence, const std::string& option,
                                     const std::string& text) {
    return refuse(std::move(sentence), {.file = {}, .line = {}, .column = option, .text = text});
}

Result<Date> read_past_day(const std::string& option, const std::string& text, const EntryTypedAs& as) {
    return typed_date(option, text, as);
}

Result<std::string> read_plan_slug(const std::string& option, const std::string& text,
                                   const EntryTypedAs& as) {
    if (std::ranges::find(as.plan_slugs, text) != as.plan_slugs.end()) return text;
    return refuse_field("The plan of this bike has no item \"" + text + "\"." +
                            did_you_mean(text, as.plan_slugs) + " See: sumpbook plan list",
                        option, text);
}

Result<Money> read_paid(const std::string& option, const std::string& text, const EntryTypedAs& as) {
    return typed_money(option, text, as);
}

/// What an amount of money is called for a kind.
std::pair<std::string, std::string> paid_option(std::string_view kind) {
    if (kind == "fuel") return {"--total", "What was paid, as on the receipt"};
    if (kind == "cost") return {"--amount", "The amount"};
    return {"--paid", "What was paid for all of it"};
}

constexpr std::array<const char*, 3> words_for_paid{"--paid", "--total", "--amount"};

/// Costs, recalls and lay-ups can lie ahead.
bool may_lie_ahead(std::string_view kind) { return kind == "cost" || kind == "recall" || kind == "layup"; }

std::vector<EntryField> common_fields(std::string_view kind) {
    const auto [paid, paid_help] = paid_option(kind);
    std::vector<EntryField> fields;
    fields.push_back(field("--date", "DATE", "The day (otherwise today)", &Entry::date,
                           may_lie_ahead(kind) ? &read_any_day : &read_past_day));
    fields.push_back(field("--odometer", "DISTANCE", "What the dial showed: 12345, or \"7671 mi\"",
                           &Entry::odometer, &typed_distance));
    fields.push_back(
        field("--hours", "HOURS", "What the hour meter showed", &Entry::hours, &typed_amount_of_something));
    fields.push_back(field("--does", "ITEM", "Item of the plan that this satisfies; repeat for each",
                           &Entry::does, &read_plan_slug));
    fields.push_back(
        field(paid, "AMOUNT", paid_help + ": 22.10, or \"22.10 GBP\"", &Entry::paid, &read_paid));
    fields.push_back(field("--evidence", "invoice|stamp|seen|told|none", "What there is to show for it",
                           &Entry::evidence, &read_word<Evidence>));
    fields.push_back(field("--visit", "TEXT", "Same word for all entries of one visit or invoice",
                           &Entry::visit, &read_words));
    fields.push_back(field("--note", "TEXT", "Anything else (private)", &Entry::note, &read_words));
    fields.push_back(field("--place", "TEXT", "Where (private)", &Entry::place, &read_words));
    fields.push_back(
        field("--who", "TEXT", "Who did it and vouches for it (private)", &Entry::who, &read_words));
    return fields;
}

std::vector<EntryField> all_fields(std::string_view kind) {
    auto fields = own_fields(kind);
    for (auto& one : common_fields(kind)) {
        // A kind's own amount of money (a cost may be a refund) stands for the common one.
        const bool own = std::ranges::any_of(fields, [&](const auto& f) { return f.option == one.option; });
        if (!own) fields.push_back(std::move(one));
    }
    return fields;
}

bool is_word_for_paid(std::string_view option) {
    return std::ranges::find(words_for_paid, option) != words_for_paid.end();
}

const EntryField* field_of(std::string_view kind, std::string_view option) {
    const auto& fields = entry_fields(kind);
    const auto found = std::ranges::find(fields, option, &EntryField::option);
    return found == fields.end() ? nullptr : &*found;
}

tl::unexpected<Problem> no_such_field(std::string_view kind, const std::string& option) {
    std::vector<std::string> known;
    for (const auto& one : entry_fields(kind))
        known.push_back(one.option);
    return fail(ProblemKind::wrong_usage, "An entry of the kind " + std::string(kind) + " has no " + option +
                                              "." + did_you_mean(option, known) + " See: sumpbook add " +
                                              std::string(kind) + " --help");
}

struct Missing {
    const Entry& entry;
    // What an owner must say for each kind; empty when nothing is missing.
    std::string operator()(const Reading& reading) const {
        const bool any = reading.clock_change || entry.odometer || entry.hours;
        return any ? "" : "--odometer, --hours or --clock-change";
    }
    std::string operator()(const Fuel& fuel) const { return fuel.volume ? "" : "--volume \"12.3 L\""; }
    std::string operator()(const OilChange& change) const {
        return change.volume_in ? "" : "--volume-in \"2.9 L\"";
    }
    std::string operator()(const TopUp& top_up) const { return top_up.volume ? "" : "--volume \"0.2 L\""; }
    std::string operator()(const Work& work) const {
        const bool any = work.text || !work.checks.empty() || !entry.does.empty() || !work.torques.empty() ||
                         !work.paint_marks_seen.empty() || !work.parts.empty();
        return any ? "" : "--does, --check or --text";
    }
    std::string operator()(const Fit& fit) const { return fit.slot.empty() ? "--slot" : ""; }
    std::string operator()(const Modification& mod) const { return mod.what.empty() ? "--what" : ""; }
    std::string operator()(const Measure& measure) const {
        if (measure.quantity.empty()) return "--quantity";
        return measure.value ? "" : "--value \"3.2 mm\"";
    }
    std::string operator()(const Sample& sample) const {
        return sample.values.empty() ? "--value Fe=12" : "";
    }
    std::string operator()(const Fault& fault) const { return fault.code.empty() ? "--code" : ""; }
    std::string operator()(const Recall& recall) const { return recall.number.empty() ? "--number" : ""; }
    std::string operator()(const Cost& cost) const {
        if (cost.category.empty()) return "--category";
        return entry.paid ? "" : "--amount";
    }
    std::string operator()(const Layup& /*layup*/) const { return {}; }
    std::string operator()(const Note& /*note*/) const { return entry.note ? "" : "--note"; }
    std::string operator()(const Attach& /*attach*/) const { return {}; }
};

} // namespace

EntryTypedAs entry_typed_as(const Garage& garage, const Bike& bike, const TypedAs& marks) {
    EntryTypedAs as;
    static_cast<TypedAs&>(as) = marks;
    as.distance_unit = bike.details.value.odometer_unit;
    as.currency = currency_of(garage);
    if (garage.settings) as.volume_unit = garage.settings->value.volume_unit;
    as.categories = garage.settings ? categories_of(garage.settings->value) : default_categories();
    for (const auto& item : bike.plan)
        as.plan_slugs.push_back(item.value.slug);
    for (const auto& slug : import::values_of("plan-item")) {
        if (std::ranges::find(as.plan_slugs, slug) == as.plan_slugs.end()) as.plan_slugs.push_back(slug);
    }
    return as;
}

const std::vector<EntryField>& entry_fields(std::string_view kind) {
    static const std::map<std::string_view, std::vector<EntryField>> by_kind = [] {
        std::map<std::string_view, std::vector<EntryField>> made;
        for (const auto slug : entry_kind_slugs())
            made.emplace(slug, all_fields(slug));
        return made;
    }();
    return by_kind.at(kind);
}

void add_entry_options(CLI::App& command, const std::vector<EntryField>& fields, TypedEntry& typed) {
    const auto add = [&](const std::string& name, const EntryField& one) {
        auto* option = command.add_option_function<std::vector<std::string>>(
            name, [&typed, name](const std::vector<std::string>& texts) { typed[name] = texts; }, one.help);
        option->type_name(one.type)->expected(one.bare ? 0 : 1, 1)->allow_extra_args(false);
        option->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
        return option;
    };
    for (const auto& one : fields) {
        if (auto* there = command.get_option_no_throw(one.option); there != nullptr) {
            if (one.bare) there->expected(0, 1); // the wider form where kinds differ
            continue;
        }
        add(one.option, one);
    }
    const auto paid =
        std::ranges::find_if(fields, [](const EntryField& one) { return is_word_for_paid(one.option); });
    for (const auto* word : words_for_paid) {
        if (paid != fields.end() && command.get_option_no_throw(word) == nullptr) add(word, *paid)->group("");
    }
}

TypedEntry with_own_word_for_paid(TypedEntry typed, std::string_view kind) {
    const std::string own = paid_option(kind).first;
    for (const std::string word : words_for_paid) {
        const auto found = typed.find(word);
        if (word == own || found == typed.end()) continue;
        const auto texts = std::move(found->second);
        typed.erase(found);
        auto& all = typed[own];
        all.insert(all.end(), texts.begin(), texts.end());
    }
    return typed;
}

Result<void> set_entry_fields(Entry& entry, const TypedEntry& typed, const EntryTypedAs& as) {
    const auto kind = kind_slug(entry.body);
    for (const auto& [option, texts] : typed) {
        if (field_of(kind, option) == nullptr) return no_such_field(kind, option);
    }
    for (const auto& one : entry_fields(kind)) {
        const auto given = typed.find(one.option);
        if (given == typed.end()) continue;
        if (!one.repeats && given->second.size() > 1)
            return fail(ProblemKind::wrong_usage, one.option + " can be given once only.");
        if (auto set = one.set(entry, given->second, as); !set) return set;
    }
    return {};
}

Result<void> clear_entry_fields(Entry& entry, const std::vector<std::string>& names) {
    const auto kind = kind_slug(entry.body);
    for (const auto& name : names) {
        const std::string option = name.starts_with("--") ? name : "--" + name;
        const EntryField* one = field_of(kind, option);
        if (one == nullptr) return no_such_field(kind, option);
        if (option == "--date") return fail(ProblemKind::wrong_usage, "An entry cannot be without its date.");
        one->clear(entry);
    }
    return {};
}

Result<void> check_complete(const Entry& entry) {
    const std::string missing = std::visit(Missing{entry}, entry.body);
    if (missing.empty()) return {};
    const std::string kind(kind_slug(entry.body));
    return fail(ProblemKind::wrong_usage, "An entry of the kind " + kind + " needs " + missing +
                                              ". See: sumpbook add " + kind + " --help");
}

Result<std::string> read_words(const std::string& option, const std::string& text,
                               const EntryTypedAs& /*as*/) {
    if (text.find_first_not_of(" \t") == std::string::npos)
        return refuse_field("Text is missing here; leave the option out to say nothing.", option, text);
    return text;
}

Result<bool> read_yes_no(const std::string& option, const std::string& text, const EntryTypedAs& /*as*/) {
    return text.empty() ? Result<bool>(true) : typed_yes_no(option, text);
}

Result<Date> read_any_day(const std::string& option, const std::string& text, const EntryTypedAs& as) {
    return typed_date(option, text, as, true);
}

Result<std::uint32_t> read_count(const std::string& option, const std::string& text,
                                 const EntryTypedAs& /*as*/) {
    return typed_whole_number(option, text, 0, 1'000'000).map([](int n) {
        return static_cast<std::uint32_t>(n);
    });
}

Result<std::uint32_t> read_months(const std::string& option, const std::string& text,
                                  const EntryTypedAs& /*as*/) {
    return typed_whole_number(option, text, 1, 1200).map([](int n) { return static_cast<std::uint32_t>(n); });
}

Result<Decimal> read_level(const std::string& option, const std::string& text, const EntryTypedAs& as) {
    if (text == "min") return Decimal{0};
    if (text == "half") return Decimal{5, 1};
    if (text == "max") return Decimal{1};
    const auto level = typed_number(option, text, as);
    if (!level)
        return refuse_field("A level is a number from 0 (lower mark) to 1 (upper mark), or min, half or max.",
                            option, text);
    // DESIGN: one whole gap above or below the marks is as far as anyone can read a glass or a stick.
    if (*level < Decimal{-1} || *level > Decimal{2}) {
        return refuse_field("A level is 0 at the lower mark and 1 at the upper one.", option, text);
    }
    return level;
}

} // namespace sumpbook::cli
