// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/review/damage_findings.h"

namespace sumpbook::review {
namespace {

std::string stretch_words(const store::BrokenStretch& stretch) {
    std::string words = "Bytes " + std::to_string(stretch.at) + " to " +
                        std::to_string(stretch.until > stretch.at ? stretch.until - 1 : stretch.at) +
                        " do not verify: " + stretch.what;
    if (!stretch.heading.empty()) words += " (" + stretch.heading + ")";
    return words + ".";
}

std::string missing_words(const store::MissingFrames& missing) {
    const bool one = missing.first == missing.last;
    return std::string(one ? "Frame " : "Frames ") + std::to_string(missing.first + 1) +
           (one ? "" : " to " + std::to_string(missing.last + 1)) + " of the entries " + missing.chain +
           "-... cannot be read here, and others build on " + (one ? "it" : "them") +
           ". Another copy may have " + (one ? "it." : "them.");
}

} // namespace

std::vector<Finding> damage_findings(const store::RecoverPlan& plan) {
    std::vector<Finding> findings;
    if (plan.garage != store::GarageKnown::header)
        findings.push_back(
            make_finding("header-damaged", "",
                         "The first 40 bytes of the file, which say whose garage it is, do not "
                         "verify."));
    for (const auto& stretch : plan.broken)
        findings.push_back(make_finding("frame-damaged", "", stretch_words(stretch)));
    for (const auto& missing : plan.missing)
        findings.push_back(make_finding("frame-missing", missing.bike, missing_words(missing)));
    return findings;
}

} // namespace sumpbook::review
