// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/recover.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

#include <string>

namespace sumpbook::compose {

/// What of a file can be kept, what cannot, and what must have been there: shown before anything is written.
[[nodiscard]] document::Document recovery_plan_text(const std::string& path, const store::RecoverPlan& plan);

/// What was written, and what to do next.
[[nodiscard]] document::Document recovered_text(const std::string& path, const store::RecoverPlan& plan,
                                                const store::WrittenOut& written);
/// Both in one.
[[nodiscard]] document::Value recovered_json(const std::string& path, const store::RecoverPlan& plan,
                                             const store::WrittenOut& written);

} // namespace sumpbook::compose
