// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/review/file_findings.h"

#include "model/review/attachment_findings.h"
#include "model/review/fingerprint_findings.h"
#include "model/review/recording_findings.h"

#include <algorithm>

namespace sumpbook::review {
namespace {

void append(std::vector<Finding>& to, std::vector<Finding> more) {
    std::ranges::move(more, std::back_inserter(to));
}

void add_torn(const store::GarageFile& file, std::vector<Finding>& findings) {
    if (file.torn_bytes() == 0) return;
    findings.push_back(make_finding("torn-tail", "",
                                    "The last save was cut short: " + std::to_string(file.torn_bytes()) +
                                        " bytes at the end of the file are left out. Look whether your last "
                                        "entry is there. The next save "
                                        "sets these bytes aside in a file of their own."));
}

std::string steps(std::size_t frames) { return std::to_string(frames) + (frames == 1 ? " save" : " saves"); }

void add_withheld(const store::GarageFile& file, std::vector<Finding>& findings) {
    const auto add = [&](std::size_t frames, const std::string& what) {
        if (frames == 0) return;
        findings.push_back(make_finding("parts-withheld", "",
                                        "Of " + steps(frames) + " " + what +
                                            ". Their hashes are here, so that the rest still verifies."));
    };
    add(file.withheld(Part::open), "the entries themselves were erased or left out");
    add(file.withheld(Part::money), "the money was left out");
    add(file.withheld(Part::personal), "the notes, names and places were left out");
    const auto left_out = std::ranges::count_if(file.attachments(), [](const auto& a) { return !a.shown; });
    if (left_out == 0) return;
    findings.push_back(make_finding(
        "parts-withheld", "",
        "The bytes of " + std::to_string(left_out) + (left_out == 1 ? " attachment" : " attachments") +
            " were left out. The hashes are here, so that the rest still verifies."));
}

} // namespace

std::vector<Finding> file_findings(const store::GarageFile& file, const Garage& garage, RecordedTime now,
                                   const std::vector<store::Hash256>& damaged) {
    std::vector<Finding> findings;
    for (const auto& found : file.findings())
        findings.push_back(make_finding(found.id, "", found.sentence));
    add_torn(file, findings);
    add_withheld(file, findings);
    append(findings, attachment_findings(file, garage, damaged));
    append(findings, recording_findings(file, garage, now));
    append(findings, fingerprint_findings(file));
    return findings;
}

} // namespace sumpbook::review
