// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/bike_card.h"
#include "app/cli/bike_consumption.h"
#include "app/cli/bike_fields.h"
#include "app/cli/commands.h"
#include "app/cli/session.h"
#include "reports/compose/bike.h"

#include <memory>

namespace sumpbook::cli {
namespace {

TypedAs typed_as(Session& session, const Garage& garage) {
    TypedAs as{.mark = session.decimal_mark(), .order = session.date_order()};
    as.currency = currency_of(garage);
    as.today = session.today();
    if (garage.settings) {
        as.distance_unit = garage.settings->value.distance_unit;
        as.volume_unit = garage.settings->value.volume_unit;
    }
    return as;
}

/// What commands name a bike by: some text, and no other bike's.
Result<void> check_name(const Garage& garage, const std::string& name, const Bike* own) {
    if (name.find_first_not_of(" \t") == std::string::npos)
        return refuse("A bike needs a name, such as \"Old twin\".",
                      {.file = {}, .line = {}, .column = "name", .text = name});
    const Bike* other = find_bike(garage, name);
    if (other != nullptr && other != own) return refuse("There is already a bike called \"" + name + "\".");
    return {};
}

void add_add(CommandLine& line, CLI::App& group) {
    auto& command =
        line.command(group, "add", "Add a bike",
                     {"sumpbook -g my.sumpbook bike add \"Old twin\" --odometer-unit km",
                      "sumpbook -g my.sumpbook bike add \"Tourer\" --cooling liquid --fuel petrol "
                      "--compartment \"engine 3.2 L/3.5 L\""});
    auto name = std::make_shared<std::string>();
    auto typed = std::make_shared<TypedFields>();
    command.add_option("name", *name, "What you call it; unique in the garage")->required();
    add_bike_options(command, *typed);
    line.on_run(command, [name, typed](Session& session) -> Result<ExitStatus> {
        const auto open = session.open();
        if (!open) return pass_on(open.error());
        const Garage& garage = (*open)->garage;
        if (auto fits = check_name(garage, *name, nullptr); !fits) return pass_on(fits.error());
        BikeDetails details{.name = *name};
        const TypedAs as = typed_as(session, garage);
        details.odometer_unit = as.distance_unit;
        if (auto set = set_bike_fields(details, *typed, as); !set) return pass_on(set.error());
        std::vector<Change> changes;
        changes.push_back({session.new_subject(), details, {}});
        if (const auto written = session.write(std::move(changes)); !written) return pass_on(written.error());
        session.remark("Added " + *name +
                       ". Next: its history (sumpbook import --help, sumpbook add --help) and its upkeep "
                       "plan (sumpbook plan starter).");
        return ExitStatus::done;
    });
}

Result<ExitStatus> replace_details(Session& session, const Bike& bike, BikeDetails details,
                                   const std::string& done) {
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    if (details == bike.details.value) {
        session.remark("Nothing to change.");
        return ExitStatus::done;
    }
    std::vector<Change> changes;
    changes.push_back({bike.id, details, heads_like((*open)->records, bike.id, details)});
    if (const auto written = session.write(std::move(changes)); !written) return pass_on(written.error());
    session.remark(done);
    return ExitStatus::done;
}

void add_edit(CommandLine& line, CLI::App& group) {
    auto& command =
        line.command(group, "edit", "Change what is said about a bike",
                     {"sumpbook -g my.sumpbook -b \"Old twin\" bike edit --in-service 1974-05-02"});
    auto name = std::make_shared<std::optional<std::string>>();
    auto typed = std::make_shared<TypedFields>();
    command.add_option_function<std::string>(
        "--name", [name](const std::string& text) { *name = text; }, "A new name");
    add_bike_options(command, *typed);
    line.on_run(command, [name, typed](Session& session) -> Result<ExitStatus> {
        const auto bike = session.one_bike();
        if (!bike) return pass_on(bike.error());
        const auto open = session.open();
        if (!open) return pass_on(open.error());
        BikeDetails details = (*bike)->details.value;
        if (name->has_value()) {
            if (auto fits = check_name((*open)->garage, **name, *bike); !fits) return pass_on(fits.error());
            details.name = **name;
        }
        if (auto set = set_bike_fields(details, *typed, typed_as(session, (*open)->garage)); !set) {
            return pass_on(set.error());
        }
        return replace_details(session, **bike, details, "Changed " + details.name + ".");
    });
}

struct TypedSale {
    std::string date = "today";
    std::string odometer;
    std::string price;
    bool undo = false;
};

Result<Transfer> sale_of(const TypedSale& typed, const TypedAs& as) {
    const auto date = typed_date("--date", typed.date, as);
    if (!date) return pass_on(date.error());
    Transfer sold{.date = *date, .odometer = {}, .price = {}};
    if (!typed.odometer.empty()) {
        const auto odometer = typed_distance("--odometer", typed.odometer, as);
        if (!odometer) return pass_on(odometer.error());
        sold.odometer = *odometer;
    }
    if (!typed.price.empty()) {
        const auto price = typed_money("--price", typed.price, as);
        if (!price) return pass_on(price.error());
        sold.price = *price;
    }
    return sold;
}

Result<ExitStatus> sell(Session& session, const TypedSale& typed) {
    const auto bike = session.one_bike();
    if (!bike) return pass_on(bike.error());
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    BikeDetails details = (*bike)->details.value;
    if (typed.undo) {
        if (!details.sold) return refuse(details.name + " is not recorded as sold.");
        details.sold.reset();
        return replace_details(session, **bike, details, details.name + " counts as not sold.");
    }
    TypedAs as = typed_as(session, (*open)->garage);
    as.distance_unit = details.odometer_unit;
    const auto sold = sale_of(typed, as);
    if (!sold) return pass_on(sold.error());
    details.sold = *sold;
    return replace_details(session, **bike, details, "Recorded the sale of " + details.name + ".");
}

void add_sell(CommandLine& line, CLI::App& group) {
    auto& command =
        line.command(group, "sell", "Record that a bike was sold; its history stays",
                     {"sumpbook -g my.sumpbook -b \"Old twin\" bike sell --date 2026-04-30 --odometer 48210 "
                      "--price \"3900 EUR\"",
                      "sumpbook -g my.sumpbook -b \"Old twin\" bike sell --undo"});
    auto typed = std::make_shared<TypedSale>();
    auto* date = command.add_option("--date", typed->date, "The day (otherwise today)");
    auto* odometer = command.add_option("--odometer", typed->odometer, "What the dial showed");
    auto* price = command.add_option("--price", typed->price, "What it fetched");
    command.add_flag("--undo", typed->undo, "It was not sold after all")
        ->excludes(date)
        ->excludes(odometer)
        ->excludes(price);
    line.on_run(command, [typed](Session& session) { return sell(session, *typed); });
}

void add_list_and_show(CommandLine& line, CLI::App& group) {
    auto& list = line.command(group, "list", "List the bikes", {"sumpbook -g my.sumpbook bike list"});
    line.on_run(list, [](Session& session) -> Result<ExitStatus> {
        const auto bikes = session.bikes();
        if (!bikes) return pass_on(bikes.error());
        session.show(compose::bikes_json(*bikes), compose::bikes_text(*bikes));
        return ExitStatus::done;
    });
    auto& show = line.command(group, "show", "Everything said about a bike",
                              {"sumpbook -g my.sumpbook bike show \"Old twin\""});
    auto name = std::make_shared<std::string>();
    show.add_option("name", *name, "The bike, as with -b");
    line.on_run(show, [name](Session& session) -> Result<ExitStatus> {
        const auto bike = name->empty() ? session.one_bike() : session.bike_named(*name);
        if (!bike) return pass_on(bike.error());
        session.show(compose::bike_json(**bike), compose::bike_text(**bike));
        return ExitStatus::done;
    });
}

} // namespace

void add_bike_command(CommandLine& line) {
    auto& group =
        line.group("bike", "Bikes and their data cards: add, list, show, edit, sell, card, consumption");
    add_add(line, group);
    add_list_and_show(line, group);
    add_edit(line, group);
    add_sell(line, group);
    add_card(line, group);
    add_consumption(line, group);
}

} // namespace sumpbook::cli
