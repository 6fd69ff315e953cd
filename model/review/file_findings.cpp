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
                                        "entry is there. A copy that was cut short on its way looks the "
                                        "same: compare it with the original. The next save "
                                        "sets these bytes aside in a file of their own."));
}

void add_withheld(const store::GarageFile& file, std::vector<Finding>& findings) {
    const auto add = [&](std::size_t frames, const std::string& of, const std::string& what) {
        if (frames == 0) return;
        const auto words = std::to_string(frames) + " " + of + (frames == 1 ? "" : "s");
        findings.push_back(make_finding("parts-withheld", "",
                                        "Left out of " + words + ": " + what + ". The rest still verifies."));
    };
    add(file.withheld(Part::open), "save", "the entries themselves, or they were erased");
    add(file.withheld(Part::money), "save", "the money");
    add(file.withheld(Part::personal), "save", "the notes, names and places");
    const auto left_out = std::ranges::count_if(file.attachments(), [](const auto& a) { return !a.shown; });
    add(static_cast<std::size_t>(left_out), "attachment", "the bytes");
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
