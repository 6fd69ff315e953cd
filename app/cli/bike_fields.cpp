// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/bike_fields.h"

#include "model/garage/slugs.h"
#include "model/oil/profiles.h"

namespace sumpbook::cli {
namespace {

using Set = Result<void>(BikeDetails&, const std::string&, const std::string&, const TypedAs&);

/// Puts a read value into its place, or passes the refusal on.
template <class Target, class T>
Result<void> assign(Target& target, Result<T> value) {
    if (!value) return pass_on(std::move(value.error()));
    target = std::move(*value);
    return {};
}

template <class Enum>
Result<Enum> typed_word(const std::string& option, const std::string& text) {
    auto word = from_slug<Enum>(text);
    if (!word) return pass_on(placed(word.error(), option, text));
    return word;
}

bool is_blank(const std::string& text) { return text.find_first_not_of(" \t") == std::string::npos; }

/// An empty text takes away what was said.
template <auto Member>
Result<void> set_text(BikeDetails& bike, const std::string& /*option*/, const std::string& text,
                      const TypedAs& /*as*/) {
    bike.*Member = is_blank(text) ? std::nullopt : std::optional(text);
    return {};
}

template <auto Member, class Enum>
Result<void> set_word(BikeDetails& bike, const std::string& option, const std::string& text,
                      const TypedAs& /*as*/) {
    return assign(bike.*Member, typed_word<Enum>(option, text));
}

template <auto Member>
Result<void> set_yes_no(BikeDetails& bike, const std::string& option, const std::string& text,
                        const TypedAs& /*as*/) {
    return assign(bike.*Member, typed_yes_no(option, text));
}

template <auto Member, int Low, int High>
Result<void> set_whole(BikeDetails& bike, const std::string& option, const std::string& text,
                       const TypedAs& /*as*/) {
    return assign(bike.*Member, typed_whole_number(option, text, Low, High));
}

template <auto Member>
Result<void> set_amount(BikeDetails& bike, const std::string& option, const std::string& text,
                        const TypedAs& as) {
    return assign(bike.*Member, typed_amount_of_something(option, text, as));
}

template <auto Member>
Result<void> set_distance(BikeDetails& bike, const std::string& option, const std::string& text,
                          const TypedAs& as) {
    return assign(bike.*Member, typed_distance(option, text, as));
}

template <auto Member>
Result<void> set_date(BikeDetails& bike, const std::string& option, const std::string& text,
                      const TypedAs& as) {
    return assign(bike.*Member, typed_date(option, text, as));
}

/// A share of the whole, from 0 to 1.
Result<void> set_carry_over(BikeDetails& bike, const std::string& option, const std::string& text,
                            const TypedAs& as) {
    const auto share = typed_amount_of_something(option, text, as);
    if (share && *share > Decimal{1}) {
        return refuse(
            "This is a share of the old oil, from 0 (none of it) to 1 (all of it): write 0.1 for a tenth.",
            {.file = {}, .line = {}, .column = option, .text = text});
    }
    return assign(bike.oil_carry_over, share);
}

/// DESIGN: no bike averages 300 km/h over its life; such a figure is a distance, or slipped digits.
Result<void> set_average_speed(BikeDetails& bike, const std::string& option, const std::string& text,
                               const TypedAs& as) {
    const auto speed = typed_amount_of_something(option, text, as);
    if (speed && (speed->is_zero() || *speed > Decimal{300})) {
        return refuse("An average speed is above 0 and at most 300 km/h.",
                      {.file = {}, .line = {}, .column = option, .text = text});
    }
    return assign(bike.average_speed_km_h, speed);
}

Result<void> set_oil_profile(BikeDetails& bike, const std::string& option, const std::string& text,
                             const TypedAs& as) {
    if (!is_blank(text)) {
        if (const auto profile = oil::find_profile(text); !profile)
            return pass_on(placed(profile.error(), option, text));
    }
    return set_text<&BikeDetails::oil_profile>(bike, option, text, as);
}

Result<void> set_level_marks(BikeDetails& bike, const std::string& option, const std::string& text,
                             const TypedAs& as) {
    return assign(bike.between_level_marks, typed_volume(option, text, as));
}

Result<void> set_odometer_unit(BikeDetails& bike, const std::string& option, const std::string& text,
                               const TypedAs& /*as*/) {
    auto unit = read_distance_unit(text);
    if (!unit) return pass_on(placed(unit.error(), option, text));
    bike.odometer_unit = *unit;
    return {};
}

/// "engine 3.2 L", or "engine 3.2 L 3.5 L" with a new filter.
Result<void> set_compartment(BikeDetails& bike, const std::string& option, const std::string& text,
                             const TypedAs& as) {
    const auto blank = text.find(' ');
    if (blank == std::string::npos) {
        return refuse("Write the compartment and what it holds: \"engine 3.2 L\".",
                      {.file = {}, .line = {}, .column = option, .text = text});
    }
    Compartment compartment{.slug = text.substr(0, blank), .holds = {}, .holds_with_filter = {}};
    std::string rest = text.substr(blank + 1);
    const auto slash = rest.find('/');
    if (slash != std::string::npos) {
        auto with_filter = typed_volume(option, rest.substr(slash + 1), as);
        if (!with_filter) return pass_on(with_filter.error());
        compartment.holds_with_filter = *with_filter;
        rest.resize(slash);
    }
    auto holds = typed_volume(option, rest, as);
    if (!holds) return pass_on(holds.error());
    compartment.holds = *holds;
    std::erase_if(bike.compartments, [&](const Compartment& c) { return c.slug == compartment.slug; });
    bike.compartments.push_back(std::move(compartment));
    return {};
}

/// "2019-04-12", "2019-04-12; 24310 km", "2019-04-12; 24310 km; 4200.00 EUR".
Result<void> set_bought(BikeDetails& bike, const std::string& option, const std::string& text,
                        const TypedAs& as) {
    std::vector<std::string> pieces{std::string{}};
    for (const char c : text) {
        if (c == ';') {
            pieces.emplace_back();
        } else if (!(c == ' ' && pieces.back().empty())) {
            pieces.back() += c;
        }
    }
    const auto date = typed_date(option, pieces[0], as);
    if (!date) return pass_on(date.error());
    Transfer transfer{.date = *date, .odometer = {}, .price = {}};
    if (pieces.size() > 1 && !pieces[1].empty()) {
        auto odometer = typed_distance(option, pieces[1], as);
        if (!odometer) return pass_on(odometer.error());
        transfer.odometer = *odometer;
    }
    if (pieces.size() > 2 && !pieces[2].empty()) {
        auto price = typed_money(option, pieces[2], as);
        if (!price) return pass_on(price.error());
        transfer.price = *price;
    }
    bike.bought = transfer;
    return {};
}

using B = BikeDetails;

} // namespace

const std::vector<BikeField>& bike_fields() {
    static const std::vector<BikeField> fields{
        {"--odometer-unit", "km|mi", "What the dial counts", &set_odometer_unit},
        {"--maker", "TEXT", "Who made it", &set_text<&B::maker>},
        {"--model", "TEXT", "Model", &set_text<&B::model>},
        {"--year", "YEAR", "Model year", &set_whole<&B::year, 1885, 2100>},
        {"--vin", "VIN", "Frame or vehicle identification number", &set_text<&B::vin>},
        {"--plate", "TEXT", "Number plate (private)", &set_text<&B::plate>},
        {"--displacement", "CM3", "Engine size in cubic centimetres",
         &set_whole<&B::displacement_cm3, 1, 10000>},
        {"--cooling", "air|oil|liquid", "How the engine is cooled", &set_word<&B::cooling, Cooling>},
        {"--fuel", "petrol|leaded-petrol|petrol-with-lead-substitute|diesel", "What it burns",
         &set_word<&B::fuel, FuelType>},
        {"--block", "aluminium|iron", "Material of the cylinder block or barrels",
         &set_word<&B::block, BlockMaterial>},
        {"--bore", "chrome-plated|other", "Surface of the bores", &set_word<&B::bore, Bore>},
        {"--gearbox-oil", "shared|separate", "Whether engine and gearbox share their oil",
         &set_word<&B::gearbox_oil, GearboxOil>},
        {"--wet-clutch", "yes|no", "Whether the clutch runs in the engine oil", &set_yes_no<&B::wet_clutch>},
        {"--compartment", "NAME LITRES[/WITH-FILTER]",
         "What a compartment holds: \"engine 3.2 L/3.5 L\"; repeat for each", &set_compartment},
        {"--level-marks", "LITRES", "From the lower to the upper oil level mark", &set_level_marks},
        {"--hour-meter", "yes|no", "Whether it counts engine hours", &set_yes_no<&B::hour_meter>},
        {"--average-speed", "KM/H", "Turns distance into hours where there is no hour meter (otherwise 50)",
         &set_average_speed},
        {"--in-service", "DATE", "First day on the road", &set_date<&B::in_service_date>},
        {"--in-service-odometer", "DISTANCE", "What the dial showed that day",
         &set_distance<&B::in_service_odometer>},
        {"--expected-a-year", "DISTANCE", "How far you expect to ride in a year",
         &set_distance<&B::expected_distance_a_year>},
        {"--bought", "DATE[; ODOMETER[; PRICE]]", "When you bought it: \"2019-04-12; 24310 km; 4200 EUR\"",
         &set_bought},
        {"--us-or-canada", "yes|no", "Sold in the US or Canada (its VIN then has a check digit)",
         &set_yes_no<&B::for_us_or_canada>},
        {"--oil-profile", "NAME", "Limits that its oil samples are held against (see: oil limits)",
         &set_oil_profile},
        {"--oil-carry-over", "FRACTION", "Share of the old oil that stays in at a change (otherwise 0.1)",
         &set_carry_over},
        {"--handbook-oil-use", "L/1000KM", "Oil use the handbook allows, litres per 1 000 km",
         &set_amount<&B::handbook_oil_use_l_per_1000km>},
        {"--note", "TEXT", "Anything else (private)", &set_text<&B::note>},
    };
    return fields;
}

void add_bike_options(CLI::App& command, TypedFields& typed) {
    for (const auto& field : bike_fields()) {
        auto* option =
            command.add_option(field.option, typed[field.option], field.help)->type_name(field.type);
        option->expected(1);
        option->multi_option_policy(field.option == "--compartment" ? CLI::MultiOptionPolicy::TakeAll
                                                                    : CLI::MultiOptionPolicy::Throw);
        if (field.option == "--compartment") option->expected(-1);
    }
}

Result<void> set_bike_fields(BikeDetails& details, const TypedFields& typed, TypedAs as) {
    for (const auto& field : bike_fields()) {
        const auto found = typed.find(field.option);
        if (found == typed.end()) continue;
        as.distance_unit = details.odometer_unit;
        for (const auto& text : found->second) {
            if (auto set = field.set(details, field.option, text, as); !set) return set;
        }
    }
    return {};
}

} // namespace sumpbook::cli
