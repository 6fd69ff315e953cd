// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/backup.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

#include <string>

namespace sumpbook::compose {

/// What was copied, which backups are there now and which were removed. `folder` as it was typed.
[[nodiscard]] document::Document backup_text(const store::Backup& backup, const std::string& folder);
[[nodiscard]] document::Value backup_json(const store::Backup& backup);

} // namespace sumpbook::compose
