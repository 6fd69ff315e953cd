// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/whole_sample.h"

#include "model/oil/quantities.h"

#include <algorithm>

namespace sumpbook::oil {
namespace {

bool is_rated(const std::vector<RatedValue>& values, std::string_view quantity) {
    return std::any_of(values.begin(), values.end(), [&](const RatedValue& value) {
        return value.written.quantity == quantity && value.ladder != Ladder::unrated;
    });
}

std::vector<std::string> what_is_missing(const std::vector<RatedValue>& values,
                                         const std::optional<FuelType>& fuel) {
    std::vector<std::string> missing;
    const auto need = [&](bool rated, const std::string& name) {
        if (!rated) missing.push_back(name);
    };
    for (const char* metal : {"Fe", "Al", "Cu", "Cr"})
        need(is_rated(values, metal), quantity_name(metal));
    if (fuel != FuelType::leaded_petrol) need(is_rated(values, "Pb"), quantity_name("Pb"));
    need(is_rated(values, "fuel"), quantity_name("fuel"));
    need(is_rated(values, "water") || is_rated(values, "glycol"), "water or glycol");
    need(is_rated(values, "kv100") || is_rated(values, "kv40"), "viscosity");
    return missing;
}

Word word_of(Ladder worst, bool complete) {
    if (worst == Ladder::act) return Word::act;
    if (worst == Ladder::watch) return Word::watch;
    return complete ? Word::within : Word::not_enough_to_say;
}

Word word_of(LabFlag flag) {
    switch (flag) {
    case LabFlag::act:
        return Word::act;
    case LabFlag::watch:
        return Word::watch;
    case LabFlag::within:
        break;
    }
    return Word::within;
}

} // namespace

WholeSample whole_sample(const std::vector<RatedValue>& values, const std::vector<Lift>& lifts,
                         const std::optional<LabFlag>& flag, const std::optional<FuelType>& fuel) {
    WholeSample whole;
    whole.lifts = lifts;
    whole.missing = what_is_missing(values, fuel);
    Ladder worst = lifts.empty() ? Ladder::within : Ladder::watch;
    for (const RatedValue& value : values)
        worst = worse(worst, value.ladder);
    whole.own_word = word_of(worst, whole.missing.empty());
    whole.word = flag ? worse(whole.own_word, word_of(*flag)) : whole.own_word;
    whole.set_by_laboratory = whole.word != whole.own_word;
    return whole;
}

} // namespace sumpbook::oil
