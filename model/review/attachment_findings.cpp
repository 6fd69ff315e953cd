// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/review/attachment_findings.h"

#include "model/review/subject_name.h"

#include <algorithm>
#include <map>

namespace sumpbook::review {
namespace {

using store::Hash256;
using Spot = store::AttachmentSpot;

/// The newest record that names an attachment.
struct Reference {
    const NamedRecord* record = nullptr;
    const AttachmentRef* file = nullptr;
};
using References = std::map<Hash256, Reference>;

References references_in(const std::vector<NamedRecord>& records) {
    References references;
    for (const auto& record : records) {
        const auto* entry = std::get_if<Entry>(&record.record.content);
        if (entry == nullptr) continue;
        for (const auto& file : entry->attachments) {
            auto& known = references[file.part_hash];
            if (known.record == nullptr || known.record->record.recorded <= record.record.recorded)
                known = {&record, &file};
        }
    }
    return references;
}

std::string bytes_words(std::uint64_t bytes) {
    return std::to_string(bytes) + (bytes == 1 ? " byte" : " bytes");
}

std::string spot_words(const Spot& spot) {
    return bytes_words(spot.length) + ", from byte " + std::to_string(spot.at) + " of the garage file on";
}

Finding about(std::string_view id, const Garage& garage, const Reference& reference, std::string sentence) {
    auto finding = make_finding(id, subject_name(garage, reference.record->subject), std::move(sentence));
    finding.entry_ids = {reference.record->id};
    return finding;
}

Finding damaged_finding(const Garage& garage, const References& references, const Spot& spot) {
    const std::string advice =
        " no longer match their hash: they were changed or lost after they were saved. "
        "All entries are whole. A backup may have the file: sumpbook recover FILE --to NEW, then sumpbook merge "
        "NEW BACKUP --to OUT. If you still have the original, attach it again.";
    const auto found = references.find(spot.hash);
    if (found == references.end())
        return make_finding("attachment-damaged", "",
                            "The bytes of an attachment that no entry here names (" + spot_words(spot) + ")" +
                                advice);
    return about("attachment-damaged", garage, found->second,
                 "The bytes of \"" + found->second.file->name + "\" (" + spot_words(spot) + ")" + advice);
}

Finding missing_finding(const Garage& garage, const Reference& reference) {
    return about("attachment-missing", garage, reference,
                 "The entry names the file \"" + reference.file->name + "\" (" +
                     bytes_words(reference.file->size_bytes) +
                     "), and this garage file does not hold it. Another copy may: merge it.");
}

/// Whether every entry shows which attachments it names: only then can one be said to be named by none.
bool all_references_show(const store::GarageFile& file) {
    return file.withheld(Part::open) == 0 && file.withheld(Part::personal) == 0;
}

} // namespace

std::vector<Finding> attachment_findings(const store::GarageFile& file, const Garage& garage,
                                         const std::vector<Hash256>& damaged) {
    std::vector<Finding> findings;
    auto references = references_in(file.records());
    const bool complete = all_references_show(file);
    for (const auto& spot : file.attachments()) {
        if (std::ranges::find(damaged, spot.hash) != damaged.end()) {
            findings.push_back(damaged_finding(garage, references, spot));
        } else if (complete && !references.contains(spot.hash)) {
            findings.push_back(
                make_finding("attachment-unreferenced", "",
                             "An attachment is here that no entry names" +
                                 (spot.shown ? " (" + spot_words(spot) + ")" : std::string()) +
                                 ". The entry may be in another copy of the garage. It does no harm."));
        }
    }
    for (const auto& spot : file.attachments())
        references.erase(spot.hash);
    for (const auto& [hash, reference] : references)
        findings.push_back(missing_finding(garage, reference));
    return findings;
}

} // namespace sumpbook::review
