// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/advice.h"

#include "model/oil/quantities.h"

#include <algorithm>
#include <array>

namespace sumpbook::oil {
namespace {

constexpr std::array<std::string_view, 10> oil_is_spent{
    "fuel", "water", "kv100", "kv40", "tbn", "tan", "oxidation", "nitration", "sulfation", "soot"};

template <class Chosen>
std::vector<std::string> at_act(const std::vector<RatedValue>& values, Chosen chosen) {
    std::vector<std::string> found;
    for (const RatedValue& value : values) {
        if (value.ladder == Ladder::act && chosen(value.written.quantity))
            found.push_back(value.written.quantity);
    }
    return found;
}

bool is_glycol(const RatedValue& value) {
    return value.written.quantity == "glycol" &&
           (value.ladder == Ladder::act || value.written.state == ValueState::detected);
}

std::vector<std::string> named_by(const std::vector<PatternFound>& patterns) {
    std::vector<std::string> places;
    for (const PatternFound& pattern : patterns) {
        if (pattern.kind == PatternKind::cause) places.push_back(pattern.look_at);
    }
    return places;
}

/// Quantities at watch, by their value or by what was found beside it.
std::vector<std::string> at_watch(const std::vector<RatedValue>& values, const std::vector<Lift>& lifts) {
    std::vector<std::string> found;
    for (const RatedValue& value : values) {
        if (value.ladder == Ladder::watch) found.push_back(value.written.quantity);
    }
    for (const Lift& lift : lifts) {
        const bool new_one =
            lift.quantity && std::find(found.begin(), found.end(), *lift.quantity) == found.end();
        if (new_one) found.push_back(*lift.quantity);
    }
    return found;
}

} // namespace

std::string_view slug(AdviceKind kind) {
    constexpr std::array<std::string_view, 6> words{"carry-on", "sample-after", "sample-now",
                                                    "inspect",  "change-oil",   "stop"};
    return words[static_cast<std::size_t>(kind)];
}

Advice advise(const std::vector<RatedValue>& values, const WholeSample& whole, const CoolantSign& coolant,
              const std::vector<PatternFound>& patterns, const std::set<std::string>& act_before) {
    if (std::any_of(values.begin(), values.end(), is_glycol))
        return {AdviceKind::stop, {"glycol"}, named_by(patterns)};
    const auto spent = at_act(values, [](const std::string& quantity) {
        return std::find(oil_is_spent.begin(), oil_is_spent.end(), quantity) != oil_is_spent.end();
    });
    if (!spent.empty()) return {AdviceKind::change_oil, spent, {}};
    const auto twice = at_act(values, [&](const std::string& quantity) {
        return is_wear_metal(quantity) && act_before.contains(quantity);
    });
    if (!twice.empty()) return {AdviceKind::inspect, twice, named_by(patterns)};
    const auto other = at_act(values, [](const std::string&) { return true; });
    if (!other.empty() || whole.word == Word::act) return {AdviceKind::sample_now, other, {}};
    if (coolant.lifts()) return {AdviceKind::sample_now, coolant.metals, {}};
    if (whole.word == Word::not_enough_to_say) return {AdviceKind::sample_now, {}, {}};
    if (whole.word == Word::watch) return {AdviceKind::sample_after, at_watch(values, whole.lifts), {}};
    return {};
}

} // namespace sumpbook::oil
