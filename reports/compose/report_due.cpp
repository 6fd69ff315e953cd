// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/report_due.h"

#include "reports/compose/due.h"
#include "reports/compose/due_words.h"

#include <algorithm>

namespace sumpbook::compose {
namespace {

using document::Document;
using document::Severity;
using upkeep::DueItem;
using upkeep::DueState;

std::size_t count_of(const std::vector<DueItem>& items, DueState state) {
    return static_cast<std::size_t>(std::ranges::count(items, state, &DueItem::state));
}

/// "2 things are overdue and 1 is due. ..."
std::string short_answer(const std::vector<DueItem>& items) {
    const auto overdue = count_of(items, DueState::overdue);
    const auto due = count_of(items, DueState::due);
    const auto soon = count_of(items, DueState::soon);
    const auto unknown = count_of(items, DueState::unknown);
    std::string text;
    if (overdue + due == 0) {
        text = "Nothing that is planned has reached its limit.";
    } else {
        text = "Overdue: " + std::to_string(overdue) +
               ". Due, still inside the window: " + std::to_string(due) + ".";
    }
    text += " Coming soon: " + std::to_string(soon) + ".";
    if (unknown != 0) text += " Not known when: " + std::to_string(unknown) + ", see below.";
    return text + " Planned in all: " + std::to_string(items.size()) + ".";
}

/// With a capital letter at its head.
std::string as_sentence(std::string words) {
    if (!words.empty() && words[0] >= 'a' && words[0] <= 'z')
        words[0] = static_cast<char>(words[0] - 'a' + 'A');
    return words;
}

std::string name_of(const DueItem& item, bool with_bike) {
    return with_bike ? item.bike + ", " + item.label : item.label;
}

/// The marks that oil verdicts use.
std::string_view mark_of(Severity severity) {
    switch (severity) {
    case Severity::danger:
        return "■";
    case Severity::caution:
        return "▲";
    case Severity::good:
        return "●";
    case Severity::none:
        break;
    }
    return "○";
}

/// One sentence an item of these states, worst first; nothing where there is none.
void add_section(Document& text, const char* heading, const std::vector<DueItem>& items,
                 std::initializer_list<DueState> states, bool with_bike) {
    bool begun = false;
    for (const auto& item : items) {
        if (std::ranges::find(states, item.state) == states.end()) continue;
        if (!begun) text.heading(heading);
        begun = true;
        text.sentence(std::string(mark_of(colour(item.state))) + " " + std::string(slug(item.state)) + ": " +
                          name_of(item, with_bike) + ". " + as_sentence(reason_words(item)),
                      colour(item.state));
    }
}

Severity worst(const std::vector<DueItem>& items) {
    if (count_of(items, DueState::overdue) != 0) return Severity::danger;
    const bool some = count_of(items, DueState::due) + count_of(items, DueState::soon) != 0;
    if (some) return Severity::caution;
    return count_of(items, DueState::unknown) == 0 ? Severity::good : Severity::none;
}

} // namespace

Document report_due(const ReportFront& front, const std::vector<DueItem>& items, const Pictures& pictures) {
    Document text = report_front("What falls due", front);
    if (items.empty()) {
        text.append(due_text(items));
        add_report_foot(text, front);
        return text;
    }
    const bool with_bike = front.bikes.size() > 1;
    const auto how = worst(items);
    text.heading("In short").sentence(std::string(mark_of(how)) + " " + short_answer(items), how);
    add_section(text, "Do now", items, {DueState::overdue, DueState::due}, with_bike);
    add_section(text, "Find out", items, {DueState::unknown}, with_bike);
    add_section(text, "Soon", items, {DueState::soon}, with_bike);
    text.heading("Everything planned, worst first").append(due_text(items));
    if (!pictures.empty()) text.heading("When it comes");
    add_pictures(text, pictures, "");
    text.heading("What this rests on");
    text.sentence(
        "An item is due once a limit of its interval is reached, and overdue once its window has "
        "passed. The window is a tenth of the interval unless the maker's was given; it is ours and "
        "does not protect a warranty. Brakes, inspections, recalls, renewals and worn parts have "
        "none.");
    text.sentence("Whether a job was done is taken from the entries; a job that was not recorded does not "
                  "count.");
    add_report_foot(text, front);
    return text;
}

} // namespace sumpbook::compose
