// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/fingerprint.h"
#include "model/store/handover.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

#include <optional>
#include <string>

namespace sumpbook::compose {

/// What the file will show, and what can still be seen of what is left out: said before it is written.
[[nodiscard]] document::Document hand_over_preview_text(const store::HandOverPreview& preview,
                                                        const store::Withheld& withheld);

/// The newest fingerprint of the garage that the written file lines up with; absent: none was printed.
struct HandedOver {
    store::WrittenOut written;
    std::optional<store::FingerprintRecord> fingerprint;
};
[[nodiscard]] document::Document handed_over_text(const store::HandOverPreview& preview,
                                                  const HandedOver& file);
/// Both in one.
[[nodiscard]] document::Value handed_over_json(const store::HandOverPreview& preview,
                                               const store::Withheld& withheld, const HandedOver& file);

} // namespace sumpbook::compose
