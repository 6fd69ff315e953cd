// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/report_oil_answers.h"

#include "model/oil/limit_sets.h"
#include "model/oil/quantities.h"
#include "model/oil/words.h"
#include "reports/compose/oil_words.h"
#include "reports/compose/report_front.h"
#include "reports/compose/words.h"

#include <algorithm>
#include <functional>
#include <set>

namespace sumpbook::compose {
namespace {

using oil::Ladder;
using oil::RatedValue;
using oil::SampleAssessment;

using Wanted = std::function<bool(const RatedValue&)>;

bool is_metal(const RatedValue& value) { return oil::is_wear_metal(value.written.quantity); }

/// What says whether oil can stay in: contaminants and condition, not additives and wear metals.
bool is_of_the_oil(const RatedValue& value) {
    const auto* quantity = oil::find_quantity(value.written.quantity);
    return quantity != nullptr && (quantity->group == oil::QuantityGroup::contaminant ||
                                   quantity->group == oil::QuantityGroup::condition);
}

Ladder worst(const SampleAssessment& sample, const Wanted& wanted) {
    Ladder ladder = Ladder::unrated;
    for (const auto& value : sample.values) {
        if (wanted(value)) ladder = oil::worse(ladder, value.ladder);
    }
    return ladder;
}

/// "copper 22 mg/kg (above 20 mg/kg by HB2004)" of what stands at this word.
std::string names_at(const SampleAssessment& sample, const Wanted& wanted, Ladder ladder) {
    std::vector<std::string> names;
    for (const auto& value : sample.values) {
        if (!wanted(value) || value.ladder != ladder) continue;
        std::string text = oil::quantity_name(value.written.quantity);
        if (ladder >= Ladder::watch && value.limit && value.set != oil::grade_set)
            text += " (limit: " + limit_words(*value.limit) + ", " + value.set + ")";
        names.push_back(std::move(text));
    }
    return oil::listed(names);
}

std::string figure(double number) { return grouped(decimal_from_double(number, 1)); }

/// "In 1 000 km the engine now sheds 1.4 mg/kg of iron; usual in 5 earlier fills was 1.2." of each metal
/// with earlier fills.
std::string against_earlier_fills(const SampleAssessment& sample) {
    std::string text;
    for (const auto& wear : sample.wear) {
        const auto usual = oil::median_wear_per_1000km(wear);
        if (!usual) continue;
        text += (text.empty() ? "In 1 000 km the engine now sheds " : "; ") + figure(wear.now->per_1000km()) +
                " mg/kg of " + oil::quantity_name(wear.now->element) + " (usual " + figure(*usual) +
                ", from " + counted(wear.earlier.size(), "earlier fill", "earlier fills") + ")";
    }
    return text.empty() ? "There is no earlier fill of oil to compare the rate of wear with." : text + ".";
}

std::string rising_words(const SampleAssessment& sample) {
    std::vector<std::string> rising;
    for (const auto& wear : sample.wear) {
        if (oil::wear_keeps_rising(wear)) rising.push_back(oil::quantity_name(wear.now->element));
    }
    return rising.empty() ? "" : " The rate of " + oil::listed(rising) + " keeps rising from fill to fill.";
}

bool lifted_by_wear(const SampleAssessment& sample) {
    return std::ranges::any_of(sample.whole.lifts, [](const oil::Lift& lift) {
        return lift.quantity && oil::is_wear_metal(*lift.quantity);
    });
}

std::string wear_verdict(const SampleAssessment& sample, Ladder ladder) {
    switch (ladder) {
    case Ladder::act:
        return "Yes, more than it should: " + names_at(sample, is_metal, Ladder::act) + ".";
    case Ladder::watch:
        if (worst(sample, is_metal) < Ladder::watch)
            return "Perhaps: no metal is at its limit, but one is shed at least twice as fast as usual.";
        return "Perhaps: near or at the first limit are " + names_at(sample, is_metal, Ladder::watch) + ".";
    case Ladder::within:
        return "No sign of it beyond what is usual. Within their limits: " +
               names_at(sample, is_metal, Ladder::within) + ".";
    case Ladder::unrated:
        break;
    }
    return "This sample cannot tell: no wear metal in it could be judged.";
}

std::string fitness_verdict(const SampleAssessment& sample, Ladder ladder) {
    switch (ladder) {
    case Ladder::act:
        return "No. Past what it may be: " + names_at(sample, is_of_the_oil, Ladder::act) + ".";
    case Ladder::watch:
        return "Not for much longer, or not for certain. To watch: " +
               names_at(sample, is_of_the_oil, Ladder::watch) + ".";
    case Ladder::within:
        return "As far as it was measured, yes. Within their limits: " +
               names_at(sample, is_of_the_oil, Ladder::within) + ".";
    case Ladder::unrated:
        break;
    }
    return "This sample cannot tell: nothing about the oil itself could be judged.";
}

std::string missing_of_the_oil(const SampleAssessment& sample) {
    std::vector<std::string> missing;
    for (const auto* name : {"fuel", "water or glycol", "viscosity"}) {
        if (std::ranges::find(sample.whole.missing, name) != sample.whole.missing.end())
            missing.emplace_back(name);
    }
    return missing.empty() ? "" : " Not judged, and needed to be sure: " + oil::listed(missing) + ".";
}

std::set<std::string> sets_used(const SampleAssessment& sample) {
    std::set<std::string> used;
    for (const auto& value : sample.values) {
        if (value.ladder != Ladder::unrated && !value.set.empty() && value.set != oil::grade_set)
            used.insert(value.set);
    }
    return used;
}

/// What the sets that judged were published for.
std::string scope_words(const SampleAssessment& sample) {
    const auto used = sets_used(sample);
    if (used.empty()) return "No published limit could be applied.";
    std::vector<std::string> scopes;
    bool for_motorcycles = false;
    for (const auto& id : used) {
        const auto* set = oil::find_limit_set(id);
        if (set == nullptr) continue;
        scopes.push_back(id + " (" + (set->engines.empty() ? "engines not stated" : set->engines) + ")");
        for_motorcycles = for_motorcycles || set->engines.find("motorcycle") != std::string::npos;
    }
    std::string text = "Judged by the published limits " + oil::listed(scopes) + ".";
    if (!for_motorcycles)
        text += " None of them was published for motorcycles, and we know of no public set that was: a limit "
                "is a reason to look, not proof of a fault.";
    return text;
}

std::string history_words(const std::vector<SampleAssessment>& samples) {
    if (samples.size() == 1)
        return "There is one sample. It is a snapshot: it cannot show where things are going, and one sample "
               "can be drawn or measured badly.";
    std::set<std::string> fills;
    for (const auto& sample : samples) {
        if (sample.filled.oil_change_entry != nullptr) fills.insert(sample.filled.oil_change_entry->id);
    }
    std::string text = "There are " + std::to_string(samples.size()) + " samples from " +
                       spelled_text(samples.front().date) + " to " + spelled_text(samples.back().date);
    if (!fills.empty()) text += ", of " + counted(fills.size(), "fill", "fills") + " of oil";
    text += ".";
    constexpr std::size_t few = 4; // the trend test needs four fills to say anything (numbers.md 6.1)
    if (samples.size() < few) text += " That is too few to call anything a trend.";
    return text;
}

} // namespace

document::Sentence wear_answer(const std::vector<SampleAssessment>& samples) {
    const auto& latest = samples.back();
    auto ladder = worst(latest, is_metal);
    if (lifted_by_wear(latest)) ladder = oil::worse(ladder, Ladder::watch);
    std::string text = marked(ladder) + ". " + wear_verdict(latest, ladder) + " ";
    return {text + against_earlier_fills(latest) + rising_words(latest), colour(ladder)};
}

document::Sentence fitness_answer(const SampleAssessment& latest) {
    auto ladder = worst(latest, is_of_the_oil);
    std::string text = fitness_verdict(latest, ladder);
    if (latest.coolant.lifts()) {
        ladder = oil::worse(ladder, Ladder::watch);
        text += " Sodium or potassium is high: coolant may be getting into it.";
    }
    text = marked(ladder) + ". " + text + missing_of_the_oil(latest);
    if (const auto viscosity = viscosity_words(latest.viscosity); !viscosity.empty()) text += " " + viscosity;
    return {text, colour(ladder)};
}

std::vector<std::string> certainty_answer(const std::vector<SampleAssessment>& samples) {
    const auto& latest = samples.back();
    std::vector<std::string> said{history_words(samples)};
    const auto judged = std::ranges::count_if(
        latest.values, [](const RatedValue& value) { return value.ladder != Ladder::unrated; });
    said.push_back(counted(static_cast<std::size_t>(judged), "value", "values") + " of " +
                   std::to_string(latest.values.size()) + " could be judged; the profile is \"" +
                   latest.profile + "\". " + scope_words(latest));
    if (latest.whole.set_by_laboratory)
        said.emplace_back("The laboratory's own verdict is worse than ours and counts.");
    else if (!latest.laboratory)
        said.emplace_back("The laboratory gave no verdict of its own, or none is recorded.");
    return said;
}

std::vector<std::string> past_answer(const std::vector<SampleAssessment>& samples) {
    std::vector<std::string> said;
    std::size_t since = 0; // samples before the latest that came after the last bad one
    for (std::size_t i = 0; i + 1 < samples.size(); ++i) {
        const auto& sample = samples[i];
        ++since;
        if (sample.whole.word != oil::Word::act && sample.whole.word != oil::Word::watch) continue;
        since = 0;
        said.push_back(spelled_text(sample.date) + ", sample " + sample.sample + ": " +
                       marked(sample.whole.word) + ". The advice then: " + advice_words(sample));
    }
    if (samples.size() < 2) return {};
    if (said.empty()) return {"None of the earlier samples stood at watch or act."};
    if (since > 0)
        said.push_back("In the " + counted(since, "sample", "samples") +
                       " between the last of these and the latest there was nothing of the kind.");
    return said;
}

std::vector<std::string> assumption_answer(const SampleAssessment& latest) {
    std::vector<std::string> said;
    const auto put = [&](const std::string& sentence) {
        if (std::ranges::find(said, sentence) == said.end()) said.push_back(sentence);
    };
    if (latest.filled.oil_change == nullptr)
        put("The oil change before this sample is not recorded, so the new oil and its grade are not known.");
    if (!latest.viscosity.reference.empty())
        put("Viscosity is compared with " + latest.viscosity.reference + ".");
    for (const auto& wear : latest.wear) {
        for (const auto& note : wear.now->notes)
            put(note);
    }
    const bool by_speed = std::ranges::any_of(
        latest.values, [](const RatedValue& value) { return value.rate && !value.rate->metered; });
    if (by_speed)
        put("Hours between samples are taken from distance and an average speed: there is no hour meter.");
    put("The sample was drawn warm and from the middle of the drain, as samples should be; if not, metals "
        "and "
        "dirt may read too high or too low.");
    return said;
}

} // namespace sumpbook::compose
