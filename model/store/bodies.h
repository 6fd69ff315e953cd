// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/record.h"
#include "model/quantity/problem.h"
#include "model/store/frame.h"

#include <functional>

namespace sumpbook::store {

/// Records on their way into one frame: the bodies of its three parts. An empty money or personal body
/// means that the part does not exist.
struct Batch {
    std::uint32_t count = 0;
    std::array<Bytes, 3> parts;
};

/// All records in order, in as few batches as the limit of a part allows. Refused: a record that alone
/// passes a limit, and a value that could not be read back (a text that is not UTF-8).
[[nodiscard]] Result<std::vector<Batch>> encode_records(const std::vector<Record>& records);

/// Why a record could not be read.
struct BodyFault {
    std::size_t index = 0; ///< Of the record in its frame, from 0.
    std::string what;
};

/// The records of a verified frame whose open part is shown. Fields of withheld parts are absent.
[[nodiscard]] tl::expected<std::vector<Record>, BodyFault> decode_records(const Frame& frame);
/// The same into places of the caller's, which `place` gives: asked for 0, 1, ... first, then for each again.
/// Each holds a fresh record.
[[nodiscard]] tl::expected<void, BodyFault>
decode_records_into(const Frame& frame, const std::function<Record&(std::size_t)>& place);

/// Whether `decode_records` would find no fault, without making any record.
[[nodiscard]] bool can_be_decoded(const Frame& frame);

} // namespace sumpbook::store
