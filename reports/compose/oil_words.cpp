// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/oil_words.h"

#include "model/oil/quantities.h"
#include "model/oil/words.h"
#include "reports/compose/entry_words.h"
#include "reports/compose/words.h"

#include <algorithm>
#include <cmath>

namespace sumpbook::compose {
namespace {

using document::Severity;
using oil::AdviceKind;
using oil::Basis;
using oil::Ladder;
using oil::Operator;
using oil::RatedValue;
using oil::SampleAssessment;
using oil::Word;

std::string with_unit(const Decimal& number, const std::string& unit) {
    return grouped(number) + (unit.empty() ? "" : " " + unit);
}

std::string figure(double number, int scale) { return grouped(decimal_from_double(number, scale)); }

std::string capital(std::string text) {
    if (!text.empty() && text.front() >= 'a' && text.front() <= 'z')
        text.front() = static_cast<char>(text.front() - 'a' + 'A');
    return text;
}

/// The limit's amount with what it is an amount of.
std::string limit_amount(const oil::LimitRow& limit) {
    const std::string number = grouped(limit.value);
    switch (limit.basis) {
    case Basis::change:
        return number + " % change";
    case Basis::size_of_change:
        return number + " % change either way";
    case Basis::loss:
        return number + " % lost";
    case Basis::share:
        return number + " % of the new oil's";
    case Basis::rise:
        return number + " % above the new oil's";
    case Basis::rise_amount:
        return with_unit(limit.value, limit.unit) + " above the new oil's";
    case Basis::drop:
        return with_unit(limit.value, limit.unit) + " below the new oil's";
    case Basis::absolute:
    case Basis::trend:
    case Basis::detection:
        break;
    }
    return with_unit(limit.value, limit.unit);
}

std::vector<std::string> names_of(const std::vector<std::string>& slugs) {
    std::vector<std::string> names;
    for (const std::string& slug : slugs)
        names.push_back(oil::quantity_name(slug));
    return names;
}

/// "Copper 22 mg/kg: warning by HB2004 (above 20 mg/kg)."
std::string finding_sentence(const RatedValue& value) {
    const std::string text =
        capital(oil::quantity_name(value.written.quantity)) + " " + value_words(value.written) + ": ";
    if (value.level && value.limit)
        return text + *value.level + " by " + value.set + " (" + limit_words(*value.limit) + ").";
    if (value.set == oil::grade_set) return text + "changed more than the grade rule lets pass.";
    if (value.limit)
        return text + "near the first level of " + value.set + " (" + limit_words(*value.limit) + ").";
    return text + "stands out.";
}

std::string sentences_at(const SampleAssessment& assessment, Ladder ladder) {
    std::string text;
    for (const RatedValue& value : assessment.values) {
        if (value.ladder == ladder) text += (text.empty() ? "" : " ") + finding_sentence(value);
    }
    return text;
}

std::string half_interval_words(const SampleAssessment& assessment) {
    if (!assessment.half_interval) return "after half the interval you change this oil at";
    return "after half the planned interval, about " + words(*assessment.half_interval, assessment.dial_unit);
}

std::string because_words(const SampleAssessment& assessment) {
    const auto names = names_of(assessment.advice.because);
    return names.empty() ? std::string{} : " (" + oil::listed(names) + ")";
}

std::string look_at_words(const SampleAssessment& assessment) {
    const auto& places = assessment.advice.look_at;
    return places.empty() ? std::string{} : " Where to look: " + oil::listed(places) + ".";
}

std::string grade_sentence(const oil::ViscosityFindings& findings) {
    if (!findings.grade || !findings.in_band) return {};
    const std::string grade =
        "SAE " + oil::text_of(*findings.grade) +
        (findings.grade_is_recorded ? "" : " (by the new oil's viscosity; no grade is recorded)");
    switch (*findings.in_band) {
    case oil::BandPosition::inside:
        return " It is still in its grade, " + grade + ".";
    case oil::BandPosition::below:
        return " It has thinned out of its grade, " + grade + ".";
    case oil::BandPosition::above:
        break;
    }
    return " It has thickened out of its grade, " + grade + ".";
}

std::string floor_sentence(const oil::ViscosityFindings& findings) {
    if (findings.below_shear_floor != true || !findings.after_shear_floor_mm2_s) return {};
    return " It is below the " + grouped(*findings.after_shear_floor_mm2_s) +
           " mm2/s that oil for wet clutches must keep after shearing (JASO T 903).";
}

std::string index_sentence(const oil::ViscosityFindings& findings) {
    return findings.index ? " Its viscosity index is " + std::to_string(findings.index->whole) + "."
                          : std::string{};
}

/// The laboratory's fuel in per cent, where it is a number.
std::optional<Decimal> fuel_measured(const SampleAssessment& assessment) {
    for (const RatedValue& value : assessment.values) {
        if (value.written.quantity == "fuel") return oil::measured_number(value.written);
    }
    return std::nullopt;
}

/// What the thinning would be in petrol, beside what the laboratory found.
std::string petrol_sentence(const SampleAssessment& assessment) {
    const auto& petrol = assessment.viscosity.petrol;
    if (!petrol || petrol->highest_percent <= 0) return {};
    std::string text = " If petrol alone had thinned it, that would be " + figure(petrol->lowest_percent, 1) +
                       " to " + figure(petrol->highest_percent, 1) + " % petrol; shear thins oil as well.";
    const auto measured = fuel_measured(assessment);
    if (!measured) return text;
    const double percent = measured->to_double();
    text += " The laboratory found " + grouped(*measured) + " % fuel: ";
    if (percent < petrol->lowest_percent) return text + "shear did the rest.";
    if (percent > petrol->highest_percent) return text + "more than the thinning shows.";
    return text + "the two agree.";
}

std::string range_words(double low, double high) {
    return low == high ? figure(low, 1) : figure(low, 1) + " to " + figure(high, 1);
}

std::string hourly_words(const oil::ElementRate& rate) {
    return range_words(rate.low_ppm_per_10h, rate.high_ppm_per_10h) + " ppm in 10 h";
}

std::string standing_words(const oil::ElementRate& rate) {
    switch (rate.standing) {
    case oil::RateStanding::unreliable:
        return ", unreliable: under 5 h apart";
    case oil::RateStanding::no_real_change:
        return ", no real change";
    case oil::RateStanding::open:
        return ", left open by the detection limit";
    case oil::RateStanding::rated:
        break;
    }
    return rate.noise_tested ? "" : ", noise not tested";
}

} // namespace

Severity colour(Ladder ladder) {
    switch (ladder) {
    case Ladder::act:
        return Severity::danger;
    case Ladder::watch:
        return Severity::caution;
    case Ladder::within:
        return Severity::good;
    case Ladder::unrated:
        break;
    }
    return Severity::none;
}

Severity colour(Word word) {
    switch (word) {
    case Word::act:
        return Severity::danger;
    case Word::watch:
        return Severity::caution;
    case Word::within:
        return Severity::good;
    case Word::not_enough_to_say:
        break;
    }
    return Severity::none;
}

std::string marked(Ladder ladder) {
    static constexpr const char* marks[] = {"○ ", "● ", "▲ ", "■ "};
    return marks[static_cast<std::size_t>(ladder)] + std::string(oil::slug(ladder));
}

std::string marked(Word word) {
    static constexpr const char* marks[] = {"● ", "○ ", "▲ ", "■ "};
    return marks[static_cast<std::size_t>(word)] + std::string(oil::slug(word));
}

std::string limit_words(const oil::LimitRow& limit) {
    if (limit.basis == Basis::detection) return "any amount";
    switch (limit.op) {
    case Operator::above:
        return "above " + limit_amount(limit);
    case Operator::at_least:
        return limit_amount(limit) + " or more";
    case Operator::below:
        return "below " + limit_amount(limit);
    case Operator::at_most:
        break;
    }
    return limit_amount(limit) + " or less";
}

std::string advice_words(const SampleAssessment& assessment) {
    const std::string because = because_words(assessment);
    switch (assessment.advice.kind) {
    case AdviceKind::stop:
        return "Do not ride on: coolant in the oil ruins bearings. Have it looked at" + because + "." +
               look_at_words(assessment);
    case AdviceKind::change_oil:
        return "Change the oil and the filter now" + because + "; no second sample is needed first.";
    case AdviceKind::inspect:
        return "Have it inspected: the same metal is high in two samples running" + because + "." +
               look_at_words(assessment);
    case AdviceKind::sample_now:
        if (assessment.whole.word == Word::not_enough_to_say && !assessment.whole.missing.empty())
            return "Take another sample and have " + oil::listed(assessment.whole.missing) +
                   " measured as well.";
        return "Take another sample now, before anything is taken apart" + because + ".";
    case AdviceKind::sample_after:
        return "Take the next sample early, " + half_interval_words(assessment) + because + ".";
    case AdviceKind::carry_on:
        break;
    }
    return "Carry on: sample again at the next oil change.";
}

std::string findings_words(const SampleAssessment& assessment) {
    std::string text = sentences_at(assessment, Ladder::act);
    const auto put = [&](const std::string& more) {
        if (!more.empty()) text += (text.empty() ? "" : " ") + more;
    };
    put(sentences_at(assessment, Ladder::watch));
    for (const oil::Lift& lift : assessment.whole.lifts)
        put(lift.because);
    if (assessment.whole.set_by_laboratory)
        put("The laboratory's own verdict is worse than ours and counts.");
    return text.empty() ? "Nothing that could be judged is out of line." : text;
}

std::string certainty_words(const SampleAssessment& assessment) {
    std::size_t judged = 0;
    for (const RatedValue& value : assessment.values)
        judged += value.ladder == Ladder::unrated ? 0 : 1;
    std::string text = "Judged: " + std::to_string(judged) + " of " +
                       std::to_string(assessment.values.size()) + " values, by the profile " +
                       assessment.profile + ".";
    const auto& missing = assessment.whole.missing;
    if (!missing.empty()) text += " To call a sample clean these are missing: " + oil::listed(missing) + ".";
    const bool compared = std::any_of(assessment.values.begin(), assessment.values.end(),
                                      [](const RatedValue& value) { return value.rate.has_value(); });
    if (!compared && assessment.wear.empty())
        text += " One sample is a snapshot; the next one shows where it is going.";
    return text;
}

std::string viscosity_words(const SampleAssessment& assessment) {
    const auto& findings = assessment.viscosity;
    if (!findings.judged_at) return {};
    const std::string where = *findings.judged_at == oil::ViscosityAt::celsius_100 ? "100 C" : "40 C";
    std::string text;
    if (findings.change_percent) {
        const bool thinner = *findings.change_percent < 0;
        text = "At " + where + " the oil is " + figure(std::abs(*findings.change_percent), 1) + " % " +
               (thinner ? "thinner" : "thicker") + " than " + findings.reference + ".";
    } else {
        text = "No reference: the new oil's viscosity at " + where + " is not known.";
    }
    return text + grade_sentence(findings) + floor_sentence(findings) + index_sentence(findings) +
           petrol_sentence(assessment);
}

std::string rate_words(const oil::ElementRate& rate) { return hourly_words(rate) + standing_words(rate); }

std::string rate_and_distance_words(const oil::ElementRate& rate) {
    std::string text = hourly_words(rate);
    if (rate.ppm_per_1000km)
        text += ", " + range_words(rate.ppm_per_1000km->first, rate.ppm_per_1000km->second) + " in 1 000 km";
    return text + standing_words(rate);
}

} // namespace sumpbook::compose
