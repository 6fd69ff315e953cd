// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/garage/torque.h"

#include "embedded/torque_csv.h"
#include "model/quantity/data_table.h"

#include <string>

namespace sumpbook {
namespace {

/// "m8 × 1,25" -> "M8x1.25": capitals, no blanks, one sign for the pitch and a point.
std::string condensed(std::string_view thread) {
    constexpr std::string_view times = "\u00d7";
    std::string condensed;
    while (!thread.empty()) {
        if (thread.starts_with(times)) {
            condensed += 'x';
            thread.remove_prefix(times.size());
            continue;
        }
        const char c = thread.front();
        thread.remove_prefix(1);
        if (c == ' ') continue;
        condensed += c == 'm' ? 'M' : c == 'X' || c == '*' ? 'x' : c == ',' ? '.' : c;
    }
    return condensed;
}

bool names(const DataRow& row, const std::string& thread) {
    const auto x = thread.find('x');
    if (row["thread"] != thread.substr(0, x)) return false;
    if (x == std::string::npos) return row["coarse"] == "yes";
    const auto pitch = Decimal::parse(std::string_view(thread).substr(x + 1));
    return pitch && *pitch == row.required("pitch_mm");
}

/// Exact: four digits times three.
Decimal product(const Decimal& a, const Decimal& b) { return multiply(a, b).value(); }

} // namespace

double tightening_torque_nm(double k_factor, double diameter_mm, double preload_n) {
    return k_factor * (diameter_mm / 1000) * preload_n;
}

std::optional<TorqueBand> torque_band(std::string_view thread) {
    const std::string wanted = condensed(thread);
    for (const DataRow& row : read_data_table(data::torque_csv())) {
        if (!names(row, wanted)) continue;
        return TorqueBand{product(row.required("nm_8_8"), Decimal{25, 2}),
                          product(row.required("nm_12_9"), Decimal{125, 2})};
    }
    return std::nullopt;
}

TorquePlausibility judge_torque(std::string_view thread, const WrittenTorque& torque) {
    const auto band = torque_band(thread);
    if (!band) return TorquePlausibility::unknown_thread;
    const double nm = newton_metres_of(torque);
    if (nm > band->highest_nm.to_double()) return TorquePlausibility::too_high;
    if (nm < band->lowest_nm.to_double()) return TorquePlausibility::too_low;
    return TorquePlausibility::plausible;
}

} // namespace sumpbook
