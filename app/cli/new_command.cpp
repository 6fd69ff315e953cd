// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/commands.h"
#include "app/cli/session.h"
#include "app/cli/typed.h"

#include <algorithm>
#include <memory>

namespace sumpbook::cli {
namespace {

struct Typed {
    std::string path;
    std::string currency;
    std::string country;
    std::string distance = "km";
    std::string volume = "L";
    std::string consumption = "L/100 km";
};

/// ISO 3166-1 alpha-2 has two letters; which of them are countries today is not ours to know.
Result<std::string> country_code(std::string text) {
    std::ranges::transform(text, text.begin(),
                           [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 32) : c; });
    const bool letters = std::ranges::all_of(text, [](char c) { return c >= 'A' && c <= 'Z'; });
    if (text.size() == 2 && letters) return text;
    return refuse("A country is two letters, such as DE, FR or GB.",
                  {.file = {}, .line = {}, .column = "--country", .text = text});
}

Result<GarageSettings> settings_of(const Typed& typed) {
    GarageSettings settings;
    const auto currency = Currency::from_code(typed.currency);
    if (!currency) return pass_on(placed(currency.error(), "--currency", typed.currency));
    settings.currency = *currency;
    if (!typed.country.empty()) {
        const auto country = country_code(typed.country);
        if (!country) return pass_on(country.error());
        settings.home_country = *country;
    }
    const auto distance = read_distance_unit(typed.distance);
    if (!distance) return pass_on(placed(distance.error(), "--distance", typed.distance));
    settings.distance_unit = *distance;
    const auto volume = read_volume_unit(typed.volume);
    if (!volume) return pass_on(placed(volume.error(), "--volume", typed.volume));
    settings.volume_unit = *volume;
    const auto consumption = read_consumption_unit(typed.consumption);
    if (!consumption) return pass_on(placed(consumption.error(), "--consumption", typed.consumption));
    settings.consumption_unit = *consumption;
    return settings;
}

} // namespace

void add_new_command(CommandLine& line) {
    auto& command = line.command(
        "new", "Start a garage file",
        {"sumpbook new my.sumpbook --currency EUR --country DE",
         "sumpbook new shed.sumpbook --currency GBP --country GB --distance mi --consumption \"mpg (imp)\""});
    auto typed = std::make_shared<Typed>();
    command.add_option("file", typed->path, "The file to make; it must not exist yet")->required();
    command.add_option("--currency", typed->currency, "Three letters of ISO 4217: EUR, GBP, USD")->required();
    command.add_option("--country", typed->country,
                       "Two letters of ISO 3166: DE, FR, GB (for inspections due)");
    command.add_option("--distance", typed->distance, "Unit of distances shown (otherwise km)")
        ->type_name("km|mi");
    command.add_option("--volume", typed->volume, "Unit of volumes shown (otherwise L)");
    command.add_option("--consumption", typed->consumption, "Unit of consumption shown (otherwise L/100 km)");
    line.on_run(command, [typed](Session& session) -> Result<ExitStatus> {
        const auto settings = settings_of(*typed);
        if (!settings) return pass_on(settings.error());
        if (auto created = session.create(typed->path, *settings); !created) return pass_on(created.error());
        session.remark("Made " + typed->path + ". Next: sumpbook -g " + typed->path +
                       " bike add \"Old twin\" --odometer-unit km");
        return ExitStatus::done;
    });
}

} // namespace sumpbook::cli
