// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/oil/advice.h"
#include "model/oil/history.h"
#include "model/oil/viscosity_rule.h"
#include "model/oil/wear_rate.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::oil {

/// Everything there is to say of one sample of used oil.
struct SampleAssessment {
    std::string bike;
    std::string sample; ///< Its number, else its id.
    std::string entry_id;
    Date date;
    std::string compartment;
    std::string profile;
    FilledSample filled; ///< Its fill of oil, distance and hours. Points into the garage it was made from.
    std::vector<RatedValue> values; ///< In the order they are printed.
    WholeSample whole;
    Advice advice;
    std::vector<PatternFound> patterns;
    CoolantSign coolant;
    ViscosityFindings viscosity;
    std::vector<WearHistory>
        wear; ///< Of each wear metal whose rate over this fill is known; lead not on leaded petrol.
    DistanceUnit dial_unit = DistanceUnit::km;
    std::optional<LabFlag> laboratory;
    std::optional<std::string> laboratory_words;
    std::optional<Distance> half_interval; ///< Half the plan's interval for engine oil; absent: none planned.
    std::vector<std::string> caveats;      ///< Of the sets used, each with its set's id.
    std::vector<std::string> cautions;     ///< Always some; full sentences.
};

/// A sample of used oil by a profile (numbers.md 6.1, 6.2, 6.4, 6.8, 6.9).
[[nodiscard]] SampleAssessment assess_sample(const OilRecord& record, const LogEntry& sample,
                                             const Profile& profile);
/// Every sample of used oil of a bike, by date.
[[nodiscard]] std::vector<SampleAssessment> assess_samples(const OilRecord& record, const Profile& profile);

/// The profile a bike is judged by: `asked` where given, else the one the owner chose for it, else the
/// default.
[[nodiscard]] Result<Profile> profile_for(const BikeDetails& bike, const std::optional<std::string>& asked);

/// The sample with this number or id; null if there is none.
[[nodiscard]] const LogEntry* find_sample(const Bike& bike, std::string_view number);

} // namespace sumpbook::oil
