// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/dates.h"
#include "model/store/fingerprint.h"
#include "model/store/signature.h"

#include <string>
#include <string_view>

namespace sumpbook::store {

/// What a workshop or an owner signs: this fingerprint was shown to me on this day. A few lines of text that
/// can be mailed or printed; app/guide/stamps.md has them byte by byte.
struct Stamp {
    TypedFingerprint fingerprint;
    Date date;        ///< By the signer's clock.
    std::string name; ///< Whoever signs, as they call themselves; may be empty.
    std::string note; ///< May be empty.
    PublicKey key{};
    Signature signature{};
};

/// Longest name or note, in bytes of UTF-8.
inline constexpr std::size_t max_stamp_text_bytes = 1000;

/// Refused: a name or note that is too long, not UTF-8 or holds control characters. Runs of blanks count as
/// one, so that a stamp survives mail and paper.
[[nodiscard]] Result<Stamp> sign_stamp(const PrivateKey& key, TypedFingerprint fingerprint, const Date& date,
                                       std::string_view name, std::string_view note);
/// Whether the signature fits the rest, by the key that the stamp itself names. Who holds that key is another
/// question.
[[nodiscard]] bool is_signed(const Stamp& stamp);
/// The bytes that are signed.
[[nodiscard]] std::string signed_text(const Stamp& stamp);

[[nodiscard]] std::string stamp_text(const Stamp& stamp);
/// Refused, with the line: what is no stamp, a field missing, twice or not readable.
[[nodiscard]] Result<Stamp> read_stamp(std::string_view text);

} // namespace sumpbook::store
