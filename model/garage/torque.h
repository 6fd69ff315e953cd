// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/torque.h"

#include <optional>
#include <string_view>

namespace sumpbook {

/// Torque in N m that gives a bolt of `diameter_mm` the tension `preload_n`: T = K d F. The factor K is 0.20
/// for zinc-plated, 0.18 for lubricated, 0.30 for plain black bolts. Friction alone leaves the tension
/// unsure by some 8 %, even in a laboratory.
///
/// SOURCE: Shigley's Mechanical Engineering Design, section 8-8, tables 8-14 and 8-15.
[[nodiscard]] double tightening_torque_nm(double k_factor, double diameter_mm, double preload_n);

/// Beyond these a typed torque is likely a slip of the pen. N m, a value on the limit is still plausible.
struct TorqueBand {
    Decimal lowest_nm;  ///< 0.25 x the torque of a class 8.8 bolt at friction 0.12 (DESIGN).
    Decimal highest_nm; ///< 1.25 x the torque of a class 12.9 bolt at friction 0.14 (DESIGN).
};

/// The band for M8, m8, M8x1.25, M8 x 1, M10×1.25: M5 to M14, coarse and the usual fine pitches. Absent for
/// any other thread.
///
/// SOURCE: VDI 2230 (torque.csv).
[[nodiscard]] std::optional<TorqueBand> torque_band(std::string_view thread);

enum class TorquePlausibility { plausible, too_low, too_high, unknown_thread };
/// Published workshop tables differ by half, so only what lies far outside is doubted.
[[nodiscard]] TorquePlausibility judge_torque(std::string_view thread, const WrittenTorque& torque);

} // namespace sumpbook
