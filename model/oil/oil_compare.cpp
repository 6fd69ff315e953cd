// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/oil_compare.h"

#include "model/oil/oil_name.h"
#include "model/oil/oil_trend.h"
#include "model/oil/words.h"
#include "model/stats/power.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <set>

namespace sumpbook::oil {
namespace {

constexpr std::string_view engine = "engine";
constexpr double interval_confidence = 0.95;

enum class Side { none, first, second };
using SideOf = std::function<Side(const FilledSample&)>;

std::vector<FilledSample> engine_samples(const OilRecord& record) {
    std::vector<FilledSample> samples;
    for (const LogEntry* entry : used_samples(*record.bike, engine))
        samples.push_back(fill_of(record, *entry));
    return samples;
}

/// Side of every sample by its entry; run-in fills and fills of an earlier engine have none.
std::map<std::string, Side> sides_of(const OilRecord& record, const SideOf& side_of,
                                     std::vector<std::string>& notes) {
    const auto fitted = engine_fitted(record);
    std::map<std::string, Side> sides;
    std::size_t run_in = 0;
    std::size_t other_engine = 0;
    for (const FilledSample& sample : engine_samples(record)) {
        Side side = sample.fill ? side_of(sample) : Side::none;
        if (side != Side::none && comparability(sample, fitted) == Comparability::running_in) {
            ++run_in;
            side = Side::none;
        }
        if (side != Side::none && comparability(sample, fitted) == Comparability::other_engine) {
            ++other_engine;
            side = Side::none;
        }
        sides[sample.entry->id] = side;
    }
    const auto left_out = [&](std::size_t count, const char* why) {
        if (count > 0)
            notes.push_back(std::to_string(count) + (count == 1 ? " sample is" : " samples are") +
                            " left out: " + why);
    };
    left_out(run_in, "an engine that is running in wears in its own way.");
    left_out(other_engine, "of the engine that was in the bike before.");
    return sides;
}

/// Fills that no answer at the usual level can do without: the smallest p they can reach is too large.
std::size_t fewest_for_an_answer() {
    std::size_t fills = 1;
    while (stats::smallest_p(fills, fills).value() > stats::usual_level)
        ++fills;
    return fills;
}

std::optional<std::size_t> fills_needed(const ComparedMetal& metal) {
    const auto sd = stats::pooled_sd(metal.first_per_1000km, metal.second_per_1000km);
    if (!sd || !metal.shift || *sd <= 0 || metal.shift->shift == 0) return std::nullopt;
    const auto by_power = stats::group_size_needed(metal.shift->shift / *sd);
    if (!by_power) return std::nullopt;
    return std::max(*by_power, fewest_for_an_answer());
}

void put_verdict(ComparedMetal& metal) {
    if (metal.below() > 0 || metal.first_per_1000km.empty() || metal.second_per_1000km.empty()) return;
    metal.test = stats::permutation_test(metal.first_per_1000km, metal.second_per_1000km);
    metal.smallest_p = stats::smallest_p(metal.first_per_1000km.size(), metal.second_per_1000km.size());
    metal.shift = stats::shift_between(metal.first_per_1000km, metal.second_per_1000km, interval_confidence);
    metal.fills_needed = fills_needed(metal);
    metal.word = ComparedWord::cannot_tell;
    if (!metal.test || metal.test->p_two_sided() > stats::usual_level) return;
    metal.word = metal.shift->shift > 0 ? ComparedWord::first_wears_less : ComparedWord::second_wears_less;
}

ComparedMetal metal_of(const QuantityTrend& trend, const std::map<std::string, Side>& sides) {
    ComparedMetal metal;
    metal.element = trend.quantity;
    for (const TrendPoint& point : trend.points) {
        const Side side = sides.contains(point.entry_id) ? sides.at(point.entry_id) : Side::none;
        if (!point.wear || side == Side::none) continue;
        const bool first = side == Side::first;
        if (point.value.state == ValueState::below)
            ++(first ? metal.first_below : metal.second_below);
        else
            (first ? metal.first_per_1000km : metal.second_per_1000km).push_back(point.wear->per_1000km());
    }
    put_verdict(metal);
    return metal;
}

ComparedWord overall(const std::vector<ComparedMetal>& metals) {
    const auto any = [&](ComparedWord word) {
        return std::any_of(metals.begin(), metals.end(),
                           [&](const ComparedMetal& metal) { return metal.word == word; });
    };
    const bool first = any(ComparedWord::first_wears_less);
    const bool second = any(ComparedWord::second_wears_less);
    if (first != second) return first ? ComparedWord::first_wears_less : ComparedWord::second_wears_less;
    return first || any(ComparedWord::cannot_tell) ? ComparedWord::cannot_tell : ComparedWord::not_compared;
}

OilComparison compare(const OilRecord& record, std::string first, std::string second, const SideOf& side_of) {
    OilComparison comparison;
    comparison.bike = record.bike->details.value.name;
    const auto sides = sides_of(record, side_of, comparison.notes);
    for (const QuantityTrend& trend : oil_trends(record, default_profile())) {
        if (trend.compartment == engine && trend.of == TrendOf::wear_rate)
            comparison.metals.push_back(metal_of(trend, sides));
    }
    comparison.first.name = std::move(first);
    comparison.second.name = std::move(second);
    for (const ComparedMetal& metal : comparison.metals) {
        comparison.first.fills = std::max(comparison.first.fills, metal.first_fills());
        comparison.second.fills = std::max(comparison.second.fills, metal.second_fills());
    }
    comparison.word = overall(comparison.metals);
    comparison.fewest_for_an_answer = fewest_for_an_answer();
    for (const ComparedMetal& metal : comparison.metals) {
        if (!metal.fills_needed) continue;
        auto& fewest = comparison.fewest_fills_needed;
        fewest = fewest == 0 ? *metal.fills_needed : std::min(fewest, *metal.fills_needed);
    }
    return comparison;
}

} // namespace

std::string_view slug(ComparedWord word) {
    static constexpr std::string_view words[] = {"cannot-tell", "first-wears-less", "second-wears-less",
                                                 "not-compared"};
    return words[static_cast<std::size_t>(word)];
}

std::vector<std::string> sampled_oils(const OilRecord& record) {
    std::vector<std::string> names;
    for (const FilledSample& sample : engine_samples(record)) {
        const auto name = oil_name_of(sample);
        if (name && !contains_word(names, *name)) names.push_back(*name);
    }
    return names;
}

OilComparison compare_oils(const OilRecord& record, std::string_view first, std::string_view second) {
    return compare(record, std::string(first), std::string(second), [&](const FilledSample& sample) {
        const auto name = oil_name_of(sample);
        if (name && same_word(*name, first)) return Side::first;
        return name && same_word(*name, second) ? Side::second : Side::none;
    });
}

OilComparison compare_before_after(const OilRecord& record, const Date& day) {
    return compare(
        record, "before " + iso_text(day), "from " + iso_text(day) + " on",
        [&](const FilledSample& sample) { return sample.fill->from < day ? Side::first : Side::second; });
}

} // namespace sumpbook::oil
