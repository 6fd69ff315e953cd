// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/fasteners.h"

#include <array>

namespace sumpbook::compose {
namespace {

using document::Align;
using document::Array;
using document::Cell;
using document::Document;
using document::Object;
using document::Severity;
using document::Value;
using review::Fastener;
using review::FastenerEvent;
using review::MarkSeen;
using review::PaintMark;

std::string_view slug(TorquePlausibility plausibility) {
    constexpr std::array<std::string_view, 4> words{"plausible", "too-low", "too-high", "unknown-thread"};
    return words.at(static_cast<std::size_t>(plausibility));
}

Value event_json(const std::optional<FastenerEvent>& event) {
    if (!event) return {};
    return Object{}.add("entry", event->entry_id).add("date", event->date);
}

Object tightened_json(const Fastener& fastener) {
    Object object;
    object.add("fastener", fastener.applied.fastener).add("torque", text_of(fastener.applied.torque));
    object.add("torque_nm", decimal_from_double(newton_metres_of(fastener.applied.torque), 2));
    object.add("thread", fastener.thread).add("plausibility", slug(fastener.plausibility));
    object.add("paint_mark", review::slug(fastener.mark)).add("looked_at", event_json(fastener.looked_at));
    return object.add("tightened_again", event_json(fastener.redone));
}

Object seen_json(const MarkSeen& mark) {
    Object object;
    object.add("fastener", mark.fastener).add("still_aligned", mark.still_aligned);
    object.add("drawn", event_json(mark.drawn));
    return object.add("tightened_again", event_json(mark.redone));
}

std::string event_words(const FastenerEvent& event) {
    return spelled_text(event.date) + " (" + event.entry_id + ")";
}

Cell mark_cell(const Fastener& fastener) {
    const auto looked_at = fastener.looked_at ? event_words(*fastener.looked_at) : std::string();
    switch (fastener.mark) {
    case PaintMark::not_stated:
        return {"not stated", {}};
    case PaintMark::none:
        return {"not drawn", {}};
    case PaintMark::drawn:
        return {"drawn, not looked at since", {}};
    case PaintMark::aligned:
        return {"lined up on " + looked_at, Severity::good};
    case PaintMark::moved:
        break;
    }
    return {"moved by " + looked_at, fastener.redone ? Severity::none : Severity::danger};
}

/// Only where it is far out: published tables differ by half.
Cell torque_cell(const Fastener& fastener) {
    const bool high = fastener.plausibility == TorquePlausibility::too_high;
    if (!high && fastener.plausibility != TorquePlausibility::too_low) return {};
    return {std::string(high ? "far above" : "far below") + " what an " + *fastener.thread +
                " bolt takes: read it again",
            Severity::caution};
}

document::Table tightened_table(const std::vector<Fastener>& fasteners) {
    document::Table table{
        {{"Fastener", {}}, {"Torque", Align::right}, {"Paint mark", {}}, {"Tightened again", {}}, {"", {}}},
        {}};
    for (const auto& fastener : fasteners) {
        table.rows.push_back({Cell{fastener.applied.fastener, {}}, Cell{text_of(fastener.applied.torque), {}},
                              mark_cell(fastener),
                              Cell{fastener.redone ? event_words(*fastener.redone) : "-", {}},
                              torque_cell(fastener)});
    }
    return table;
}

void add_mark_seen(Document& text, const MarkSeen& mark) {
    const std::string drawn =
        mark.drawn ? " Last tightened before on " + event_words(*mark.drawn) + "." : std::string();
    if (mark.still_aligned) {
        text.sentence("The paint mark of " + mark.fastener + " still lined up." + drawn, Severity::good);
        return;
    }
    text.sentence("The paint mark of " + mark.fastener + " no longer lined up: it had turned." + drawn +
                      (mark.redone ? " Tightened again on " + event_words(*mark.redone) + "."
                                   : " Not tightened since, as far as the record goes: tighten it to the "
                                     "handbook's torque and mark it again."),
                  mark.redone ? Severity::none : Severity::danger);
}

} // namespace

Value fasteners_json(const JobFasteners& fasteners) {
    if (fasteners.tightened.empty() && fasteners.looked_at.empty()) return {};
    Array tightened;
    for (const auto& fastener : fasteners.tightened)
        tightened.emplace_back(tightened_json(fastener));
    Array seen;
    for (const auto& mark : fasteners.looked_at)
        seen.emplace_back(seen_json(mark));
    return Object{}.add("tightened", std::move(tightened)).add("paint_marks_seen", std::move(seen));
}

Document fasteners_text(const JobFasteners& fasteners) {
    Document text;
    if (fasteners.tightened.empty() && fasteners.looked_at.empty()) return text;
    text.heading("Fasteners", 3);
    if (!fasteners.tightened.empty()) text.table(tightened_table(fasteners.tightened));
    for (const auto& mark : fasteners.looked_at)
        add_mark_seen(text, mark);
    return text;
}

} // namespace sumpbook::compose
