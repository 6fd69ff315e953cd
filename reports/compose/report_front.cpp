// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/report_front.h"

#include "model/usage/odometer.h"
#include "reports/compose/made_words.h"
#include "reports/compose/words.h"
#include "reports/plot/plot.h"

namespace sumpbook::compose {
namespace {

std::string bikes_words(const std::vector<std::string>& bikes) {
    std::string text;
    for (const auto& bike : bikes)
        text += (text.empty() ? "" : ", ") + bike;
    return text.empty() ? "no bike" : text;
}

} // namespace

document::Document report_front(const std::string& title, const ReportFront& front) {
    document::Document text;
    text.heading(title + ": " + bikes_words(front.bikes), 1);
    document::Facts facts;
    for (const auto& line : front.about)
        facts.lines.emplace_back("Bike", line);
    facts.lines.emplace_back("As of", spelled_text(front.as_of));
    facts.lines.emplace_back("Garage file", front.garage_file);
    facts.lines.emplace_back("Fingerprint", front.fingerprint);
    text.facts(std::move(facts));
    return text;
}

std::string about_bike(const Bike& bike, Date as_of) {
    const auto& details = bike.details.value;
    const auto made = made_words(details);
    std::string text = details.name + (made.empty() ? "" : " (" + made + ")");
    const auto odometer = usage::OdometerSeries::of(bike);
    const usage::OdometerReading* last = nullptr;
    for (const auto& reading : odometer.readings()) {
        if (reading.accepted && reading.date <= as_of) last = &reading;
    }
    if (last != nullptr) text += "; odometer " + words(last->written) + " on " + spelled_text(last->date);
    return text;
}

void add_report_foot(document::Document& text, const ReportFront& front) {
    text.heading("About this report");
    text.sentence("It was made from the garage file " + front.garage_file + " with entries up to " +
                  spelled_text(front.as_of) + ". The fingerprint covers the " +
                  counted(front.records, "record", "records") +
                  " that the file held then. Keep it: \"sumpbook verify\" with the fingerprint tells later "
                  "whether any of them was changed since. It cannot tell whether what was written was true.");
}

void add_pictures(document::Document& text, const Pictures& pictures, const std::string& otherwise) {
    bool any = false;
    for (const auto& picture : pictures) {
        if (picture == nullptr || plot::empty(*picture)) continue;
        text.figure(picture);
        any = true;
    }
    if (!any && !otherwise.empty()) text.sentence(otherwise);
}

std::string counted(std::size_t number, const char* one, const char* several) {
    return grouped(Decimal{static_cast<std::int64_t>(number)}) + " " + (number == 1 ? one : several);
}

} // namespace sumpbook::compose
