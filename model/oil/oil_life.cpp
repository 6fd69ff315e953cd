// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/oil_life.h"

#include "model/oil/history.h"
#include "model/oil/methods.h"
#include "model/oil/oil_life_levels.h"
#include "model/oil/oil_name.h"
#include "model/oil/precision.h"
#include "model/oil/quantities.h"
#include "model/oil/rate_sample.h"
#include "model/oil/words.h"
#include "model/stats/reaching.h"

#include <algorithm>
#include <set>

namespace sumpbook::oil {
namespace {

constexpr std::string_view engine = "engine";
/// What changes with the distance on the oil alone, in the order it is printed. Fuel and water come and go.
constexpr std::string_view ageing[] = {"tbn",       "tan",  "oxidation", "nitration",
                                       "sulfation", "soot", "kv100",     "kv40"};

const usage::OilFill* fill_in_use(const OilRecord& record) {
    const auto& fills = record.fills_of(engine);
    return fills.empty() ? nullptr : &fills.back();
}

std::vector<FilledSample> samples_of(const OilRecord& record, std::string_view oil) {
    std::vector<FilledSample> samples;
    for (const LogEntry* entry : used_samples(*record.bike, engine)) {
        FilledSample sample = fill_of(record, *entry);
        const auto name = oil_name_of(sample);
        if (name && same_word(*name, oil)) samples.push_back(std::move(sample));
    }
    return samples;
}

bool is_in_use(const OilRecord& record, const FilledSample& sample) {
    const usage::OilFill* fill = fill_in_use(record);
    return fill != nullptr && sample.fill && sample.fill->oil_change_id == fill->oil_change_id;
}

std::optional<double> number_in(const SampleValue* value, const std::string& unit) {
    if (value == nullptr || value->state != ValueState::measured) return std::nullopt;
    const auto number = in_oil_unit(value->number, value->unit.empty() ? unit : value->unit, unit);
    return number ? std::optional<double>(number->to_double()) : std::nullopt;
}

/// Values of a quantity as numbers by one method, each with the distance on its oil; base numbers less acid
/// numbers where they are to meet.
class Points {
public:
    Points(const OilRecord& record, const std::vector<FilledSample>& samples, const LifeMark& mark,
           std::optional<std::string> method)
        : record_(record)
        , samples_(samples)
        , mark_(mark)
        , method_(std::move(method)) {}

    [[nodiscard]] std::vector<LifePoint> all() {
        std::vector<LifePoint> points;
        for (const FilledSample& sample : samples_) {
            put_new_oil(points, sample);
            const auto value = value_of([&](std::string_view quantity) {
                const SampleValue* found = value_in(*sample.sample, quantity);
                return found == nullptr ? std::nullopt : std::optional<SampleValue>(*found);
            });
            if (!value || !sample.distance_on_oil || *sample.distance_on_oil <= Distance{}) continue;
            points.push_back({sample_label(*sample.entry), sample.distance_on_oil->km(), *value,
                              is_in_use(record_, sample)});
        }
        return points;
    }

private:
    template <class Find>
    [[nodiscard]] std::optional<double> value_of(const Find& find) const {
        const auto value = find(mark_.quantity);
        if (!value) return std::nullopt;
        if (mark_.quantity == "tbn" && method_of("tbn", value->method) != method_) return std::nullopt;
        const auto number = number_in(&*value, mark_.unit);
        if (!number || mark_.kind != LifeMarkKind::base_meets_acid) return number;
        const auto acid = find("tan");
        const auto acid_number = acid ? number_in(&*acid, mark_.unit) : std::nullopt;
        return acid_number ? std::optional<double>(*number - *acid_number) : std::nullopt;
    }

    /// Once for each sample of new oil that a fill goes by; the middle of a grade is no measurement.
    void put_new_oil(std::vector<LifePoint>& points, const FilledSample& sample) {
        const auto reference = rating_basis(record_, sample, default_profile()).reference;
        if (!reference.sample || !seen_.insert(*reference.sample).second) return;
        if (reference.is_grade_middle(mark_.quantity)) return;
        const auto value = value_of([&](std::string_view quantity) { return reference.value(quantity); });
        if (value) points.push_back({*reference.sample, 0, *value, false});
    }

    const OilRecord& record_;
    const std::vector<FilledSample>& samples_;
    const LifeMark& mark_;
    std::optional<std::string> method_;
    std::set<std::string> seen_;
};

/// By how much two laboratories may differ; absent without a published figure for the method.
std::optional<double> reproducibility_of(const LifeMark& mark, const std::optional<std::string>& method) {
    if (mark.kind == LifeMarkKind::base_meets_acid) return std::nullopt;
    if (mark.quantity == "tan")
        return acid_number_precision((mark.points.front().value + mark.points.back().value) / 2)
            .reproducibility;
    const auto precision = mark.quantity == "tbn" ? base_number_precision(method) : std::nullopt;
    return precision ? std::optional<double>(precision->reproducibility) : std::nullopt;
}

/// Where the line through two points comes to the level; absent where it leads away from it.
std::optional<double> through_two(const LifeMark& mark, double move_first, double move_second) {
    const LifePoint& a = mark.points.front();
    const LifePoint& b = mark.points.back();
    const double sign = mark.falling ? 1 : -1;
    const double first = sign * (a.value + move_first - mark.level);
    const double slope = (sign * (b.value + move_second - mark.level) - first) / (b.on_oil_km - a.on_oil_km);
    if (first <= 0) return a.on_oil_km;
    if (slope >= 0) return std::nullopt;
    return a.on_oil_km - first / slope;
}

void reach_by_two(LifeMark& mark, const std::optional<std::string>& method) {
    if (mark.points.front().on_oil_km == mark.points.back().on_oil_km) {
        mark.unknown = "Both samples were drawn at the same distance on the oil.";
        return;
    }
    mark.middle_km = through_two(mark, 0, 0);
    const auto size = reproducibility_of(mark, method);
    if (!size) {
        mark.notes.emplace_back(
            "Two points and no published precision of the method: a line without a range.");
        return;
    }
    mark.range = LifeRange::reproducibility;
    const double away = mark.falling ? *size : -*size; // the first value away from the level, the second near
    mark.earliest_km = through_two(mark, away, -away);
    mark.latest_km = through_two(mark, -away, away);
    if (mark.earliest_km && mark.latest_km && *mark.latest_km < *mark.earliest_km)
        std::swap(mark.earliest_km, mark.latest_km);
}

void reach_by_line(LifeMark& mark) {
    std::vector<double> xs;
    std::vector<double> ys;
    for (const LifePoint& point : mark.points) {
        xs.push_back(point.on_oil_km);
        ys.push_back(point.value);
    }
    const auto fit = stats::fit_line(xs, ys);
    if (!fit) {
        mark.unknown = "All samples were drawn at the same distance on the oil.";
        return;
    }
    const auto when = stats::reaching(*fit, mark.level, mark.falling, life_confidence);
    mark.range = LifeRange::bounds;
    mark.earliest_km = when.earliest;
    mark.middle_km = when.middle;
    mark.latest_km = when.latest;
}

/// A line that hardly falls leads past every distance that is accepted: never.
void forget_if_endless(std::optional<double>& distance_km) {
    if (distance_km && !(*distance_km <= most_distance.km())) distance_km.reset();
}

void put_reach(LifeMark& mark, const std::optional<std::string>& method) {
    const auto& latest = mark.points.back();
    mark.passed = latest.in_use && (mark.falling ? latest.value <= mark.level : latest.value >= mark.level);
    if (mark.points.size() < 2)
        mark.unknown =
            "One value alone shows no way: the new oil was never sampled, or one sample is missing.";
    else if (mark.points.size() == 2)
        reach_by_two(mark, method);
    else
        reach_by_line(mark);
    forget_if_endless(mark.earliest_km);
    forget_if_endless(mark.middle_km);
    forget_if_endless(mark.latest_km);
}

void follow(LifeMark& mark, const OilRecord& record, const std::vector<FilledSample>& samples,
            const std::optional<std::string>& method) {
    if (mark.unknown) return;
    mark.points = Points(record, samples, mark, method).all();
    if (mark.points.empty()) {
        mark.unknown = "How far the oil had run, or the amount, is not known.";
        return;
    }
    put_reach(mark, method);
}

/// The latest sample that holds the quantity; null: none.
const FilledSample* latest_with(const std::vector<FilledSample>& samples, std::string_view quantity) {
    const FilledSample* latest = nullptr;
    for (const FilledSample& sample : samples) {
        if (value_in(*sample.sample, quantity) != nullptr) latest = &sample;
    }
    return latest;
}

LifeMark crossing_mark(const SampleValue& base) {
    LifeMark mark;
    mark.kind = LifeMarkKind::base_meets_acid;
    mark.quantity = "tbn";
    mark.unit = find_quantity("tbn")->unit;
    mark.method = method_of("tbn", base.method).value_or("");
    mark.source = "Change when the base number falls to the rising acid number (trade rule, diesel origin): "
                  "http://www.forconstructionpros.com/publication/article.jsp?pubId=5&id=2560&pageNum=6";
    return mark;
}

std::vector<LifeMark> marks_of(const OilRecord& record, const std::vector<FilledSample>& samples,
                               std::string_view quantity, const Profile& profile) {
    const FilledSample* latest = latest_with(samples, quantity);
    if (latest == nullptr) return {};
    const SampleValue& used = *value_in(*latest->sample, quantity);
    auto marks = life_levels(used, rating_basis(record, *latest, profile));
    if (quantity == "tbn" && latest_with(samples, "tan") != nullptr) marks.push_back(crossing_mark(used));
    const auto method = method_of(quantity, used.method);
    for (LifeMark& mark : marks) {
        if (quantity == "tbn" && !method)
            mark.unknown = "By which method the base number was measured is not stated.";
        follow(mark, record, samples, method);
    }
    return marks;
}

void take_earlier(std::optional<double>& earlier, const std::optional<double>& other) {
    if (other && (!earlier || *other < *earlier)) earlier = other;
}

void put_whole(OilLife& life) {
    for (const LifeMark& mark : life.marks) {
        if (!mark.decides) continue;
        life.passed = life.passed || mark.passed;
        take_earlier(life.earliest_km, mark.earliest_km ? mark.earliest_km : mark.middle_km);
        take_earlier(life.middle_km, mark.middle_km);
        take_earlier(life.latest_km, mark.latest_km);
    }
    if (life.latest_km && life.middle_km && *life.latest_km < *life.middle_km)
        life.latest_km = life.middle_km;
}

std::optional<double> planned_km(const Bike& bike) {
    const auto* item = find_plan_item(bike, "engine-oil");
    if (item == nullptr || !item->value.repeat.distance) return std::nullopt;
    const auto distance = distance_of(*item->value.repeat.distance);
    return distance ? std::optional<double>(distance->km()) : std::nullopt;
}

IntervalWord interval_word(const OilLife& life) {
    if (!life.interval_km) return IntervalWord::no_plan;
    if (!life.earliest_km && !life.middle_km) return IntervalWord::no_evidence;
    if (life.earliest_km && *life.earliest_km >= *life.interval_km) return IntervalWord::inside;
    return life.middle_km && *life.middle_km < *life.interval_km ? IntervalWord::too_long
                                                                 : IntervalWord::doubtful;
}

void put_fill_in_use(OilLife& life, const OilRecord& record) {
    const usage::OilFill* fill = fill_in_use(record);
    if (fill == nullptr || !fill->oil_name || !same_word(*fill->oil_name, life.oil)) return;
    life.in_use = true;
    const LogEntry* change = fill->oil_change_id ? find_entry(*record.bike, *fill->oil_change_id) : nullptr;
    const auto start = change != nullptr ? record.odometer.at_entry(*change) : std::nullopt;
    const auto span = record.odometer.span();
    if (start && span && span->at_last >= *start) life.run_so_far_km = (span->at_last - *start).km();
}

} // namespace

std::string_view slug(LifeMarkKind kind) {
    static constexpr std::string_view words[] = {"half-base-number", "base-meets-acid", "set-limit",
                                                 "viscosity", "leaves-grade"};
    return words[static_cast<std::size_t>(kind)];
}

std::string_view slug(IntervalWord word) {
    static constexpr std::string_view words[] = {"no-plan", "no-evidence", "inside", "doubtful", "too-long"};
    return words[static_cast<std::size_t>(word)];
}

const LifeMark* OilLife::first() const {
    const LifeMark* first = nullptr;
    for (const LifeMark& mark : marks) {
        if (mark.decides && mark.middle_km && (first == nullptr || *mark.middle_km < *first->middle_km))
            first = &mark;
    }
    return first;
}

std::optional<std::string> oil_to_judge(const OilRecord& record) {
    const usage::OilFill* fill = fill_in_use(record);
    if (fill != nullptr && fill->oil_name && !samples_of(record, *fill->oil_name).empty())
        return fill->oil_name;
    std::optional<std::string> latest;
    for (const LogEntry* entry : used_samples(*record.bike, engine)) {
        const auto name = oil_name_of(fill_of(record, *entry));
        if (name) latest = name;
    }
    return latest;
}

OilLife oil_life(const OilRecord& record, std::string_view oil, const Profile& profile) {
    OilLife life;
    life.bike = record.bike->details.value.name;
    life.oil = oil;
    life.dial_unit = record.bike->details.value.odometer_unit;
    const auto samples = samples_of(record, oil);
    life.samples = samples.size();
    for (const FilledSample& sample : samples) {
        if (sample.distance_on_oil)
            life.longest_run_km = std::max(life.longest_run_km, sample.distance_on_oil->km());
    }
    put_fill_in_use(life, record);
    for (const std::string_view quantity : ageing) {
        if (quantity == "kv40" && latest_with(samples, "kv100") != nullptr) continue; // 100 C decides
        for (LifeMark& mark : marks_of(record, samples, quantity, profile))
            life.marks.push_back(std::move(mark));
    }
    put_whole(life);
    life.interval_km = planned_km(*record.bike);
    life.interval = interval_word(life);
    life.cautions = {
        "The maker's handbook sets the longest interval; these samples do not lengthen it.",
        "Dirt, water and fuel can end an oil's life long before; look at every sample: oil assess."};
    return life;
}

} // namespace sumpbook::oil
