// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/decimal.h"
#include "model/quantity/units.h"

#include <string>

namespace sumpbook {

/// A number from the outside with its unit, kept exactly as written. The unit's type keeps litres and
/// kilometres apart. Compared as written: 1.5 L and 1500 mL are different records of the same amount.
template <class Unit>
struct Written {
    Decimal number;
    Unit unit{};
    bool operator==(const Written& other) const {
        return number.same_as_written(other.number) && unit == other.unit;
    }
};

template <class Unit>
[[nodiscard]] std::string text_of(const Written<Unit>& written) {
    return written.number.text() + " " + std::string(symbol(written.unit));
}

} // namespace sumpbook
