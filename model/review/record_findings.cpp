// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/review/record_findings.h"

#include "model/garage/versions.h"
#include "model/store/erasure.h"

#include <algorithm>

namespace sumpbook::review {
namespace {

const Bike* bike_of(const std::vector<const Bike*>& bikes, const SubjectId& subject) {
    const auto found = std::ranges::find(bikes, subject, &Bike::id);
    return found == bikes.end() ? nullptr : *found;
}

/// "This entry", "The plan item engine-oil".
std::string what(const RecordContent& content) {
    struct What {
        std::string operator()(const GarageSettings&) const { return "The settings were"; }
        std::string operator()(const BikeDetails&) const { return "The details of the bike were"; }
        std::string operator()(const DataCardValue& card) const {
            return "The line \"" + card.name + "\" of the data card was";
        }
        std::string operator()(const PlanItem& item) const { return "The plan item " + item.slug + " was"; }
        std::string operator()(const Baseline& base) const {
            return "When " + base.slug + " was last done before the record was";
        }
        std::string operator()(const Entry&) const { return "This entry was"; }
        std::string operator()(const Withdrawal&) const { return "This was withdrawn in one place and corrected in another, so it was"; }
    };
    return std::visit(What{}, content);
}

} // namespace

std::vector<Finding> conflict_findings(const std::vector<const Bike*>& bikes, bool of_garage,
                                       const std::vector<NamedRecord>& records) {
    std::vector<Finding> findings;
    for (const auto& conflict : conflicts(records)) {
        const auto& used = records[conflict.current.used];
        const Bike* bike = bike_of(bikes, used.subject);
        const bool settings = std::holds_alternative<GarageSettings>(used.record.content);
        if (bike == nullptr && !(of_garage && settings)) continue;
        Finding finding =
            make_finding("entry-conflict", bike == nullptr ? std::string() : bike->details.value.name,
                         what(used.record.content) + " changed in two places; " + used.id +
                             ", recorded last, is used. Say which one stands: sumpbook log settle " + used.id);
        finding.entry_ids.push_back(used.id);
        for (const auto head : conflict.current.heads) {
            if (head != conflict.current.used) finding.entry_ids.push_back(records[head].id);
        }
        findings.push_back(std::move(finding));
    }
    return findings;
}

std::vector<Finding> erased_findings(const std::vector<const Bike*>& bikes, const store::ChainIndex& index,
                                     const std::vector<NamedRecord>& records) {
    std::vector<Finding> findings;
    for (const auto& erased : store::erased_records(index, records)) {
        const Bike* bike = bike_of(bikes, erased.subject);
        if (bike == nullptr || !erased.for_itself) continue;
        const auto* withdrawal = std::get_if<Withdrawal>(&erased.by->record.content);
        std::string sentence = "Erased by the owner on " + iso_text(erased.by->record.recorded).substr(0, 10);
        if (withdrawal != nullptr && withdrawal->reason) sentence += ": " + *withdrawal->reason;
        Finding finding = make_finding("entry-erased", bike->details.value.name, sentence + ".");
        finding.entry_ids = {erased.id};
        findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace sumpbook::review
