// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"

#include <optional>
#include <string_view>
#include <vector>

namespace sumpbook::cost {

/// The first amount of liquid named in a text: "4 L can of 10W-40" holds 4 L. Absent where none is named.
[[nodiscard]] std::optional<Volume> volume_named_in(std::string_view text);

/// Oil bought by the can, for a garage that counts it per litre used. A can is a cost entry of category oil
/// whose text names its volume. Its money is shared out over the litres that oil changes and top-ups put
/// in, at the mean price of the litres bought until then (DESIGN); a can without a volume in its text counts
/// when bought.
class OilCans {
public:
    OilCans(const Bike& bike, const GarageSettings& settings);

    /// True for a can whose money counts by the litre, and so not when it was bought.
    [[nodiscard]] bool is_shared_out(const Entry& entry) const;
    /// What the oil of an oil change or top-up was worth, rounded half to even. Absent for other entries,
    /// without a volume, and before any can was bought.
    [[nodiscard]] std::optional<Money> worth_of_oil_in(const Entry& entry) const;

private:
    struct Can {
        Date date;
        Volume volume;
        Money price; ///< In the garage's currency.
    };
    const GarageSettings& settings_;
    std::vector<Can> cans_;
};

} // namespace sumpbook::cost
