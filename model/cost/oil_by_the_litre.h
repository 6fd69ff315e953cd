// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"

#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>

namespace sumpbook::cost {

/// The first amount of liquid named in a text: "4 L can of 10W-40" holds 4 L. Absent where none is named.
[[nodiscard]] std::optional<Volume> volume_named_in(std::string_view text);

/// Oil and what it cost.
struct OilWorth {
    Volume volume;
    Money money; ///< In the garage's currency.
};

/// Oil bought by the can, as a stock. A can is a cost entry of category oil whose text names its volume and
/// whose price is known in the garage's currency; any other counts when bought. Each oil change and top-up of
/// the engine takes its litres from the stock, day by day, at the mean price of the litres in it (DESIGN),
/// and what was bought is always what was taken and what is left. Nothing is taken for a workshop's bill,
/// which has the oil in it: one with money of its own and an invoice, or of the same visit as a workshop's
/// job (DESIGN).
class OilCans {
public:
    OilCans(const Bike& bike, const GarageSettings& settings);

    /// True for a can whose money counts by the litre, and so not when it was bought.
    [[nodiscard]] bool is_shared_out(const std::string& entry_id) const { return cans_.contains(entry_id); }
    /// What the oil of an oil change or top-up was worth, beside the money the entry has itself. Absent for
    /// other entries, without a volume, and where the stock was empty; where it held too little, what it
    /// held.
    [[nodiscard]] std::optional<Money> worth_of_oil_in(const std::string& entry_id) const;
    /// Bought and not taken yet; absent: none.
    [[nodiscard]] std::optional<OilWorth> left() const;

private:
    void take(const LogEntry& entry, Volume volume);

    std::set<std::string> cans_;
    std::map<std::string, Money> taken_; ///< By entry.
    OilWorth stock_;
};

} // namespace sumpbook::cost
