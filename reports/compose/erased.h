// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "model/store/erasure.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

#include <string>
#include <vector>

namespace sumpbook::compose {

/// Those of the bikes that were erased for their own sake.
[[nodiscard]] std::vector<store::ErasedRecord> erased_of(const std::vector<const Bike*>& bikes,
                                                         const std::vector<store::ErasedRecord>& all);

/// "Erased: k7-142 on 3 May 2026, the workshop's name". One sentence for all; empty for none.
[[nodiscard]] std::string erased_sentence(const std::vector<store::ErasedRecord>& erased);
[[nodiscard]] document::Array erased_json(const std::vector<store::ErasedRecord>& erased);

/// What is left of one: that it was erased, when and why, or under which id it was recorded again.
[[nodiscard]] document::Value erased_page_json(const store::ErasedRecord& erased);
[[nodiscard]] document::Document erased_page_text(const store::ErasedRecord& erased);

/// For an entry that was recorded again because what it stands for had been saved with an erased one.
[[nodiscard]] std::string recorded_again_sentence(const RecordedTime& erased);

} // namespace sumpbook::compose
