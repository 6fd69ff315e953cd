// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/report_oil_answers.h"

#include "model/oil/quantities.h"
#include "model/oil/words.h"
#include "reports/compose/entry_words.h"
#include "reports/compose/oil_words.h"
#include "reports/compose/report_front.h"
#include "reports/compose/words.h"

#include <algorithm>
#include <functional>

namespace sumpbook::compose {
namespace {

using oil::Ladder;
using oil::RatedValue;
using oil::SampleAssessment;

using Wanted = std::function<bool(const RatedValue&)>;

bool is_metal(const RatedValue& value) { return oil::is_wear_metal(value.written.quantity); }

/// What says whether oil can stay in: all but the metals that the engine sheds. Boron may be coolant.
bool is_of_the_oil(const RatedValue& value) { return !is_metal(value); }

Ladder worst(const SampleAssessment& sample, const Wanted& wanted) {
    Ladder ladder = Ladder::unrated;
    for (const auto& value : sample.values) {
        if (wanted(value)) ladder = oil::worse(ladder, value.ladder);
    }
    return ladder;
}

/// "copper 22 mg/kg (limit: above 20 mg/kg, HB2004)" of what stands at this word; names alone where all is
/// well.
std::string names_at(const SampleAssessment& sample, const Wanted& wanted, Ladder ladder) {
    std::vector<std::string> names;
    for (const auto& value : sample.values) {
        if (!wanted(value) || value.ladder != ladder) continue;
        std::string text = oil::quantity_name(value.written.quantity);
        if (ladder >= Ladder::watch) text += " " + value_words(value.written);
        if (ladder >= Ladder::watch && value.limit && value.set != oil::grade_set)
            text += " (limit: " + limit_words(*value.limit) + ", " + value.set + ")";
        names.push_back(std::move(text));
    }
    return oil::listed(names);
}

std::string figure(double number) { return grouped(decimal_from_double(number, 1)); }

/// "copper 1.4 (usual 0.6)", of a metal with earlier fills.
std::string rate_against_usual(const oil::WearHistory& wear, double usual) {
    return oil::quantity_name(wear.now->element) + " " + figure(wear.now->per_1000km()) + " (usual " +
           figure(usual) + ")";
}

/// The metals shed at least twice as fast as usual, or the others, each with its rate.
std::vector<std::string> rates_of(const SampleAssessment& sample, bool fast) {
    std::vector<std::string> rates;
    for (const auto& wear : sample.wear) {
        const auto usual = oil::median_wear_per_1000km(wear);
        if (usual && oil::wears_twice_as_fast(wear) == fast)
            rates.push_back(rate_against_usual(wear, *usual));
    }
    return rates;
}

std::size_t most_earlier_fills(const SampleAssessment& sample) {
    std::size_t most = 0;
    for (const auto& wear : sample.wear)
        most = std::max(most, wear.earlier.size());
    return most;
}

/// What the engine sheds now beside what was usual: the fast ones, then the others.
std::string against_earlier_fills(const SampleAssessment& sample) {
    const auto fast = rates_of(sample, true);
    const auto usual = rates_of(sample, false);
    if (fast.empty() && usual.empty())
        return "There is no earlier fill of oil to compare the rate of wear with.";
    std::string text = "In mg/kg for each 1 000 km, beside the middle of " +
                       counted(most_earlier_fills(sample), "earlier fill", "earlier fills") + ": ";
    if (!fast.empty())
        text += "twice the usual or more, by more than two measurements can differ, " + oil::listed(fast);
    if (!fast.empty() && !usual.empty()) text += "; not so, or too little to be sure, ";
    return text + oil::listed(usual) + ".";
}

std::string rising_words(const SampleAssessment& sample) {
    std::vector<std::string> rising;
    for (const auto& wear : sample.wear) {
        if (oil::wear_keeps_rising(wear)) rising.push_back(oil::quantity_name(wear.now->element));
    }
    return rising.empty() ? "" : " The rate of " + oil::listed(rising) + " keeps rising from fill to fill.";
}

std::vector<std::string> fast_metals(const SampleAssessment& sample) {
    std::vector<std::string> names;
    for (const auto& wear : sample.wear) {
        if (oil::wears_twice_as_fast(wear)) names.push_back(oil::quantity_name(wear.now->element));
    }
    return names;
}

std::string wear_verdict(const SampleAssessment& sample, Ladder ladder) {
    const auto fast = fast_metals(sample);
    switch (ladder) {
    case Ladder::act:
        return "Yes, more than it should: " + names_at(sample, is_metal, Ladder::act) + ".";
    case Ladder::watch:
        if (worst(sample, is_metal) < Ladder::watch)
            return "Perhaps: no metal is at its limit, but " + oil::listed(fast) +
                   (fast.size() == 1 ? " is" : " are") + " shed at least twice as fast as usual.";
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
    const auto near = names_at(sample, is_of_the_oil, Ladder::watch);
    switch (ladder) {
    case Ladder::act:
        return "No. Past what it may be: " + names_at(sample, is_of_the_oil, Ladder::act) + "." +
               (near.empty() ? "" : " To watch: " + near + ".");
    case Ladder::watch:
        return "Not for much longer, or not for certain. To watch: " + near + ".";
    case Ladder::within:
        return "As far as it was measured, yes. Within their limits: " +
               names_at(sample, is_of_the_oil, Ladder::within) + ".";
    case Ladder::unrated:
        break;
    }
    return "This sample cannot tell: nothing about the oil itself could be judged.";
}

/// " Sodium 81 mg/kg (new oil 2 mg/kg) and potassium ... : so much points to coolant getting in."
std::string coolant_words(const SampleAssessment& sample) {
    if (!sample.coolant.lifts()) return {};
    std::vector<std::string> high;
    for (const auto& value : sample.values) {
        if (std::ranges::find(sample.coolant.metals, value.written.quantity) == sample.coolant.metals.end())
            continue;
        high.push_back(oil::quantity_name(value.written.quantity) + " " + value_words(value.written) +
                       (value.fresh ? " (new oil: " + value_words(*value.fresh) + ")" : ""));
    }
    return " High beside the new oil, though no published limit fits: " + oil::listed(high) +
           ". Coolant may be getting into the oil.";
}

std::string missing_of_the_oil(const SampleAssessment& sample) {
    std::vector<std::string> missing;
    for (const auto* name : {"fuel", "water or glycol", "viscosity"}) {
        if (std::ranges::find(sample.whole.missing, name) != sample.whole.missing.end())
            missing.emplace_back(name);
    }
    return missing.empty() ? "" : " Not judged, and needed to be sure: " + oil::listed(missing) + ".";
}

} // namespace

document::Sentence wear_answer(const std::vector<SampleAssessment>& samples) {
    const auto& latest = samples.back();
    auto ladder = worst(latest, is_metal);
    if (!fast_metals(latest).empty()) ladder = oil::worse(ladder, Ladder::watch);
    std::string text = marked(ladder) + ". " + wear_verdict(latest, ladder) + " ";
    return {text + against_earlier_fills(latest) + rising_words(latest), colour(ladder)};
}

document::Sentence fitness_answer(const SampleAssessment& latest) {
    auto ladder = worst(latest, is_of_the_oil);
    std::string text = fitness_verdict(latest, ladder);
    if (latest.coolant.lifts()) ladder = oil::worse(ladder, Ladder::watch);
    text += coolant_words(latest);
    text = marked(ladder) + ". " + text + missing_of_the_oil(latest);
    if (const auto viscosity = viscosity_words(latest); !viscosity.empty()) text += " " + viscosity;
    return {text, colour(ladder)};
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
    put("The sample was drawn warm and from the middle of the drain, as samples should be; if not, metals "
        "and dirt may read too high or too low.");
    return said;
}

} // namespace sumpbook::compose
