// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "model/quantity/dates.h"
#include "reports/document/document.h"

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

namespace sumpbook::compose {

/// What every report says of itself: which bikes, as of which day, and which garage file, so that a reader
/// can hold the paper against the file later.
struct ReportFront {
    std::vector<std::string> bikes; ///< Names; empty: the garage has none.
    std::vector<std::string> about; ///< One line a bike, from `about_bike`; empty: left out.
    Date as_of;
    std::string garage_file;   ///< Its name without the folders, which are nobody's business.
    std::string fingerprint;   ///< As printed: "7k2mf-9q0tz-...".
    std::uint64_t records = 0; ///< How many the fingerprint covers.
};

using Pictures = std::vector<std::shared_ptr<const plot::Plot>>;

/// "Tellurin R750, 2009; odometer 63 735 km on 20 Apr 2024": what tells a reader which machine it is; no
/// number plate or VIN, which are private. Readings after the day are left out.
[[nodiscard]] std::string about_bike(const Bike& bike, Date as_of);

/// Title with the bikes' names, and the facts of `front`.
[[nodiscard]] document::Document report_front(const std::string& title, const ReportFront& front);
/// What the fingerprint is for and what it cannot tell; the last section of every report.
void add_report_foot(document::Document& text, const ReportFront& front);

/// Those with something to see; `otherwise` stands there where none has.
void add_pictures(document::Document& text, const Pictures& pictures, const std::string& otherwise);

/// "1 stop for fuel", "12 stops for fuel" of ("stop for fuel", "stops for fuel").
[[nodiscard]] std::string counted(std::size_t number, const char* one, const char* several);

} // namespace sumpbook::compose
