// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/costs_settings.h"

#include "app/cli/session.h"
#include "app/cli/typed.h"

#include <algorithm>
#include <memory>

namespace sumpbook::cli {
namespace {

struct TypedRate {
    std::string date;
    std::string from;
    std::string to;
    std::string rate;
};

Result<Currency> typed_currency(const std::string& field, const std::string& text) {
    auto currency = Currency::from_code(text);
    if (!currency) return pass_on(placed(currency.error(), field, text));
    return currency;
}

/// Rates have three decimals and more, so that 1.159 is read as it stands, as prices on the pump are.
Result<Decimal> typed_rate(const std::string& text, const TypedAs& as) {
    TypedAs with_mark = as;
    if (as.mark == DecimalMark::unknown && is_ambiguous_number(text))
        with_mark.mark = text.find('.') != std::string::npos ? DecimalMark::point : DecimalMark::comma;
    auto rate = typed_number("rate", text, with_mark);
    if (rate && *rate <= Decimal{0})
        return refuse("A rate must be above 0.", {.file = {}, .line = {}, .column = "rate", .text = text});
    return rate;
}

/// The rate as typed, without its number where that is to be taken away.
Result<ExchangeRate> typed_exchange(const TypedRate& typed, const TypedAs& as) {
    const auto date = typed_date("date", typed.date, as);
    if (!date) return pass_on(date.error());
    const auto from = typed_currency("from", typed.from);
    if (!from) return pass_on(from.error());
    const auto to = typed_currency("to", typed.to);
    if (!to) return pass_on(to.error());
    if (*from == *to)
        return refuse("A currency has no rate to itself.",
                      {.file = {}, .line = {}, .column = "to", .text = typed.to});
    ExchangeRate exchange{.date = *date, .from = *from, .to = *to, .rate = {}};
    if (typed.rate == "none") return exchange;
    const auto rate = typed_rate(typed.rate, as);
    if (!rate) return pass_on(rate.error());
    exchange.rate = *rate;
    return exchange;
}

/// Whether two rates are of one day and one pair of currencies, whichever way round.
bool same_pair(const ExchangeRate& a, const ExchangeRate& b) {
    const bool pair = (a.from == b.from && a.to == b.to) || (a.from == b.to && a.to == b.from);
    return pair && a.date == b.date;
}

Result<ExitStatus> set_rate(Session& session, const TypedRate& typed) {
    TypedAs as{.mark = session.decimal_mark(), .order = session.date_order()};
    as.today = session.today();
    const auto exchange = typed_exchange(typed, as);
    if (!exchange) return pass_on(exchange.error());
    auto settings = settings_now(session);
    if (!settings) return pass_on(settings.error());
    auto& rates = settings->exchange_rates;
    const auto removed =
        std::erase_if(rates, [&](const ExchangeRate& rate) { return same_pair(rate, *exchange); });
    const std::string pair = exchange->from.code() + " and " + exchange->to.code();
    const std::string day = spelled_text(exchange->date);
    if (typed.rate == "none") {
        if (removed == 0) return refuse("There is no rate between " + pair + " of " + day + ".");
        return replace_settings(session, *settings, "The rate between " + pair + " of " + day + " is gone.");
    }
    const auto later = std::ranges::upper_bound(rates, exchange->date, {}, &ExchangeRate::date);
    rates.insert(later, *exchange);
    return replace_settings(session, *settings,
                            "From " + day + " on, 1 " + exchange->from.code() + " counts as " +
                                exchange->rate.text() + " " + exchange->to.code() + ".");
}

document::Value rates_json(const std::vector<ExchangeRate>& rates) {
    document::Array items;
    for (const auto& rate : rates) {
        document::Object item;
        item.add("date", rate.date).add("from", rate.from.code()).add("to", rate.to.code());
        item.add("rate", rate.rate);
        items.emplace_back(std::move(item));
    }
    return document::list_of(std::move(items));
}

document::Document rates_text(const std::vector<ExchangeRate>& rates) {
    document::Document text;
    if (rates.empty()) {
        text.sentence(
            "No exchange rate is recorded; amounts in other currencies stand apart. Add one: sumpbook "
            "costs rate 2025-09-01 GBP EUR 1.1561");
        return text;
    }
    document::Table table{{{"From", {}}, {"One", {}}, {"Counts as", document::Align::right}, {"", {}}}, {}};
    for (const auto& rate : rates) {
        table.rows.push_back({document::Cell{iso_text(rate.date), {}}, document::Cell{rate.from.code(), {}},
                              document::Cell{rate.rate.text(), {}}, document::Cell{rate.to.code(), {}}});
    }
    text.table(std::move(table));
    return text;
}

Result<ExitStatus> show_rates(Session& session) {
    const auto settings = settings_now(session);
    if (!settings) return pass_on(settings.error());
    session.show(rates_json(settings->exchange_rates), rates_text(settings->exchange_rates));
    return ExitStatus::done;
}

void add_rate(CommandLine& line, CLI::App& group) {
    auto& command = line.command(
        group, "rate", "Exchange rates: from a day on, one of a currency counts as so much of another",
        {"sumpbook -g my.sumpbook costs rate 2025-09-01 GBP EUR 1.1561", "sumpbook -g my.sumpbook costs rate",
         "sumpbook -g my.sumpbook costs rate 2025-09-01 GBP EUR none"});
    auto typed = std::make_shared<TypedRate>();
    command.add_option("date", typed->date, "The day; without it the rates are printed");
    command.add_option("from", typed->from, "A currency: GBP");
    command.add_option("to", typed->to, "The other one: EUR");
    command.add_option("rate", typed->rate, "What one of the first is worth; none takes the rate away");
    line.on_run(command, [typed](Session& session) -> Result<ExitStatus> {
        if (typed->date.empty()) return show_rates(session);
        if (typed->rate.empty())
            return fail(ProblemKind::wrong_usage,
                        "Give the day, both currencies and the rate: costs rate 2025-09-01 GBP EUR 1.1561");
        return set_rate(session, *typed);
    });
}

Result<ExitStatus> set_oil_counts(Session& session, const std::string& how) {
    auto settings = settings_now(session);
    if (!settings) return pass_on(settings.error());
    if (how != "when-bought" && how != "per-litre-used") {
        return refuse("Oil counts either when-bought or per-litre-used.",
                      {.file = {}, .line = {}, .column = "how", .text = how});
    }
    const bool used = how == "per-litre-used";
    settings->oil_bought_counts = used ? OilBoughtCounts::per_litre_used : OilBoughtCounts::when_bought;
    return replace_settings(session, *settings,
                            used ? "Oil counts as spent litre by litre, as it is used."
                                 : "Oil counts as spent on the day it was bought.");
}

void add_oil_counts(CommandLine& line, CLI::App& group) {
    auto& command =
        line.command(group, "oil-counts", "When a can of oil counts as spent: when-bought or per-litre-used",
                     {"sumpbook -g my.sumpbook costs oil-counts per-litre-used"});
    auto how = std::make_shared<std::string>();
    command.add_option("how", *how, "when-bought (the usual) or per-litre-used")->required();
    line.on_run(command, [how](Session& session) { return set_oil_counts(session, *how); });
}

} // namespace

Result<GarageSettings> settings_now(Session& session) {
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    return settings_of((*open)->garage);
}

Result<ExitStatus> replace_settings(Session& session, const GarageSettings& settings,
                                    const std::string& done) {
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    const Garage& garage = (*open)->garage;
    if (garage.settings && garage.settings->value == settings) {
        session.remark("Nothing to change.");
        return ExitStatus::done;
    }
    if (settings.currency == Currency{})
        return refuse("This file has no settings of a garage, and not one currency to make some with. Take the bike "
                      "into a garage of yours: sumpbook merge MINE THIS --adopt BIKE --to OUT");
    std::vector<Change> changes;
    changes.push_back({garage.id, settings, heads_like((*open)->records, garage.id, settings)});
    if (const auto written = session.write(std::move(changes)); !written) return pass_on(written.error());
    session.remark(done);
    return ExitStatus::done;
}

void add_costs_settings(CommandLine& line, CLI::App& group) {
    add_rate(line, group);
    add_oil_counts(line, group);
}

} // namespace sumpbook::cli
