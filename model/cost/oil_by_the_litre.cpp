// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/oil_by_the_litre.h"

#include "model/cost/exchange.h"
#include "model/quantity/number_text.h"

namespace sumpbook::cost {
namespace {

/// The words of a text, as split by blanks.
std::vector<std::string> words_of(std::string_view text) {
    std::vector<std::string> words;
    while (!text.empty()) {
        const auto end = std::min(text.find(' '), text.size());
        if (end > 0) words.emplace_back(text.substr(0, end));
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return words;
}

std::optional<Volume> volume_in(const std::string& number_and_unit) {
    const auto split = split_number_and_unit(number_and_unit);
    if (!split || split->unit.empty()) return std::nullopt;
    const auto unit = read_volume_unit(split->unit);
    if (!unit) return std::nullopt;
    const auto volume = volume_of(WrittenVolume{split->number, *unit});
    return volume && *volume > Volume{} ? std::optional(*volume) : std::nullopt;
}

std::optional<Volume> can_volume(const Entry& entry) {
    const auto* cost = std::get_if<Cost>(&entry.body);
    if (cost == nullptr || cost->valuation || cost->category != "oil" || !cost->text) return std::nullopt;
    return volume_named_in(*cost->text);
}

std::optional<Volume> filled_in(const Entry& entry) {
    std::optional<WrittenVolume> written;
    if (const auto* change = std::get_if<OilChange>(&entry.body)) written = change->volume_in;
    if (const auto* top_up = std::get_if<TopUp>(&entry.body)) written = top_up->volume;
    if (!written) return std::nullopt;
    const auto volume = volume_of(*written);
    return volume ? std::optional(*volume) : std::nullopt;
}

} // namespace

std::optional<Volume> volume_named_in(std::string_view text) {
    const auto words = words_of(text);
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (const auto volume = volume_in(words[i])) return volume;
        if (i + 1 == words.size()) break;
        if (const auto volume = volume_in(words[i] + " " + words[i + 1])) return volume;
    }
    return std::nullopt;
}

OilCans::OilCans(const Bike& bike, const GarageSettings& settings)
    : settings_(settings) {
    for (const auto& entry : bike.log) {
        const auto volume = can_volume(entry.value);
        if (!volume || !entry.value.paid) continue;
        const auto price = converted(*entry.value.paid, settings.currency, entry.value.date, settings);
        if (price) cans_.push_back({entry.value.date, *volume, *price});
    }
}

bool OilCans::is_shared_out(const Entry& entry) const {
    return can_volume(entry) && entry.paid &&
           converted(*entry.paid, settings_.currency, entry.date, settings_).has_value();
}

std::optional<Money> OilCans::worth_of_oil_in(const Entry& entry) const {
    const auto filled = filled_in(entry);
    if (!filled) return std::nullopt;
    Volume bought;
    MoneyByCurrency paid;
    for (const auto& can : cans_) {
        if (can.date > entry.date) continue;
        bought += can.volume;
        paid.add(can.price);
    }
    if (bought <= Volume{}) return std::nullopt;
    const auto minor =
        scaled_to_integer(Decimal(paid.amounts().front().minor), filled->picolitres(), bought.picolitres());
    return minor ? std::optional(Money{*minor, settings_.currency}) : std::nullopt;
}

} // namespace sumpbook::cost
