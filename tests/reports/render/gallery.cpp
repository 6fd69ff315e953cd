// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/reports/render/gallery.h"

#include <cmath>

namespace sumpbook::gallery {

namespace {

using namespace plot;
using namespace std::chrono;

double on(int year, unsigned month, unsigned day) {
    return day_position(Date{std::chrono::year{year}, std::chrono::month{month}, std::chrono::day{day}});
}

Plot iron_over_fills() {
    Plot plot{"Iron in the used oil, by oil change",
              "Iron rises from 8 to 31 ppm over six samples; limit 25.",
              {AxisKind::linear, "Odometer, km"},
              {AxisKind::linear, "Iron, ppm"}};
    plot.y.from = 0;
    plot.y.to = 45;
    plot.bands = {{"within", std::nullopt, 20, Tone::good},
                  {"watch", 20, 30, Tone::caution},
                  {"act", 30, std::nullopt, Tone::danger}};
    plot.series = {{"measured",
                    {{{3200, 8}, {6100, 12}, {9050, 11}}, {{15200, 19}, {18100, 24}, {21400, 31}}},
                    Tone::first}};
    plot.rules = {{"oil change", 6200, true},
                  {"oil change", 12100, true},
                  {"chain and sprockets", 15900, true},
                  {"trend limit 25 ppm", 25, false, Tone::fifth, Stroke::dotted}};
    return plot;
}

Plot below_detection() {
    Plot plot{"Copper, lead and tin since the first sample",
              "Copper falls from 9 to 3 ppm; lead and tin stay near the detection limit.",
              {AxisKind::date, "Date of the sample"},
              {AxisKind::linear, "Metal, ppm"}};
    const double d[] = {on(2023, 5, 2), on(2023, 11, 20), on(2024, 6, 9), on(2025, 3, 28), on(2026, 2, 14)};
    plot.series = {
        {"copper", {{{d[0], 9}, {d[1], 6.5}, {d[2], 5}, {d[3], 3.5}, {d[4], 3}}}, Tone::first},
        {"lead", {{{d[0], 2}, {d[1], 0.5, true}, {d[2], 1.8}}, {{d[4], 0.5, true}}}, Tone::second},
        {"tin", {{{d[0], 0.5, true}, {d[1], 0.5, true}, {d[2], 1}, {d[3], 1.2}, {d[4], 1.4}}}, Tone::third}};
    return plot;
}

Plot wear_on_a_log_axis() {
    Plot plot{"All metals on one logarithmic axis",
              "Six elements between 0.5 and 3 000 ppm.",
              {AxisKind::linear, "Distance on the oil, km"},
              {AxisKind::logarithmic, "Content, ppm"}};
    const Tone tones[] = {Tone::first, Tone::second, Tone::third, Tone::fourth, Tone::fifth, Tone::sixth};
    const char* names[] = {"iron", "copper", "silicon", "calcium", "tin", "sodium"};
    const double start[] = {6, 2.5, 9, 2900, 0.5, 40};
    for (int i = 0; i < 6; ++i) {
        Series series{names[i], {{}}, tones[i]};
        for (int k = 0; k < 5; ++k)
            series.runs[0].push_back(
                {500.0 + 1200 * k, start[i] * std::pow(i == 3 ? 0.97 : 1.35, k), i == 4 && k == 0});
        plot.series.push_back(series);
    }
    return plot;
}

Plot forecast() {
    Plot plot{"How far the bike will go",
              "3 100 to 6 900 km in the coming year, most likely 4 800 km.",
              {AxisKind::date, "Date"},
              {AxisKind::linear, "Odometer, km"}};
    Series past{"readings", {{}}, Tone::second};
    Ribbon ribbon{"8 of 10 forecasts", {}, Tone::first};
    Series middle{"forecast", {{}}, Tone::first, Stroke::dashed, Mark::none};
    for (int month = 0; month <= 14; ++month)
        past.runs[0].push_back(
            {on(2025, 1, 10) + 30.4 * month, 41000 + 390.0 * month + 300 * std::sin(month)});
    const double start = past.runs[0].back().y, day = past.runs[0].back().x;
    for (int month = 0; month <= 12; ++month) {
        ribbon.points.push_back({day + 30.4 * month, start + 260.0 * month, start + 575.0 * month});
        middle.runs[0].push_back({day + 30.4 * month, start + 400.0 * month});
    }
    plot.series = {past, middle};
    plot.ribbons = {ribbon};
    plot.rules = {{"today", day, true, Tone::muted, Stroke::solid},
                  {"48 000 km inspection", 48000, false, Tone::fifth}};
    return plot;
}

Plot spending() {
    Plot plot{"What the bike has cost, by year and kind",
              "Fuel is the largest part in each of six years.",
              {AxisKind::category, ""},
              {AxisKind::linear, "Spent, EUR"}};
    plot.x.categories = {"2020", "2021", "2022", "2023", "2024", "2025"};
    plot.bars = {{"fuel", {410, 520, 610, 380, 700, 640}, Tone::first},
                 {"tyres", {0, 290, 0, 310, 0, 330}, Tone::second},
                 {"service", {180, 220, 460, 150, 240, 530}, Tone::third},
                 {"insurance", {310, 300, 295, 290, 288, 280}, Tone::fourth},
                 {"fees", {60, 60, 60, 62, 62, 66}, Tone::fifth},
                 {"clothing", {150, 0, 0, 420, 0, 90}, Tone::sixth}};
    return plot;
}

Plot due_windows() {
    Plot plot{"When what falls due",
              "The chain is overdue; six more jobs fall due within the year.",
              {AxisKind::date, "Date"},
              {AxisKind::category, ""}};
    plot.y.categories = {"Chain cleaning and lubrication",
                         "Engine oil and filter",
                         "Brake fluid, front",
                         "Valve clearance check",
                         "Tyre, rear",
                         "Coolant",
                         "Roadworthiness test"};
    plot.spans = {{0, on(2026, 1, 20), on(2026, 2, 3), on(2026, 2, 20), Tone::danger, "overdue"},
                  {1, on(2026, 2, 25), on(2026, 4, 10), on(2026, 6, 1), Tone::caution, "due"},
                  {2, on(2026, 5, 1), on(2026, 5, 1), on(2026, 5, 1), Tone::good, "soon"},
                  {3, on(2026, 6, 15), on(2026, 9, 2), on(2027, 1, 10), Tone::good, "later"},
                  {4, on(2026, 4, 1), on(2026, 8, 1), on(2026, 12, 24), Tone::good, "later"},
                  {5, on(2026, 10, 1), on(2026, 11, 20), on(2027, 2, 1), Tone::good, "later"},
                  {6, on(2027, 3, 1), on(2027, 3, 31), on(2027, 3, 31), Tone::muted, "not known"}};
    plot.rules = {{"today", on(2026, 3, 4), true, Tone::fifth, Stroke::solid}};
    plot.x.from = on(2026, 1, 10);
    plot.spans.push_back(
        {7, on(2023, 1, 1), on(2023, 1, 1), on(2023, 1, 1), Tone::danger, "overdue", "since Jan 2023"});
    plot.y.categories.emplace_back("Fork oil");
    plot.span_label = "8 of 10 cases";
    plot.middle_label = "even chances, or the day itself";
    return plot;
}

Plot many_readings() {
    Plot plot{"Consumption of every tankful",
              "4.2 to 6.1 L/100 km over 600 tankfuls, higher in winter.",
              {AxisKind::date, "Date"},
              {AxisKind::linear, "Consumption, L/100 km"}};
    Series each{"each tankful", {{}}, Tone::first},
        mean{"mean of ten", {{}}, Tone::fifth, Stroke::solid, Mark::none};
    for (int i = 0; i < 600; ++i) {
        const double day = on(2012, 3, 1) + 8 * i;
        const double season = 0.4 * std::cos(2 * 3.14159265 * 8 * i / 365.25);
        if (i == 250) each.runs.emplace_back();
        if (i >= 250 && i < 300) continue;
        each.runs.back().push_back({day, 5 + season + 0.45 * std::sin(i * 12.9898) * std::cos(i * 4.1)});
        if (i % 10 == 5 && i != 305) mean.runs.back().push_back({day, 5 + season});
        if (i == 300) mean.runs.emplace_back();
    }
    plot.series = {each, mean};
    return plot;
}

Plot crowded() {
    Plot plot{
        "A picture whose words are all much longer than there is room for, to see that none lies on another "
        "and that each ends where it should",
        "Long words.",
        {AxisKind::category, "Where the money went, by workshop and kind of work"},
        {AxisKind::linear, "Spent in all the years for which there are records, United States dollars"}};
    for (const char* name :
         {"Carburettor synchronisation", "Suspension overhaul", "Wheel bearings", "Fork seals",
          "Swingarm bushes", "Throttle cables", "Headstock bearings", "Clutch plates",
          "Starter motor brushes", "Stator winding", "Wiring loom", "Exhaust gasket"})
        plot.x.categories.emplace_back(name);
    plot.bars = {
        {"parts bought by mail and fitted at home in the shed over the winter months", {}, Tone::first},
        {"labour of workshops", {}, Tone::second}};
    for (int i = 0; i < 12; ++i) {
        plot.bars[0].values.push_back(12000 + 9000 * std::abs(std::sin(i)));
        plot.bars[1].values.push_back(8000 * std::abs(std::cos(2 * i)));
    }
    plot.rules = {{"a quarter of the purchase price", 9000, false, Tone::fifth},
                  {"a third of the purchase price", 9900, false, Tone::danger},
                  {"budget", 10200, false, Tone::good}};
    return plot;
}

Plot viscosity_bands() {
    Plot plot{"Viscosity at 100 °C against the bands of SAE J300",
              "The oil leaves its grade 40 at 9 800 km and lies in grade 30.",
              {AxisKind::linear, "Odometer, km"},
              {AxisKind::linear, "Kinematic viscosity, mm²/s"}};
    plot.y.from = 8;
    plot.y.to = 17;
    plot.bands = {{"grade 30", 9.3, 12.5, Tone::second},
                  {"grade 40", 12.5, 16.3, Tone::first},
                  {"grade 50", 16.3, 21.9, Tone::third}};
    plot.series = {{"at 100 °C", {{{0, 14.6}, {3100, 13.4}, {6400, 12.9}, {9800, 12.1}}}, Tone::fifth},
                   {"single", {{{12000, 11.4}}}, Tone::danger, Stroke::solid, Mark::none}};
    return plot;
}

} // namespace

std::vector<std::pair<std::string, Plot>> pictures() {
    return {{"iron", iron_over_fills()},
            {"detection", below_detection()},
            {"logarithmic", wear_on_a_log_axis()},
            {"forecast", forecast()},
            {"spending", spending()},
            {"due", due_windows()},
            {"tankfuls", many_readings()},
            {"crowded", crowded()},
            {"viscosity", viscosity_bands()}};
}

document::Document report() {
    using document::Align;
    using document::Severity;
    document::Document report;
    report.heading("Oil report of the example bike", 1)
        .sentence("The oil is at watch: iron rises faster than before. Change it within 1 000 km.",
                  Severity::caution)
        .facts({{{"Bike", "example, 2014"},
                 {"Odometer", "48 210 km"},
                 {"Text with <b>marks</b> & signs", "as typed"}}})
        .heading("Values");
    document::Table wide{{{"Quantity"}}, {}};
    for (int column = 1; column <= 11; ++column)
        wide.columns.push_back({"sample " + std::to_string(column), Align::right});
    for (const char* name : {"Iron, ppm", "Copper, ppm", "Viscosity at 100 C, mm2/s"}) {
        std::vector<document::Cell> row{{name}};
        for (int column = 1; column <= 11; ++column)
            row.push_back({std::to_string(1000 * column) + ".25", column > 9   ? Severity::danger
                                                                  : column > 6 ? Severity::good
                                                                               : Severity::none});
        wide.rows.push_back(row);
    }
    report.table(wide);
    report.heading("A word that is wider than the page")
        .table({{{"Field"}, {"Text"}},
                {{{"fingerprint"}, {std::string(150, 'w') + "END"}},
                 {{"note"},
                  {"The owner wrote a long note about the noise from the cam chain that comes and goes "
                   "with the temperature of the oil, and that was gone after the second start."}}}});
    document::Table log{{{"Day"}, {"Odometer", Align::right}, {"What was done"}}, {}};
    for (int row = 1; row <= 70; ++row)
        log.rows.push_back({{"day " + std::to_string(row)},
                            {std::to_string(40000 + 97 * row) + " km"},
                            {"ROW" + std::to_string(row) + " chain cleaned and lubricated, slack checked",
                             row % 20 == 0 ? Severity::caution : Severity::none}});
    report.heading("Log").table(log).heading("Pictures");
    for (const auto& [name, picture] : pictures())
        report.figure(std::make_shared<const Plot>(picture)).sentence(picture.description);
    return report;
}

} // namespace sumpbook::gallery
