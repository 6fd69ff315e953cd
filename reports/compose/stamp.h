// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/stamp.h"
#include "reports/compose/integrity.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

#include <optional>

namespace sumpbook::compose {

/// What a stamp turned out to be against the key that the signer gave out.
enum class StampAnswer {
    fits,
    another_key, ///< It was signed with another key than the one given.
    changed,     ///< The signature does not fit what the stamp says.
};
struct CheckedStamp {
    store::Stamp stamp;
    StampAnswer answer = StampAnswer::changed;
    std::optional<store::FingerprintCheck> garage; ///< Of the garage file, where one was named and it fits.
    VerifiedNames names;                           ///< Of what `garage` is about.
};
[[nodiscard]] CheckedStamp checked_stamp(store::Stamp stamp, const store::PublicKey& key);

[[nodiscard]] document::Value stamp_json(const store::Stamp& stamp);
[[nodiscard]] document::Value checked_stamp_json(const CheckedStamp& checked);
[[nodiscard]] document::Document checked_stamp_text(const CheckedStamp& checked);

/// Two files that "stamp new-key" made.
struct NewKey {
    std::string private_file;
    std::string public_file;
    std::string name; ///< As it will stand on stamps; may be empty.
    store::PublicKey key{};
};
[[nodiscard]] document::Value new_key_json(const NewKey& key);
[[nodiscard]] document::Document new_key_text(const NewKey& key);

} // namespace sumpbook::compose
