// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/garage/slugs.h"
#include "reports/compose/due.h"
#include "reports/compose/due_words.h"

namespace sumpbook::compose {
namespace {

using document::Array;
using document::Object;
using document::Value;
using upkeep::DueItem;
using upkeep::LimitKind;

/// Whole kilometres without decimals, others to the metre.
Value km(const std::optional<Distance>& distance) {
    if (!distance) return nullptr;
    const bool whole = distance->micrometres() % Distance::um_per_km == 0;
    return in_unit(*distance, DistanceUnit::km, whole ? 0 : 3);
}

Value hours(const std::optional<double>& engine_hours) {
    return engine_hours ? Value(decimal_from_double(*engine_hours, 1)) : Value();
}

Value days(const std::optional<double>& number) {
    return number ? Value(decimal_from_double(*number, 1)) : Value();
}

std::string_view slug_of(LimitKind kind) {
    switch (kind) {
    case LimitKind::distance:
        return "distance";
    case LimitKind::hours:
        return "hours";
    case LimitKind::date:
        break;
    }
    return "date";
}

void add_limits(Object& to, const DueItem& item) {
    const auto& [distance, date, engine] = item.limits;
    to.add("limit_distance_km", km(distance ? std::optional(distance->at) : std::nullopt));
    to.add("limit_date", date ? Value(date->at) : Value());
    to.add("limit_hours", hours(engine ? std::optional(engine->at_hours) : std::nullopt));
    to.add("date_p50", item.date_p50).add("date_p10", item.date_p10).add("date_p90", item.date_p90);
    const bool far = distance && item.now.distance;
    to.add("remaining_km", far ? km(distance->at - *item.now.distance) : Value());
    to.add("remaining_days", date ? Value(days_between(*item.now.date, date->at)) : Value());
    const bool run = engine && item.now.engine_hours;
    to.add("remaining_hours", run ? hours(engine->at_hours - *item.now.engine_hours) : Value());
    to.add("window_km", km(distance ? std::optional(distance->window) : std::nullopt));
    to.add("window_days", days(date ? std::optional(date->window_days) : std::nullopt));
    to.add("window_hours", hours(engine ? std::optional(engine->window_hours) : std::nullopt));
}

void add_later_times(Object& to, const DueItem& item) {
    Array times;
    for (const auto& [p10, p50, p90] : item.later_times) {
        Object time;
        time.add("date_p10", p10).add("date_p50", p50).add("date_p90", p90);
        times.emplace_back(std::move(time));
    }
    to.add("later_times", std::move(times));
}

/// The value of an input with the word for its unit.
Object reason_json(const upkeep::Reason& reason, const DueItem& item) {
    Object object;
    object.add("input", slug(reason.input));
    const auto add = [&](Value value, std::string_view unit) {
        object.add("value", std::move(value)).add("unit", unit);
    };
    const auto number = [&](int scale) { return decimal_from_double(reason.value, scale); };
    switch (reason.input) {
    case upkeep::ReasonInput::date_limit:
        add(item.limits.date->at, "date");
        break;
    case upkeep::ReasonInput::hours_limit:
        add(hours(item.limits.hours->at_hours), "h");
        break;
    case upkeep::ReasonInput::since_last:
        if (item.date_from == LimitKind::distance) add(number(0), "km");
        if (item.date_from == LimitKind::hours) add(number(1), "h");
        if (item.date_from == LimitKind::date) add(number(0), "days");
        break;
    case upkeep::ReasonInput::riding:
        add(number(0), "km a year");
        break;
    case upkeep::ReasonInput::season:
        add(number(3), "share of a year");
        break;
    case upkeep::ReasonInput::layups:
    case upkeep::ReasonInput::reading_age:
        add(number(0), "days");
        break;
    }
    object.add("date_without", reason.without).add("moves_days", reason.moves_days);
    object.add("text", reason_text(reason, item));
    return object;
}

void add_reasons(Object& to, const DueItem& item) {
    Array reasons;
    for (const auto& reason : item.reasons)
        reasons.emplace_back(reason_json(reason, item));
    to.add("reasons", std::move(reasons));
}

void add_what_it_rests_on(Object& to, const DueItem& item) {
    to.add("decided_by", item.decided_by ? Value(slug_of(*item.decided_by)) : Value());
    to.add("estimated", item.estimated);
    to.add("distance_today_km", km(item.now.distance));
    to.add("reading_age_days", item.reading_age_days);
    to.add("chance_passed",
           item.chance_passed ? Value(decimal_from_double(*item.chance_passed, 2)) : Value());
    to.add("reason", reason_words(item));
    to.add("outlook", item.outlook);
    Array missing;
    for (const auto kind : item.not_computed)
        missing.emplace_back(slug_of(kind));
    to.add("not_computed", std::move(missing));
}

Object done_json(const upkeep::DoneAndTimed& one) {
    Object object;
    const auto& done = one.done;
    object.add("date", done.at.date).add("distance_km", km(done.at.distance));
    object.add("hours", hours(done.at.engine_hours));
    object.add("distance_estimated", done.distance_estimated);
    object.add("entry", done.entry_id.empty() ? Value() : Value(done.entry_id));
    object.add("baseline", done.baseline);
    object.add("evidence", done.evidence ? Value(slug(*done.evidence)) : Value());
    object.add("timing", one.timed ? Value(words(one.timed->timing)) : Value());
    object.add("past_km", one.timed ? km(one.timed->past_distance) : Value());
    object.add("past_days", one.timed ? Value(one.timed->past_days) : Value());
    object.add("past_hours", one.timed ? hours(one.timed->past_hours) : Value());
    return object;
}

void add_history(Object& to, const DueItem& item) {
    const auto* last = item.last_done();
    to.add("last_done_date", last ? Value(last->done.at.date) : Value());
    to.add("last_done_km", last ? km(last->done.at.distance) : Value());
    to.add("last_done_entry", last && !last->done.baseline ? Value(last->done.entry_id) : Value());
    Array history;
    for (const auto& one : item.history)
        history.emplace_back(done_json(one));
    to.add("history", std::move(history));
}

} // namespace

Value due_json(const std::vector<DueItem>& items) {
    Array list;
    for (const auto& item : items) {
        Object object;
        object.add("bike", item.bike).add("item", item.slug).add("label", item.label);
        object.add("kind", slug(item.kind)).add("state", slug(item.state));
        add_limits(object, item);
        add_later_times(object, item);
        add_reasons(object, item);
        add_what_it_rests_on(object, item);
        add_history(object, item);
        object.add("cost_minor", item.estimate ? Value(item.estimate->minor) : Value());
        object.add("currency", item.estimate ? Value(item.estimate->currency.code()) : Value());
        object.add("source", item.source);
        list.emplace_back(std::move(object));
    }
    return document::list_of(std::move(list));
}

} // namespace sumpbook::compose
