// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/dates.h"
#include "model/quantity/problem.h"
#include "model/store/hash.h"
#include "model/store/random_source.h"

#include <optional>
#include <string>
#include <string_view>

namespace sumpbook::store {

// Time stamps of RFC 3161, through OpenSSL: an authority signs a hash and the time it saw it. The hash is the
// fingerprint itself (it is a SHA-256 value), so that any other program can check the answer with the 64
// digits alone. Pure functions on DER bytes; nothing is asked over a network.

/// Longest question or answer that is looked at.
inline constexpr std::size_t max_time_stamp_bytes = 64 * 1024;

/// A question for a time-stamp authority (TimeStampReq): the fingerprint, 64 random bits (the nonce) that the
/// answer must repeat, and the wish for the authority's certificate.
[[nodiscard]] Bytes time_stamp_query(const Hash256& fingerprint, RandomSource& random);

/// What an answer says. Nothing of it is proven before `verify_time_stamp` was asked.
struct TimeStamp {
    Hash256 fingerprint{};
    RecordedTime time; ///< By the authority's clock; fractions of a second are dropped.
    Bytes nonce;       ///< As a number in DER; empty where the answer has none.
    std::string
        signer; ///< The subject of the signing certificate, as it names itself; empty if not in there.
    std::optional<RecordedTime> signer_until; ///< When that certificate runs out.
};
/// The answer of an authority (TimeStampResp) or a bare token. Refused: no such thing, the authority declined
/// (with its words), a hash that is not SHA-256.
[[nodiscard]] Result<TimeStamp> read_time_stamp(ByteView answer);

/// Refused where the answer is not to this question: another fingerprint, another nonce or none.
[[nodiscard]] Result<void> answers_query(const TimeStamp& stamp, ByteView query);

/// Whether an authority that `ca_pem` (one or more certificates) vouches for signed the answer, by its
/// certificates as they stood when the stamp was made. Refused, with the reason: changed since it was signed,
/// not from an authority of that file, a certificate that was not valid at that time. Lists of withdrawn
/// certificates are not looked at: that needs a network.
[[nodiscard]] Result<void> verify_time_stamp(ByteView answer, std::string_view ca_pem);

} // namespace sumpbook::store
