// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "model/usage/odometer.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::review {

/// One reading of a fault code.
struct FaultReading {
    std::string entry_id;
    Date date;
    std::optional<Distance> distance;   ///< Where the bike stood; absent: outside the record of distances.
    std::optional<std::uint32_t> count; ///< Of the bike's own counter; 0: looked for and not found.
    std::optional<FaultStatus> status;
    bool cleared = false; ///< Cleared at the end of this reading.
    [[nodiscard]] bool was_there() const { return count != 0U; }
};

/// From one clearing of a code to the next; the first runs from the start of the record, the last to its
/// end.
struct FaultStretch {
    std::optional<Date> from; ///< Absent: no accepted reading of the odometer before it.
    std::optional<Date> until;
    bool from_clearing = false;
    bool until_clearing = false;
    /// Times the fault was there: the largest figure of the bike's counter, which runs on until it is
    /// cleared, or the readings that found the code, whichever is more (DESIGN).
    std::uint32_t times = 0;
    std::optional<Distance> distance; ///< Absent: an end of it is not known.
    /// Times in 1 000 km (numbers.md 7). Absent without a distance above 0.
    std::optional<double> times_per_1000km;
};

enum class FaultState {
    present,   ///< It came back after it was cleared.
    stored,    ///< Found and never cleared: whether it comes back is not known.
    cleared,   ///< Cleared, and not ridden since as far as the record goes.
    temporary, ///< Cleared and ridden, and not found again.
    absent,    ///< Looked for and never found.
};
[[nodiscard]] std::string_view slug(FaultState state);

/// All that is recorded of one code. Codes that differ only in case and blanks are one.
struct FaultHistory {
    std::string code;                    ///< As written last.
    std::optional<std::string> text;     ///< What it stands for, as written last.
    std::vector<FaultReading> readings;  ///< By date.
    std::vector<FaultStretch> stretches; ///< In order; at least one.
    FaultState state = FaultState::stored;
    std::optional<FaultReading> last_seen;
    std::optional<FaultReading> last_cleared;

    [[nodiscard]] std::uint32_t times() const;
    [[nodiscard]] const FaultStretch& since() const { return stretches.back(); }
    /// The stretch before the last clearing; null where it was never cleared.
    [[nodiscard]] const FaultStretch* before() const;
};

/// The codes of a bike, those that are there first. A fault that does not come back after clearing and a
/// ride is temporary, one that does is present (common practice, no source); a ride is any distance above
/// 0 after the clearing in accepted readings of the odometer (DESIGN).
[[nodiscard]] std::vector<FaultHistory> fault_histories(const Bike& bike,
                                                        const usage::OdometerSeries& odometer);

} // namespace sumpbook::review
