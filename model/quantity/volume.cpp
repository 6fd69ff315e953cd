// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/volume.h"

#include <algorithm>
#include <cmath>

namespace sumpbook {
namespace {
constexpr double picolitres_per_litre = 1e12;
}

std::int64_t picolitres_in(VolumeUnit unit) {
    switch (unit) {
    case VolumeUnit::l:
        return 1'000'000'000'000;
    case VolumeUnit::ml:
        return 1'000'000'000;
    case VolumeUnit::us_gal:
        return 3'785'411'784'000;
    case VolumeUnit::imp_gal:
        return 4'546'090'000'000;
    case VolumeUnit::us_qt:
        return 946'352'946'000;
    }
    return 0;
}

Volume Volume::from_litres(double litres) {
    constexpr auto limit = static_cast<double>(sum_limit);
    return Volume(std::llround(std::clamp(litres * picolitres_per_litre, -limit, limit)));
}

double Volume::litres() const { return in(VolumeUnit::l); }

double Volume::in(VolumeUnit unit) const {
    return static_cast<double>(picolitres_) / static_cast<double>(picolitres_in(unit));
}

Result<Volume> volume_of(const WrittenVolume& written) {
    const auto pl = scaled_to_integer(written.number, picolitres_in(written.unit), 1);
    if (!pl || *pl > most_volume.picolitres() || *pl < -most_volume.picolitres()) {
        return refuse("The volume is too large: at most 1 000 000 L.",
                      {.file = {}, .line = {}, .column = {}, .text = written.number.text()});
    }
    return Volume::from_picolitres(*pl);
}

Decimal in_unit(Volume volume, VolumeUnit unit, int scale) {
    return decimal_ratio(volume.picolitres(), picolitres_in(unit), scale);
}

} // namespace sumpbook
