// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/time_stamp.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

#include <optional>
#include <vector>

namespace sumpbook::compose {

/// A time stamp and whether an authority vouches for it.
struct CheckedTimeStamp {
    store::TimeStamp stamp;
    bool looked_at = false;            ///< False: no certificate was given to test it with.
    std::optional<std::string> reason; ///< Why it does not hold; absent where it does, or was not looked at.
    bool ran_out_since = false;        ///< The certificate of its signer has run out after it was made.
};
/// Tested with the certificates of `ca_pem`, if there are any; `now` only tells whether one has run out
/// since. Problem: `answer` is no time stamp.
[[nodiscard]] Result<CheckedTimeStamp>
checked_time_stamp(store::ByteView answer, const std::optional<std::string>& ca_pem, RecordedTime now);

[[nodiscard]] document::Value time_stamps_json(const std::vector<CheckedTimeStamp>& stamps);
[[nodiscard]] document::Document time_stamps_text(const std::vector<CheckedTimeStamp>& stamps);

} // namespace sumpbook::compose
