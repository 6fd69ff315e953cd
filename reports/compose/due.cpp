// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/due.h"

#include "reports/compose/due_words.h"
#include "reports/compose/words.h"

#include <algorithm>
#include <map>
#include <set>

namespace sumpbook::compose {
namespace {

using document::Align;
using document::Cell;
using document::Document;
using document::Severity;
using upkeep::DueItem;
using upkeep::DueState;
using upkeep::LimitKind;

bool several_bikes(const std::vector<DueItem>& items) {
    std::set<std::string> names;
    for (const auto& item : items)
        names.insert(item.bike);
    return names.size() > 1;
}

std::string last_done_words(const DueItem& item) {
    const auto* last = item.last_done();
    return last == nullptr ? "-" : done_words(last->done, item);
}

std::vector<Cell> row_of(const DueItem& item, bool with_bike) {
    std::vector<Cell> row{{std::string(slug(item.state)), colour(item.state)}};
    if (with_bike) row.push_back({item.bike, {}});
    row.push_back({item.label, {}});
    row.push_back({standing_words(item), {}});
    row.push_back({limit_words(item), {}});
    row.push_back({expected_words(item), {}});
    row.push_back({last_done_words(item), {}});
    return row;
}

/// "Tourer: from your riding since 2019, about 5 100 km in the next 12 months." once a bike, what the dial is
/// taken to show today where a state rests on that, and whether the last reading is old.
void add_outlooks(Document& text, const std::vector<DueItem>& items) {
    std::map<std::string, const DueItem*> by_bike;
    for (const auto& item : items) {
        if (item.limits.distance || item.limits.hours) by_bike.emplace(item.bike, &item);
    }
    for (const auto& [bike, first] : by_bike) {
        const auto rests_on_estimate = [&](const DueItem& item) {
            return item.estimated && item.bike == first->bike;
        };
        const auto estimated = std::ranges::find_if(items, rests_on_estimate);
        std::string sentence = "Days that come from distance, " + bike + ": " + first->outlook + ".";
        if (estimated != items.end()) sentence += " " + estimate_words(*estimated);
        if (const auto stale = stale_words(*first); !stale.empty()) sentence += " " + stale;
        text.sentence(sentence);
    }
}

bool reached(const DueItem& item) { return item.state == DueState::overdue || item.state == DueState::due; }

bool is_about_safety(const DueItem& item) {
    return item.kind == upkeep::DueKind::safety || item.kind == upkeep::DueKind::recall ||
           item.kind == upkeep::DueKind::component;
}

bool is_oil_to_change(const DueItem& item) { return reached(item) && item.slug.ends_with("oil"); }

void add_cautions(Document& text, const std::vector<DueItem>& items) {
    if (std::ranges::any_of(items, [](const auto& item) { return reached(item) && is_about_safety(item); }))
        text.sentence("Brakes, tyres, chain and recalls are matters of safety: have what is due put right "
                      "before you ride on.",
                      Severity::caution);
    if (std::ranges::any_of(items, is_oil_to_change))
        text.sentence("Oil and exhaust burn: drain the oil warm, not hot, with the bike safe on its stand.");
    text.sentence("Follow the maker's handbook and local rules; if unsure, ask a qualified mechanic.");
}

/// "about 3 in 10".
std::string passed_words(double chance) {
    return "about " + decimal_from_double(chance * 10, 0).text() + " in 10";
}

std::string later_words(const upkeep::DayRange& days) {
    const std::string text = "about " + spelled_text(*days.p50);
    if (!days.p10 || !days.p90 || days.p10 == days.p90) return text;
    return text + " (" + spelled_text(*days.p10) + " to " + spelled_text(*days.p90) + ")";
}

document::Facts facts_of(const DueItem& item) {
    document::Facts facts;
    facts.lines.emplace_back("State", slug(item.state));
    facts.lines.emplace_back("Limit", limit_words(item));
    facts.lines.emplace_back("Expected", expected_words(item));
    const auto chances = chances_words({item.date_p10, item.date_p50, item.date_p90});
    if (!chances.empty()) facts.lines.emplace_back("How sure", chances);
    if (item.chance_passed)
        facts.lines.emplace_back("Distance passed unseen", passed_words(*item.chance_passed));
    for (const auto& reason : item.reasons)
        facts.lines.emplace_back("Why then", reason_text(reason, item));
    for (const auto& later : item.later_times)
        facts.lines.emplace_back("Later", later_words(later));
    facts.lines.emplace_back("Last done", last_done_words(item));
    if (!item.not_computed.empty())
        facts.lines.emplace_back("Left out, not known", not_computed_words(item.not_computed));
    if (item.source) facts.lines.emplace_back("Interval from", *item.source);
    return facts;
}

document::Table history_table(const DueItem& item) {
    document::Table table{{{"Done", {}}, {"Entry", {}}, {"To the limit", {}}}, {}};
    for (const auto& one : item.history) {
        const auto timing = one.timed ? timing_words(*one.timed, item.dial_unit) : std::string("not judged");
        const auto severity =
            one.timed && one.timed->timing == upkeep::Timing::late ? Severity::caution : Severity::none;
        table.rows.push_back({Cell{done_words(one.done, item), {}},
                              Cell{one.done.entry_id.empty() ? "-" : one.done.entry_id, {}},
                              Cell{timing, severity}});
    }
    return table;
}

Document nothing_planned() {
    Document text;
    text.sentence("Nothing is planned yet. Start a plan with: sumpbook -g FILE plan starter, or set an item: "
                  "sumpbook -g FILE plan set engine-oil --every \"6000 km or 12 months\"");
    return text;
}

} // namespace

Severity colour(DueState state) {
    switch (state) {
    case DueState::overdue:
        return Severity::danger;
    case DueState::due:
    case DueState::soon:
        return Severity::caution;
    case DueState::later:
        return Severity::good;
    case DueState::unknown:
        break;
    }
    return Severity::none;
}

std::vector<std::string> sold_sentences(const std::vector<const Bike*>& bikes, Date today) {
    std::vector<std::string> sentences;
    for (const Bike* bike : bikes) {
        const auto& details = bike->details.value;
        if (details.sold && details.sold->date <= today)
            sentences.push_back(details.name + " was sold on " + spelled_text(details.sold->date) +
                                ": nothing falls due on it any more.");
    }
    return sentences;
}

Document due_text(const std::vector<DueItem>& items, const std::vector<std::string>& sold) {
    Document text;
    for (const auto& sentence : sold)
        text.sentence(sentence);
    if (items.empty()) return sold.empty() ? nothing_planned() : text;
    const bool with_bike = several_bikes(items);
    document::Table table{{{"State", {}}}, {}};
    if (with_bike) table.columns.push_back({"Bike", {}});
    for (const auto* heading : {"What", "Where it stands", "Limit", "Expected", "Last done"})
        table.columns.push_back({heading, {}});
    for (const auto& item : items)
        table.rows.push_back(row_of(item, with_bike));
    text.table(std::move(table));
    add_outlooks(text, items);
    add_cautions(text, items);
    return text;
}

Document due_why_text(const std::vector<DueItem>& items) {
    if (items.empty()) return nothing_planned();
    Document text;
    const bool with_bike = several_bikes(items);
    for (const auto& item : items) {
        text.heading(with_bike ? item.bike + ": " + item.label : item.label);
        text.sentence(reason_words(item), colour(item.state));
        text.facts(facts_of(item));
        if (!item.history.empty()) text.table(history_table(item));
    }
    add_outlooks(text, items);
    text.sentence(
        "The window is a tenth of the interval unless you gave the maker's; it is ours and does not "
        "protect a warranty. Statutory, safety and renewal items, recalls and worn parts have none.");
    add_cautions(text, items);
    return text;
}

} // namespace sumpbook::compose
