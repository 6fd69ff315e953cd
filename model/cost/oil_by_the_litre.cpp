// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/oil_by_the_litre.h"

#include "model/cost/exchange.h"
#include "model/quantity/number_text.h"

#include <algorithm>
#include <utility>
#include <vector>

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
    const auto in_engine = [](const auto* body) { return body != nullptr && body->compartment == "engine"; };
    std::optional<WrittenVolume> written;
    if (const auto* change = std::get_if<OilChange>(&entry.body); in_engine(change))
        written = change->volume_in;
    if (const auto* top_up = std::get_if<TopUp>(&entry.body); in_engine(top_up)) written = top_up->volume;
    if (!written) return std::nullopt;
    const auto volume = volume_of(*written);
    return volume ? std::optional(*volume) : std::nullopt;
}

bool by_a_workshop(const Entry& entry) {
    const auto* work = std::get_if<Work>(&entry.body);
    return work != nullptr && work->done_by == DoneBy::workshop;
}

bool is_workshop_bill(const Entry& entry, const Bike& bike) {
    if (!entry.paid) return false;
    if (entry.evidence == Evidence::invoice) return true;
    return entry.visit && std::ranges::any_of(bike.log, [&](const LogEntry& other) {
               return other.value.visit == entry.visit && by_a_workshop(other.value);
           });
}

std::vector<const LogEntry*> by_date_cans_first(const Bike& bike) {
    std::vector<const LogEntry*> entries;
    for (const auto& entry : bike.log)
        entries.push_back(&entry);
    std::ranges::stable_sort(entries, {}, [](const LogEntry* entry) {
        return std::pair(entry->value.date, !can_volume(entry->value).has_value());
    });
    return entries;
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
    : stock_{{}, Money{0, settings.currency}} {
    for (const LogEntry* entry : by_date_cans_first(bike)) {
        const Entry& value = entry->value;
        if (const auto bought = can_volume(value)) {
            const auto price =
                value.paid ? converted(*value.paid, settings.currency, value.date, settings) : std::nullopt;
            if (!price || !is_allowed({stock_.money.minor + price->minor, price->currency})) continue;
            cans_.insert(entry->id);
            stock_.volume += *bought;
            stock_.money.minor += price->minor;
        } else if (const auto filled = filled_in(value); filled && !is_workshop_bill(value, bike)) {
            take(*entry, *filled);
        }
    }
}

void OilCans::take(const LogEntry& entry, Volume volume) {
    const Volume held = std::min(volume, stock_.volume);
    if (held <= Volume{}) return;
    const auto minor =
        scaled_to_integer(Decimal(stock_.money.minor), held.picolitres(), stock_.volume.picolitres());
    if (!minor) return;
    taken_.emplace(entry.id, Money{*minor, stock_.money.currency});
    stock_.volume = stock_.volume - held;
    stock_.money.minor -= *minor;
}

std::optional<Money> OilCans::worth_of_oil_in(const std::string& entry_id) const {
    const auto found = taken_.find(entry_id);
    return found == taken_.end() ? std::nullopt : std::optional(found->second);
}

std::optional<OilWorth> OilCans::left() const {
    return stock_.volume > Volume{} ? std::optional(stock_) : std::nullopt;
}

} // namespace sumpbook::cost
