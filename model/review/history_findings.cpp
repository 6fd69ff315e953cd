// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/review/history_findings.h"

#include "model/garage/vin.h"
#include "model/review/fuel_findings.h"
#include "model/review/workshop_findings.h"
#include "model/usage/odometer.h"

#include <algorithm>
#include <map>

namespace sumpbook::review {
namespace {

Finding about(std::string_view id, const Bike& bike, const LogEntry& entry, std::string sentence) {
    Finding finding = make_finding(id, bike.details.value.name, std::move(sentence));
    finding.entry_ids = {entry.id};
    return finding;
}

void add_odometer_findings(const Bike& bike, std::vector<Finding>& findings) {
    const auto odometer = usage::OdometerSeries::of(bike);
    for (const auto& flag : odometer.flags()) {
        Finding finding = make_finding(usage::slug(flag.kind), bike.details.value.name, flag.sentence);
        finding.entry_ids = {flag.entry_id};
        finding.entry_ids.insert(finding.entry_ids.end(), flag.against_ids.begin(), flag.against_ids.end());
        findings.push_back(std::move(finding));
    }
}

void add_doubts(const Bike& bike, const LogEntry& entry, std::vector<Finding>& findings) {
    for (const auto& doubt : entry.value.doubts) {
        Finding finding = about("unreadable-cell", bike, entry, "Expected: " + doubt.expected);
        finding.place = {.file = doubt.file, .line = {}, .column = doubt.column, .text = doubt.text};
        if (doubt.line != 0) finding.place.line = doubt.line;
        findings.push_back(std::move(finding));
    }
}

void add_dates_outside(const Bike& bike, const LogEntry& entry, std::vector<Finding>& findings) {
    const auto& details = bike.details.value;
    // A valuation or a last bill may follow a sale; riding and work may not.
    const bool money_only = std::holds_alternative<Cost>(entry.value.body);
    if (details.sold && entry.value.date > details.sold->date && !money_only) {
        findings.push_back(about("after-sale", bike, entry,
                                 "Dated " + iso_text(entry.value.date) + ", but the bike was sold on " +
                                     iso_text(details.sold->date) + "."));
    }
    if (details.in_service_date && entry.value.date < *details.in_service_date && !money_only) {
        findings.push_back(about("before-service", bike, entry,
                                 "Dated " + iso_text(entry.value.date) +
                                     ", but the bike's first day on the road was " +
                                     iso_text(*details.in_service_date) + "."));
    }
}

void add_unknown_plan_items(const Bike& bike, const LogEntry& entry, std::vector<Finding>& findings) {
    if (bike.plan.empty()) return; // without a plan every name is as good as another
    for (const auto& slug : entry.value.does) {
        if (find_plan_item(bike, slug) != nullptr) continue;
        findings.push_back(about("unknown-plan-item", bike, entry,
                                 "It says it does \"" + slug + "\", which is not in the plan of this bike."));
    }
}

/// The same amount in two entries of one visit: easily the invoice typed twice.
void add_paid_twice(const Bike& bike, std::vector<Finding>& findings) {
    using Key = std::pair<std::string, std::pair<std::int64_t, Currency>>;
    std::map<Key, const LogEntry*> seen;
    for (const auto& entry : bike.log) {
        const auto& paid = entry.value.paid;
        if (!entry.value.visit || !paid || paid->minor == 0) continue;
        const auto [first, is_new] =
            seen.emplace(Key{*entry.value.visit, {paid->minor, paid->currency}}, &entry);
        if (is_new) continue;
        Finding finding = about("paid-twice", bike, entry,
                                "The same " + text_of(*paid) + " stands in another entry of visit \"" +
                                    *entry.value.visit + "\". If it is one bill, correct one of them.");
        finding.entry_ids.push_back(first->second->id);
        findings.push_back(std::move(finding));
    }
}

void add_vin_findings(const Bike& bike, std::vector<Finding>& findings) {
    const auto& details = bike.details.value;
    if (!details.vin) return;
    const VinFindings vin = inspect_vin(*details.vin);
    Finding finding;
    switch (judge_vin(vin, details.for_us_or_canada)) {
    case VinVerdict::good:
        return;
    case VinVerdict::malformed:
        finding = make_finding("vin-form", details.name, vin.fault);
        break;
    case VinVerdict::digit_differs:
    case VinVerdict::digit_wrong:
        finding = make_finding("vin-check-digit", details.name,
                               std::string("Position 9 would be ") + vin.expected_digit.value_or('?') +
                                   " by the rule of the US and Canada; it is " +
                                   vin.printed_digit.value_or('?') + ". Elsewhere it need not match.");
        if (details.for_us_or_canada == true) {
            finding.severity = Severity::doubt;
            finding.sentence = std::string("Position 9 must be ") + vin.expected_digit.value_or('?') +
                               " for a bike sold in the US or Canada; it is " +
                               vin.printed_digit.value_or('?') + ". Read the number on the frame again.";
        }
        break;
    }
    finding.place.text = *details.vin;
    findings.push_back(std::move(finding));
}

} // namespace

std::vector<Finding> history_findings(const Bike& bike) {
    std::vector<Finding> findings;
    add_vin_findings(bike, findings);
    add_odometer_findings(bike, findings);
    for (const auto& entry : bike.log) {
        add_doubts(bike, entry, findings);
        add_dates_outside(bike, entry, findings);
        add_unknown_plan_items(bike, entry, findings);
    }
    add_paid_twice(bike, findings);
    for (auto& finding : fuel_findings(bike))
        findings.push_back(std::move(finding));
    for (auto& finding : workshop_findings(bike))
        findings.push_back(std::move(finding));
    return findings;
}

} // namespace sumpbook::review
