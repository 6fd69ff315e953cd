// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/units.h"

#include "model/quantity/utf8.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <span>

namespace sumpbook {
namespace {

/// The letter behind the accents that occur in unit words; 0 for characters that carry no meaning in a
/// unit (blanks, full stops, hyphens, brackets, degree and multiplication signs).
char32_t folded(char32_t c) {
    constexpr std::u32string_view meaningless =
        U" \t.-_()[]*^\u00A0\u2009\u202F\u00B0\u00BA\u00B7\u22C5\u2011\u2013";
    if (meaningless.find(c) != std::u32string_view::npos) return 0;
    if (c >= U'A' && c <= U'Z') return c - U'A' + U'a';
    switch (c) {
    case U'\u00E8':
    case U'\u00E9':
    case U'\u00C8':
    case U'\u00C9':
        return U'e';
    case U'\u00F3':
    case U'\u00D3':
        return U'o';
    case U'\u00B2':
        return U'2';
    case U'\u00B3':
        return U'3';
    case U'\u2113':
        return U'l';
    case U'\u2103':
        return U'c';
    case U'\u2109':
        return U'f';
    default:
        return c;
    }
}

/// "U.S. Gallons" and "gal (US)" become "usgallons" and "galus". Characters that no unit has become "?".
std::string key_of(std::string_view text) {
    std::string key;
    while (!text.empty()) {
        const auto [code_point, bytes] = utf8_first(text);
        text.remove_prefix(bytes);
        const char32_t c = folded(code_point);
        if (c != 0) key += c < 0x80 ? static_cast<char>(c) : '?';
    }
    return key;
}

/// The words that stand for one unit, folded as `key_of` folds them, with blanks between.
template <class Unit>
struct Spellings {
    Unit unit;
    std::string_view words;
};

/// Words that more than one unit answers to, and the question to ask back.
struct Question {
    std::string_view words;
    std::string_view sentence;
};

bool holds_word(std::string_view words, std::string_view word) {
    while (!words.empty()) {
        const std::size_t end = std::min(words.find(' '), words.size());
        if (words.substr(0, end) == word) return true;
        words.remove_prefix(std::min(end + 1, words.size()));
    }
    return false;
}

template <class Unit, std::size_t n>
Result<Unit> looked_up(std::string_view text, const std::array<Spellings<Unit>, n>& spellings,
                       std::span<const Question> questions, std::string_view quantity,
                       std::string_view choices) {
    const Place place{.file = {}, .line = {}, .column = {}, .text = std::string(text)};
    const std::string key = key_of(text);
    for (const auto& [unit, words] : spellings) {
        if (holds_word(words, key)) return unit;
    }
    for (const auto& [words, sentence] : questions) {
        if (holds_word(words, key)) return refuse(std::string(sentence), place);
    }
    if (key.empty())
        return refuse(fmt::format("A unit of {} is missing here: use {}.", quantity, choices), place);
    return refuse(fmt::format("\"{}\" is not a known unit of {}: use {}.", text, quantity, choices), place);
}

// English, then the usual German, French, Spanish and Italian words.
// Common usage, no source.
constexpr auto distance_spellings = std::to_array<Spellings<DistanceUnit>>({
    {DistanceUnit::km, "km kms kilometre kilometres kilometer kilometers kilometern kilometro kilometros "
                       "chilometro chilometri"},
    {DistanceUnit::mi, "mi mile miles mls meile meilen mille milles milla millas miglio miglia"},
});

constexpr auto volume_spellings = std::to_array<Spellings<VolumeUnit>>({
    {VolumeUnit::l, "l lt ltr ltrs lts litre litres liter liters litern litro litros litri"},
    {VolumeUnit::ml, "ml cc ccm cm3 millilitre millilitres milliliter milliliters millilitern mililitro "
                     "mililitros millilitro millilitri"},
    {VolumeUnit::us_gal, "usgal usgals usgallon usgallons usg galus galsus gallonus gallonsus usliquidgallon "
                         "usliquidgallons"},
    {VolumeUnit::imp_gal,
     "impgal impgals impgallon impgallons imperialgallon imperialgallons imperialgal galimp "
     "galsimp gallonimp gallonsimp gallonimperial gallonsimperial ukgal ukgals ukgallon "
     "ukgallons galuk galsuk gallonuk gallonsuk"},
    {VolumeUnit::us_qt, "usqt usqts usquart usquarts qtus qtsus quartus quartsus"},
});

constexpr auto consumption_spellings = std::to_array<Spellings<ConsumptionUnit>>({
    {ConsumptionUnit::l_per_100km,
     "l/100km l/100 lper100km l/100kms litre/100km litres/100km liter/100km liters/100km "
     "litresper100km litersper100km literper100km litreper100km literauf100km lauf100km "
     "litresaux100km litresaux100 laux100km litrospor100km litros/100km lalos100km "
     "litrosalos100km litri/100km litriper100km liter/100kilometer litresper100kilometres "
     "litersper100kilometers"},
    {ConsumptionUnit::km_per_l,
     "km/l kmpl kmperl kmperlitre kmperliter km/litre km/liter km/litro kmperlitro kmproliter "
     "kilometresperlitre kilometersperliter kilometrosporlitro chilometriperlitro "
     "kilometreparlitre kmporlitro"},
    {ConsumptionUnit::mpg_us,
     "mpgus usmpg milesperusgallon milesperusgal mi/usgal milespergallonus mi/galus"},
    {ConsumptionUnit::mpg_imp,
     "mpgimp impmpg mpguk ukmpg mpgimperial imperialmpg milesperimperialgallon milesperimpgal "
     "mi/impgal milesperukgallon mi/ukgal milespergallonimp milespergallonimperial "
     "milespergallonuk mi/galimp mi/galuk"},
});

constexpr auto temperature_spellings = std::to_array<Spellings<TemperatureUnit>>({
    {TemperatureUnit::celsius,
     "c celsius degc degcelsius degreesc degreecelsius degreescelsius centigrade "
     "degreescentigrade gradc gradcelsius degrescelsius gradoscelsius gradicelsius"},
    {TemperatureUnit::fahrenheit,
     "f fahrenheit degf degfahrenheit degreesf degreefahrenheit degreesfahrenheit "
     "gradfahrenheit"},
});

constexpr auto torque_spellings = std::to_array<Spellings<TorqueUnit>>({
    {TorqueUnit::nm, "nm newtonmetre newtonmetres newtonmeter newtonmeters newtonmetern newtonsmetres"},
    {TorqueUnit::lbf_ft, "lbfft lbft lbsft ftlb ftlbs ftlbf footpound footpounds poundfoot poundfeet "
                         "footpoundforce"},
    {TorqueUnit::lbf_in, "lbfin lbin lbsin inlb inlbs inlbf inchpound inchpounds poundinch poundinches"},
    {TorqueUnit::kgf_m, "kgfm kgm mkg mkgf kpm mkp kilogramforcemetre kilogramforcemeter"},
});

constexpr auto volume_questions = std::to_array<Question>({
    {"gal gals gallon gallons gallone gallonen galon galones galloni",
     "Is this a US gallon (3.785 L) or an imperial gallon (4.546 L)? Write US gal or imp gal."},
    {"qt qts quart quarts",
     "Is this a US quart (0.946 L) or an imperial quart (1.137 L)? Write US qt, or the amount in L."},
    {"pt pts pint pints",
     "Is this a US pint (0.473 L) or an imperial pint (0.568 L)? Write the amount in L or mL."},
});

constexpr auto consumption_questions = std::to_array<Question>({
    {"mpg mi/gal miles/gal miles/gallon milespergal milespergallon",
     "Are these miles per US gallon or per imperial gallon, which is a fifth larger? Write mpg (US) or mpg "
     "(imp)."},
});

} // namespace

std::string_view symbol(DistanceUnit unit) {
    switch (unit) {
    case DistanceUnit::km:
        return "km";
    case DistanceUnit::mi:
        return "mi";
    }
    return {};
}

std::string_view symbol(VolumeUnit unit) {
    switch (unit) {
    case VolumeUnit::l:
        return "L";
    case VolumeUnit::ml:
        return "mL";
    case VolumeUnit::us_gal:
        return "US gal";
    case VolumeUnit::imp_gal:
        return "imp gal";
    case VolumeUnit::us_qt:
        return "US qt";
    }
    return {};
}

std::string_view symbol(ConsumptionUnit unit) {
    switch (unit) {
    case ConsumptionUnit::l_per_100km:
        return "L/100 km";
    case ConsumptionUnit::km_per_l:
        return "km/L";
    case ConsumptionUnit::mpg_us:
        return "mpg (US)";
    case ConsumptionUnit::mpg_imp:
        return "mpg (imp)";
    }
    return {};
}

std::string_view symbol(TemperatureUnit unit) {
    switch (unit) {
    case TemperatureUnit::celsius:
        return "°C";
    case TemperatureUnit::fahrenheit:
        return "°F";
    }
    return {};
}

std::string_view symbol(TorqueUnit unit) {
    switch (unit) {
    case TorqueUnit::nm:
        return "N m";
    case TorqueUnit::lbf_ft:
        return "lbf ft";
    case TorqueUnit::lbf_in:
        return "lbf in";
    case TorqueUnit::kgf_m:
        return "kgf m";
    }
    return {};
}

Result<DistanceUnit> read_distance_unit(std::string_view text) {
    return looked_up(text, distance_spellings, {}, "distance", "km or mi");
}

Result<VolumeUnit> read_volume_unit(std::string_view text) {
    return looked_up(text, volume_spellings, volume_questions, "volume", "L, mL, US gal, imp gal or US qt");
}

Result<ConsumptionUnit> read_consumption_unit(std::string_view text) {
    return looked_up(text, consumption_spellings, consumption_questions, "consumption",
                     "L/100 km, km/L, mpg (US) or mpg (imp)");
}

Result<TemperatureUnit> read_temperature_unit(std::string_view text) {
    return looked_up(text, temperature_spellings, {}, "temperature", "°C or °F");
}

Result<TorqueUnit> read_torque_unit(std::string_view text) {
    return looked_up(text, torque_spellings, {}, "torque", "N m, lbf ft, lbf in or kgf m");
}

} // namespace sumpbook
