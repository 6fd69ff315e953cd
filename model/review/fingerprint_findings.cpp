// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/review/fingerprint_findings.h"

#include <set>

namespace sumpbook::review {
namespace {

std::string fingerprint_words(const store::FingerprintRecord& record) {
    return "The fingerprint printed on " + iso_text(record.printed).substr(0, 10) + " (" +
           store::fingerprint_text(record.fingerprint()).substr(0, 11) + "-...)";
}

/// Whether the file holds anything of a run of entries that the fingerprint covers.
bool covers_something_here(const store::GarageFile& file, const store::FingerprintRecord& record) {
    for (const auto& leaf : record.leaves) {
        for (const auto& head : leaf.heads) {
            if (file.index().find(head.chain) != nullptr) return true;
        }
    }
    return false;
}

/// Nothing is known to have changed, and of some bikes held here it cannot be known.
Finding partly_held(const store::FingerprintCheck& check, const std::string& words) {
    const auto others = check.untold.size() == 1
                            ? std::string("one bike here (or the settings)")
                            : std::to_string(check.untold.size()) + " bikes here (or the settings)";
    const auto why = " of " + others +
                     " it cannot be told what it says: of another garage, begun later, or rewritten. "
                     "\"sumpbook verify\" names them.";
    if (check.lines_up())
        return make_finding("fingerprint-record-foreign", "",
                            words + " lines up with what it is known to cover;" + why);
    return make_finding("fingerprint-missing", "",
                        words + " can be tested in a small part only, which is as it was;" + why);
}

/// Nothing where it lines up.
std::vector<Finding> held_against(const store::GarageFile& file, const store::FingerprintRecord& record) {
    const auto typed = store::TypedFingerprint::read(store::hex_text(record.fingerprint()));
    if (!typed) return {};
    const auto check = file.check(*typed);
    const auto words = fingerprint_words(record);
    if (check.answer == store::FingerprintAnswer::changed) {
        return {make_finding("fingerprint-changed", "",
                             words + " no longer lines up. The first that differs: " + check.place +
                                 ". Something was changed since; ask whoever had the file.")};
    }
    if (check.answer == store::FingerprintAnswer::partly) return {partly_held(check, words)};
    if (check.answer != store::FingerprintAnswer::missing) return {};
    if (check.covered_entries == 0 && !covers_something_here(file, record)) {
        return {make_finding("fingerprint-record-foreign", "",
                             words + " covers nothing that is in this file. It does no harm.")};
    }
    return {make_finding("fingerprint-missing", "",
                         words + " covers something that is not in this file: " + check.place +
                             ". Another copy may have it: merge it.")};
}

} // namespace

std::vector<Finding> fingerprint_findings(const store::GarageFile& file) {
    std::vector<Finding> findings;
    std::set<store::Hash256> done;
    for (const auto& record : file.fingerprints()) {
        if (!done.insert(record.fingerprint()).second) continue;
        for (auto& finding : held_against(file, record))
            findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace sumpbook::review
