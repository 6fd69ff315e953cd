// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/review/recording_findings.h"

#include "model/review/subject_name.h"
#include "model/store/erasure.h"

#include <algorithm>
#include <map>

namespace sumpbook::review {
namespace {

/// Clocks are off by minutes and time zones; a day says that one was set wrong, or set back (our own line).
constexpr std::int64_t a_day_in_seconds = 86'400;

std::string time_words(const RecordedTime& time) {
    const auto text = iso_text(time);
    return text.substr(0, 10) + ", " + text.substr(11, 5) + " UTC";
}

std::string count_words(std::size_t count) {
    return count == 1 ? std::string() : " So it is in " + std::to_string(count) + " places of this run.";
}

/// The records of one chain in which something was met: how many, and the first.
struct Met {
    std::size_t count = 0;
    std::string entry_id;
    SubjectId subject;
    RecordedTime recorded;
    RecordedTime before;
};
using MetByChain = std::map<std::uint32_t, Met>;

void meet(MetByChain& all, std::uint32_t chain, const NamedRecord& record, RecordedTime before) {
    auto& met = all[chain];
    if (met.count++ == 0) met = {1, record.id, record.subject, record.record.recorded, before};
}

Finding finding_of(std::string_view id, const Garage& garage, const Met& met, std::string sentence) {
    auto finding = make_finding(id, subject_name(garage, met.subject), std::move(sentence));
    finding.entry_ids = {met.entry_id};
    return finding;
}

/// Each frame with its time and that of the record in front of it in the chain.
void add_times(const store::GarageFile& file, const Garage& garage, RecordedTime now,
               std::vector<Finding>& findings) {
    MetByChain back;
    MetByChain ahead;
    const auto& frames = file.index().frames();
    const auto erased = store::erased_frames(file.records());
    std::vector<RecordedTime> last(frames.size());
    for (std::size_t i = 0; i < frames.size(); ++i) {
        const auto& frame = frames[i];
        bool any_before = frame.parent.has_value();
        if (any_before) last[i] = last[*frame.parent];
        for (std::size_t r = frame.first_record; r < frame.first_record + frame.record_count; ++r) {
            const auto& record = file.records()[r];
            const auto time = record.record.recorded;
            if (time.seconds_since_1970 > now.seconds_since_1970 + a_day_in_seconds)
                meet(ahead, frame.chain, record, now);
            if (store::is_recorded_again(record, erased)) continue;
            if (any_before && time.seconds_since_1970 + a_day_in_seconds < last[i].seconds_since_1970)
                meet(back, frame.chain, record, last[i]);
            last[i] = time;
            any_before = true;
        }
    }
    for (const auto& [chain, met] : back) {
        findings.push_back(finding_of(
            "recorded-out-of-order", garage, met,
            "By the clock this was recorded on " + time_words(met.recorded) +
                ", behind something recorded on " + time_words(met.before) + "." + count_words(met.count) +
                " The order of the entries is certain, their times are not: a clock was set wrong."));
    }
    for (const auto& [chain, met] : ahead) {
        findings.push_back(finding_of("recorded-in-future", garage, met,
                                      "By the clock this was recorded on " + time_words(met.recorded) +
                                          ", which is still to come." + count_words(met.count) +
                                          " Look at the clock of this computer, or of the one it was "
                                          "written on."));
    }
}

/// The names among `wanted` that some record has are taken out.
void keep_unknown(std::vector<RecordName>& wanted, const std::vector<NamedRecord>& records) {
    std::ranges::sort(wanted);
    wanted.erase(std::ranges::unique(wanted).begin(), wanted.end());
    std::vector<bool> here(wanted.size());
    for (const auto& record : records) {
        const auto found = std::ranges::lower_bound(wanted, record.name);
        if (found != wanted.end() && *found == record.name)
            here[static_cast<std::size_t>(found - wanted.begin())] = true;
    }
    std::size_t i = 0;
    std::erase_if(wanted, [&](const RecordName& /*name*/) { return here[i++]; });
}

void add_unknown_versions(const store::GarageFile& file, const Garage& garage,
                          std::vector<Finding>& findings) {
    std::vector<RecordName> wanted;
    for (const auto& record : file.records())
        wanted.insert(wanted.end(), record.record.replaces.begin(), record.record.replaces.end());
    keep_unknown(wanted, file.records());
    if (wanted.empty()) return;
    const auto erased = store::erased_frames(file.records());
    for (const auto& record : file.records()) {
        const bool unknown = std::ranges::any_of(record.record.replaces, [&](const RecordName& name) {
            return std::ranges::binary_search(wanted, name) &&
                   !erased.contains({record.subject, name.frame_hash}); // told as `entry-erased`
        });
        if (!unknown) continue;
        auto finding = make_finding(
            "replaces-unknown", subject_name(garage, record.subject),
            "This stands for an earlier version that is not in this file, or was left out of it. What "
            "counts now is here; another copy may have the earlier version.");
        finding.entry_ids = {record.id};
        findings.push_back(std::move(finding));
    }
}

} // namespace

std::vector<Finding> recording_findings(const store::GarageFile& file, const Garage& garage,
                                        RecordedTime now) {
    std::vector<Finding> findings;
    add_times(file, garage, now, findings);
    add_unknown_versions(file, garage, findings);
    return findings;
}

} // namespace sumpbook::review
