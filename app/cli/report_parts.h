// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/session.h"
#include "reports/compose/report_front.h"
#include "reports/plot/qr_code.h"

namespace sumpbook::cli {

/// Columns of a report that goes into a text file, whatever terminal it is made in.
inline constexpr int text_file_width = 80;

/// The bikes meant, the day, the garage file and its fingerprint. The fingerprint is saved in the garage, as
/// `fingerprint` does, so that `verify` can later say what was changed; where the file cannot be written to
/// it stands on the report all the same, and a remark says so.
[[nodiscard]] Result<compose::ReportFront> report_front_of(Session& session);

/// The QR code of that fingerprint.
[[nodiscard]] Result<plot::QrCode> fingerprint_code_of(Session& session);

// Each for the bikes meant, as they stood on the day.
[[nodiscard]] Result<document::Document> due_report(Session& session, const compose::ReportFront& front);
[[nodiscard]] Result<document::Document> oil_report(Session& session, const compose::ReportFront& front);
[[nodiscard]] Result<document::Document> costs_report(Session& session, const compose::ReportFront& front);
[[nodiscard]] Result<document::Document> history_report(Session& session, const compose::ReportFront& front);

} // namespace sumpbook::cli
