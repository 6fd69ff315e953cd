// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/assess.h"

#include "model/oil/methods.h"
#include "model/oil/quantities.h"
#include "model/oil/rate_sample.h"
#include "model/oil/words.h"

#include <algorithm>

namespace sumpbook::oil {
namespace {

/// Chrome-plated bores may give chromium for so long. SOURCE: JOAP Manual Vol III, engine page IO-360-C/D.
constexpr double chrome_run_in_hours = 150;

bool flash_below_new(const std::vector<RatedValue>& values) {
    return std::any_of(values.begin(), values.end(), [](const RatedValue& value) {
        if (value.written.quantity != "flash" || value.written.state != ValueState::measured) return false;
        const auto fresh = fresh_number(value);
        const bool one_method =
            fresh && method_of("flash", value.written.method) == method_of("flash", value.fresh->method);
        return one_method && value.written.number < *fresh;
    });
}

bool is_chrome_run_in(const OilRecord& record, const FilledSample& sample) {
    const auto hours = engine_hours(record, sample);
    return record.bike->details.value.bore == Bore::chrome_plated && hours && *hours < chrome_run_in_hours;
}

std::set<std::string> conditions(const OilRecord& record, const SampleAssessment& found,
                                 const SampleHistory& history) {
    std::set<std::string> words;
    const auto put = [&](bool holds, const char* word) {
        if (holds) words.insert(word);
    };
    put(flash_below_new(found.values), "flash-below-new");
    put(silicon_fell_with_each_fill(found.filled, history), "silicon-falls-each-fill");
    put(wear_metals_fell(found.filled, history), "wear-metals-fell");
    put(found.filled.fill && found.filled.fill->run_in, "new-engine");
    put(is_chrome_run_in(record, found.filled), "chrome-bore-under-150-h");
    return words;
}

std::optional<std::pair<Decimal, Decimal>> viscosities(const SampleAssessment& found) {
    if (!found.viscosity.change_percent) return std::nullopt;
    const bool at_100 = found.viscosity.judged_at == ViscosityAt::celsius_100;
    for (const RatedValue& value : found.values) {
        if (value.written.quantity != (at_100 ? "kv100" : "kv40")) continue;
        if (const auto fresh = fresh_number(value)) return std::pair(*fresh, value.written.number);
    }
    return std::nullopt;
}

PatternFacts pattern_facts(const OilRecord& record, const SampleAssessment& found,
                           const SampleHistory& history) {
    PatternFacts facts;
    for (const RatedValue& value : found.values) {
        const std::string& quantity = value.written.quantity;
        if (value.ladder >= Ladder::watch) facts.high.insert(quantity);
        if (value.rate && value.rate->is_rising()) facts.rising.insert(quantity);
        const auto amount = measured_number(value.written);
        const auto mg_kg =
            amount ? in_oil_unit(*amount, value.written.unit.empty() ? "mg/kg" : value.written.unit, "mg/kg")
                   : std::nullopt;
        if (mg_kg) facts.amounts[quantity] = *mg_kg;
        if (quantity == "glycol" &&
            (value.ladder == Ladder::act || value.written.state == ValueState::detected))
            facts.glycol_detected = true;
    }
    for (const WearHistory& wear : found.wear) {
        if (wear_keeps_rising(wear)) facts.rising.insert(wear.now->element);
    }
    facts.high.insert(found.coolant.metals.begin(), found.coolant.metals.end());
    facts.viscosity_mm2_s = viscosities(found);
    facts.without_coolant = !found.coolant.may_be_coolant;
    facts.conditions = conditions(record, found, history);
    return facts;
}

std::set<std::string> at_act_before(const OilRecord& record, const SampleHistory& history,
                                    const Profile& profile) {
    std::set<std::string> metals;
    if (!history.previous) return metals;
    const FilledSample& before = *history.previous;
    const auto values =
        rate_sample(record, before, history_of(record, before), rating_basis(record, before, profile));
    for (const RatedValue& value : values) {
        if (value.ladder == Ladder::act && is_wear_metal(value.written.quantity))
            metals.insert(value.written.quantity);
    }
    return metals;
}

std::vector<WearHistory> wear_of(const OilRecord& record, const FilledSample& sample,
                                 const SampleHistory& history) {
    std::vector<WearHistory> wear;
    const bool leaded = record.bike->details.value.fuel == FuelType::leaded_petrol;
    for (const SampleValue& value : sample.sample->values) {
        if (!is_wear_metal(value.quantity) || (leaded && value.quantity == "Pb")) continue;
        auto rates = wear_history(record, sample, history, value.quantity);
        if (rates.now) wear.push_back(std::move(rates));
    }
    return wear;
}

std::string figure(double number) { return decimal_from_double(number, 1).text(); }

std::vector<Lift> lifts_of(const SampleAssessment& found) {
    std::vector<Lift> lifts;
    std::vector<std::string> names;
    for (const std::string& metal : found.coolant.metals)
        names.push_back(quantity_name(metal));
    if (found.coolant.lifts())
        lifts.push_back({"High " + listed(names) + ": coolant may be getting into the oil.", std::nullopt});
    for (const WearHistory& wear : found.wear) {
        if (!wears_twice_as_fast(wear)) continue;
        lifts.push_back({"The engine sheds " + figure(wear.now->per_1000km()) + " mg/kg of " +
                             quantity_name(wear.now->element) + " in 1 000 km, at least twice the " +
                             figure(*median_wear_per_1000km(wear)) + " usual in its earlier fills.",
                         wear.now->element});
    }
    return lifts;
}

std::optional<Distance> half_interval(const Bike& bike) {
    const auto* item = find_plan_item(bike, "engine-oil");
    if (item == nullptr || !item->value.repeat.distance) return std::nullopt;
    const auto whole = distance_of(*item->value.repeat.distance);
    if (!whole) return std::nullopt;
    return Distance::from_micrometres(whole->micrometres() / 2);
}

std::vector<std::string> caveats_of(const std::vector<RatedValue>& values) {
    std::vector<std::string> caveats;
    for (const LimitSet& set : limit_sets()) {
        const bool used = std::any_of(values.begin(), values.end(), [&](const RatedValue& value) {
            return value.set == set.id && value.ladder != Ladder::unrated;
        });
        if (used && !set.caveat.empty()) caveats.push_back(set.id + ": " + set.caveat);
    }
    return caveats;
}

std::vector<std::string> cautions_of(const SampleAssessment& found) {
    std::vector<std::string> cautions;
    if (found.compartment != "engine")
        cautions.push_back("The limits are for engine oil; this sample is of the compartment " +
                           found.compartment + ".");
    const auto& named_change = found.filled.sample->oil_change_date;
    if (named_change && found.filled.oil_change == nullptr)
        cautions.push_back("The sample names an oil change of " + iso_text(*named_change) +
                           ", and none of that day is recorded.");
    if (!found.filled.distance_on_oil && !found.filled.hours_on_oil)
        cautions.emplace_back(
            "How far this oil has run is not known, and what is a lot of metal depends on it.");
    if (found.filled.sample->drawn == TopUpSide::after)
        cautions.emplace_back(
            "Drawn after a top-up: the fresh oil thins what was there, so metals read low.");
    cautions.emplace_back(
        "A clean result does not exclude a failure that sheds particles too large for the method.");
    cautions.emplace_back(
        "The maker's handbook and a qualified mechanic decide; if unsure, ask one. "
        "Hot oil and a hot exhaust burn: let the engine cool until it is only warm before you drain it.");
    return cautions;
}

SampleAssessment begin(const OilRecord& record, const FilledSample& filled, const Profile& profile) {
    SampleAssessment found;
    found.bike = record.bike->details.value.name;
    found.sample = sample_label(*filled.entry);
    found.entry_id = filled.entry->id;
    found.date = filled.entry->value.date;
    found.compartment = filled.sample->compartment;
    found.profile = profile.name;
    found.filled = filled;
    found.dial_unit = record.bike->details.value.odometer_unit;
    found.laboratory = filled.sample->flag;
    found.laboratory_words = filled.sample->flag_words;
    return found;
}

} // namespace

SampleAssessment assess_sample(const OilRecord& record, const LogEntry& sample, const Profile& profile) {
    const BikeDetails& bike = record.bike->details.value;
    SampleAssessment found = begin(record, fill_of(record, sample), profile);
    const SampleHistory history = history_of(record, found.filled);
    const RatingBasis basis = rating_basis(record, found.filled, profile);
    found.values = rate_sample(record, found.filled, history, basis);
    found.coolant = coolant_sign(found.values, bike.cooling);
    found.viscosity = viscosity_findings(found.values, basis);
    found.wear = wear_of(record, found.filled, history);
    found.patterns = find_patterns(pattern_facts(record, found, history));
    found.whole = whole_sample(found.values, lifts_of(found), found.laboratory, bike.fuel);
    found.advice = advise(found.values, found.whole, found.coolant, found.patterns,
                          at_act_before(record, history, profile));
    found.half_interval = half_interval(*record.bike);
    found.caveats = caveats_of(found.values);
    found.cautions = cautions_of(found);
    return found;
}

std::vector<SampleAssessment> assess_samples(const OilRecord& record, const Profile& profile) {
    std::vector<SampleAssessment> all;
    for (const LogEntry* entry : entries_of<Sample>(*record.bike)) {
        if (std::get<Sample>(entry->value.body).use == OilUse::used)
            all.push_back(assess_sample(record, *entry, profile));
    }
    return all;
}

Result<Profile> profile_for(const BikeDetails& bike, const std::optional<std::string>& asked) {
    if (asked) return find_profile(*asked);
    if (bike.oil_profile) return find_profile(*bike.oil_profile);
    return default_profile();
}

const LogEntry* find_sample(const Bike& bike, std::string_view number) {
    for (const LogEntry* entry : entries_of<Sample>(bike)) {
        const auto& own = std::get<Sample>(entry->value.body).number;
        if ((own && same_word(*own, number)) || entry->id == number) return entry;
    }
    return nullptr;
}

} // namespace sumpbook::oil
