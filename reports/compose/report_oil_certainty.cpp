// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/report_oil_certainty.h"

#include "model/oil/limit_sets.h"
#include "model/oil/oil_trend.h"
#include "model/oil/quantities.h"
#include "model/oil/words.h"
#include "reports/compose/entry_words.h"
#include "reports/compose/oil_words.h"
#include "reports/compose/report_front.h"
#include "reports/compose/words.h"

#include <algorithm>
#include <set>

namespace sumpbook::compose {
namespace {

using oil::Ladder;
using oil::RatedValue;
using oil::SampleAssessment;
using oil::Word;

bool stands_out(Word word) { return word == Word::watch || word == Word::act; }

/// What made a sample stand out: values at watch or act, coolant metals, metals shed fast.
std::set<std::string> reasons_of(const SampleAssessment& sample) {
    std::set<std::string> reasons(sample.coolant.metals.begin(), sample.coolant.metals.end());
    for (const auto& value : sample.values) {
        if (value.ladder >= Ladder::watch) reasons.insert(value.written.quantity);
    }
    for (const auto& wear : sample.wear) {
        if (oil::wears_twice_as_fast(wear)) reasons.insert(wear.now->element);
    }
    return reasons;
}

/// Names of what made both samples stand out.
std::vector<std::string> shared_reasons(const SampleAssessment& one, const SampleAssessment& other) {
    std::vector<std::string> names;
    const auto reasons = reasons_of(one);
    for (const auto& quantity : reasons_of(other)) {
        if (reasons.contains(quantity)) names.push_back(oil::quantity_name(quantity));
    }
    return names;
}

std::size_t fills_of(const std::vector<SampleAssessment>& samples) {
    std::set<std::string> fills;
    for (const auto& sample : samples) {
        if (sample.filled.oil_change_entry != nullptr) fills.insert(sample.filled.oil_change_entry->id);
    }
    return fills.size();
}

std::string sure_of_a_finding(const std::vector<SampleAssessment>& samples) {
    const auto& latest = samples.back();
    std::string text = "Sure of what was measured, less sure of the reason: ";
    const auto shared =
        samples.size() < 2 ? std::vector<std::string>{} : shared_reasons(latest, samples[samples.size() - 2]);
    if (shared.empty())
        text += "nothing of it stood out in the sample before, so it rests on one sample.";
    else
        text = "Rather sure that something is out of order: " + oil::listed(shared) +
               " stood out in the sample before as well, of " +
               spelled_text(samples[samples.size() - 2].date) + ".";
    if (samples.size() < 2) text = "Sure of what was measured, less sure of the reason: it is one sample.";
    if (latest.laboratory && *latest.laboratory != LabFlag::within)
        text += " The laboratory's own verdict points the same way.";
    return text;
}

/// How sure the verdict is, in words an owner can weigh (DESIGN).
std::string sureness(const std::vector<SampleAssessment>& samples) {
    const auto& latest = samples.back();
    if (latest.whole.word == Word::not_enough_to_say)
        return "Not sure: without " + oil::listed(latest.whole.missing) + " nothing can be ruled out.";
    if (stands_out(latest.whole.word)) return sure_of_a_finding(samples);
    if (fills_of(samples) < oil::fewest_trend_fills)
        return "Not very sure: nothing stands out, but there is little to compare it with.";
    return "Rather sure, for what oil can show: all that a verdict needs was measured, and there are enough "
           "earlier fills to see a change. A failure that sheds large pieces does not show in a sample.";
}

std::set<std::string> sets_used(const SampleAssessment& sample) {
    std::set<std::string> used;
    for (const auto& value : sample.values) {
        if (value.ladder != Ladder::unrated && !value.set.empty()) used.insert(value.set);
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
        if (id == oil::grade_set) {
            scopes.push_back(id + " (our own rule on the grades of SAE J300)");
            continue;
        }
        const auto* set = oil::find_limit_set(id);
        if (set == nullptr) continue;
        scopes.push_back(id + " (" + (set->engines.empty() ? "engines not stated" : set->engines) + ")");
        for_motorcycles = for_motorcycles || set->engines.find("motorcycle") != std::string::npos;
    }
    std::string text = "Judged by " + oil::listed(scopes) + ".";
    if (!for_motorcycles)
        text += " None of them was published for motorcycles, and we know of no public set that was: a limit "
                "is a reason to look, not proof of a fault.";
    return text;
}

std::string history_words(const std::vector<SampleAssessment>& samples) {
    if (samples.size() == 1)
        return "There is one sample. It is a snapshot: it cannot show where things are going, and one sample "
               "can be drawn or measured badly.";
    const auto fills = fills_of(samples);
    std::string text = "There are " + std::to_string(samples.size()) + " samples from " +
                       spelled_text(samples.front().date) + " to " + spelled_text(samples.back().date);
    if (fills != 0)
        text += ", of " + counted(fills, "fill", "fills") + " of oil (from one change to the next)";
    text += ".";
    if (fills < oil::fewest_trend_fills) text += " That is too few to call anything a trend.";
    return text;
}

std::string judged_words(const SampleAssessment& latest) {
    const auto judged = std::ranges::count_if(
        latest.values, [](const RatedValue& value) { return value.ladder != Ladder::unrated; });
    const auto all = latest.values.size();
    if (static_cast<std::size_t>(judged) == all)
        return "Every value of the latest sample, " + std::to_string(all) + ", was held against a limit.";
    return "Of " + std::to_string(all) + " values in the latest sample " + std::to_string(judged) +
           " could be held against a limit; the others are shown to compare with.";
}

/// "Oil changed on 21 Oct 2023", "21 Oct 2023: water pump seal renewed".
std::string work_sentence(const LogEntry& entry) {
    const auto& body = entry.value.body;
    const auto date = spelled_text(entry.value.date);
    if (std::holds_alternative<OilChange>(body)) return "Oil changed on " + date;
    const auto* work = std::get_if<Work>(&body);
    return date + ": " + (work != nullptr && work->text ? *work->text : entry_words(entry.value));
}

/// What was done to the bike from one day up to another, that day not included.
std::string work_between(const Bike& bike, Date from, Date until) {
    std::string text;
    for (const auto& entry : bike.log) {
        const auto& body = entry.value.body;
        const bool is_work = std::holds_alternative<OilChange>(body) || std::holds_alternative<Work>(body) ||
                             std::holds_alternative<Fit>(body);
        if (!is_work || entry.value.date < from || entry.value.date >= until) continue;
        text += (text.empty() ? "" : "; ") + work_sentence(entry);
    }
    return text.empty() ? "No work is recorded after the last of these, up to the next sample."
                        : "Recorded after the last of these, up to the next sample: " + text + ".";
}

} // namespace

std::vector<std::string> certainty_answer(const std::vector<SampleAssessment>& samples) {
    const auto& latest = samples.back();
    std::vector<std::string> said{sureness(samples), history_words(samples),
                                  judged_words(latest) + " " + scope_words(latest)};
    if (latest.whole.set_by_laboratory)
        said.emplace_back("The laboratory's own verdict is worse than ours and counts.");
    else if (!latest.laboratory)
        said.emplace_back("The laboratory gave no verdict of its own, or none is recorded.");
    return said;
}

std::vector<std::string> past_answer(const std::vector<SampleAssessment>& samples, const Bike* bike) {
    if (samples.size() < 2) return {};
    std::vector<std::string> said;
    std::size_t last_bad = samples.size();
    for (std::size_t i = 0; i + 1 < samples.size(); ++i) {
        const auto& sample = samples[i];
        if (!stands_out(sample.whole.word)) continue;
        last_bad = i;
        said.push_back(spelled_text(sample.date) + ", sample " + sample.sample + ": " +
                       marked(sample.whole.word) + ". The advice then: " + advice_words(sample));
    }
    if (said.empty()) return {"None of the earlier samples stood at watch or act."};
    if (bike != nullptr)
        said.push_back(work_between(*bike, samples[last_bad].date, samples[last_bad + 1].date));
    const auto since = samples.size() - 2 - last_bad; // samples between it and the latest
    if (since > 0)
        said.push_back("In the " + counted(since, "sample", "samples") +
                       " between the last of these and the latest there was nothing of the kind.");
    return said;
}

} // namespace sumpbook::compose
