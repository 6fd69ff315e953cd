// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/time_stamps.h"

#include <fmt/format.h>

namespace sumpbook::compose {
namespace {

std::string signer_of(const store::TimeStamp& stamp) {
    return stamp.signer.empty() ? "an authority that it does not name" : stamp.signer;
}

std::string_view slug(const CheckedTimeStamp& checked) {
    if (!checked.looked_at) return "not-tested";
    return checked.reason ? "refused" : "holds";
}

std::string holds_words(const CheckedTimeStamp& checked) {
    std::string words =
        fmt::format("Time stamp: the fingerprint, and so all that it covers, existed at {}, says {}.",
                    iso_text(checked.stamp.time), signer_of(checked.stamp));
    if (checked.ran_out_since && checked.stamp.signer_until) {
        words += fmt::format(
            " Its certificate has run out since, at {}; the stamp was made before and stands, as long "
            "as its key stayed in its hands.",
            iso_text(*checked.stamp.signer_until));
    }
    return words;
}

} // namespace

Result<CheckedTimeStamp> checked_time_stamp(store::ByteView answer, const std::optional<std::string>& ca_pem,
                                            RecordedTime now) {
    const auto stamp = store::read_time_stamp(answer);
    if (!stamp) return pass_on(stamp.error());
    CheckedTimeStamp checked{.stamp = *stamp};
    if (!ca_pem) return checked;
    checked.looked_at = true;
    if (const auto holds = store::verify_time_stamp(answer, *ca_pem); !holds)
        checked.reason = holds.error().sentence;
    checked.ran_out_since = stamp->signer_until && *stamp->signer_until < now;
    return checked;
}

document::Value time_stamps_json(const std::vector<CheckedTimeStamp>& stamps) {
    document::Array items;
    for (const auto& checked : stamps) {
        document::Object json;
        json.add("answer", slug(checked)).add("time", iso_text(checked.stamp.time));
        json.add("signer",
                 checked.stamp.signer.empty() ? document::Value() : document::Value(checked.stamp.signer));
        json.add("reason", checked.reason ? document::Value(*checked.reason) : document::Value());
        items.emplace_back(std::move(json));
    }
    return items;
}

document::Document time_stamps_text(const std::vector<CheckedTimeStamp>& stamps) {
    document::Document words;
    for (const auto& checked : stamps) {
        if (!checked.looked_at) {
            words.sentence(
                fmt::format("A time stamp of {} by {} is there. It was not tested: give the certificate of "
                            "the authority with --ca FILE.",
                            iso_text(checked.stamp.time), signer_of(checked.stamp)));
        } else if (checked.reason) {
            words.sentence(*checked.reason, document::Severity::danger);
        } else {
            words.sentence(holds_words(checked), document::Severity::good);
        }
    }
    return words;
}

} // namespace sumpbook::compose
