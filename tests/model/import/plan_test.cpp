// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/plan.h"

#include "model/import/plan_text.h"
#include "tests/catch.h"
#include "tests/model/import/import_garage.h"

#include <string>

using namespace sumpbook;
using namespace sumpbook::import;

namespace {

ImportPlan planned(ImportKind kind, const std::string& text, const Garage& garage = one_bike()) {
    return plan_import(kind, "file.csv", text, {}, garage, {}, import_day).value();
}

/// The garage after the plan was applied.
Garage applied(const ImportPlan& plan, Garage garage = one_bike()) {
    for (const auto& entry : plan.entries)
        record(garage.bikes.front(), entry.entry, "a-1");
    return garage;
}

const std::string fuel_file = "date,odometer,volume,total,octane\n"
                              "2024-04-02,12000,14.20,25.55,95\n"
                              "2024-04-20,12280,13.9x,25.38,95\n"
                              "2024-05-04,14210,13.00,23.75,95\n"
                              "2024-05-11,12560,14.31,25.89,95\n";

} // namespace

TEST_CASE("A file imported twice adds nothing the second time, doubts and typing faults included") {
    const auto first = planned(ImportKind::fuel, fuel_file);
    CHECK(first.entries.size() == 4);
    CHECK(first.doubts().size() == 2);
    const auto second = planned(ImportKind::fuel, fuel_file, applied(first));
    CHECK(second.entries.empty());
    REQUIRE(second.duplicates.size() == 4);
    CHECK(second.duplicates[0].known.id == "a-1");
}

namespace {

NamedRecord recorded(const Bike& bike, const char* id, std::uint32_t number, const Entry& entry) {
    NamedRecord made;
    made.name.index = number;
    made.id = id;
    made.subject = bike.id;
    made.record.content = entry;
    return made;
}

} // namespace

TEST_CASE("A row stays out where its entry was corrected or withdrawn since, and says what became of it") {
    const auto first = planned(ImportKind::fuel, fuel_file);
    Garage garage = one_bike();
    Bike& bike = garage.bikes.front();
    std::vector<NamedRecord> records;
    records.push_back(recorded(bike, "a-1", 1, first.entries[0].entry));
    records.push_back(recorded(bike, "a-2", 2, first.entries[1].entry)); // the volume "13.9x"
    records.push_back(recorded(bike, "a-3", 3, first.entries[2].entry));
    Entry corrected = first.entries[1].entry;
    corrected.doubts.clear();
    std::get<Fuel>(corrected.body).volume = WrittenVolume{Decimal::parse("13.90").value(), VolumeUnit::l};
    records.push_back(recorded(bike, "a-4", 4, corrected));
    record(bike, first.entries[0].entry, "a-1");
    record(bike, corrected, "a-4");
    bike.log.back().earlier_ids = {"a-2"}; // a-3 is gone: withdrawn
    const auto again =
        plan_import(ImportKind::fuel, "file.csv", fuel_file, {}, garage, records, import_day).value();
    CHECK(again.entries.size() == 1);
    REQUIRE(again.duplicates.size() == 3);
    const auto lines = duplicate_lines(again);
    CHECK(lines[0] == "line 2: the same as entry a-1");
    CHECK(lines[1] == "line 3: there already as a-2, since corrected to a-4");
    CHECK(lines[2] == "line 4: there already as a-3, since withdrawn");
}

TEST_CASE("A row that differs from a known entry of the same date and odometer is added with a doubt") {
    const auto first = planned(ImportKind::fuel, fuel_file);
    const auto second =
        planned(ImportKind::fuel, "date,odometer,volume,total,octane\n2024-04-02,12000,14.25,25.55,95\n",
                applied(first));
    REQUIRE(second.entries.size() == 1);
    REQUIRE(second.entries[0].entry.doubts.size() == 1);
    CHECK(second.entries[0].entry.doubts[0].expected.find("a-1") != std::string::npos);
}

TEST_CASE("Two rows that differ only in a cell nobody can read are both kept") {
    const auto plan =
        planned(ImportKind::fuel,
                "date,odometer,volume,octane\n2024-04-02,12000,14.20,9x\n2024-04-02,12000,14.20,9y\n");
    CHECK(plan.entries.size() == 2);
    CHECK(plan.duplicates.empty());
}

TEST_CASE(
    "A typing fault is found against the readings of the garage, and only rows of the file are doubted") {
    Garage garage = one_bike();
    for (const auto& [day, km] : {std::pair{1, 12000}, {8, 12300}, {22, 12900}, {29, 13200}}) {
        Entry entry;
        entry.date =
            std::chrono::year{2024} / std::chrono::month{4} / std::chrono::day{static_cast<unsigned>(day)};
        entry.odometer = WrittenDistance{Decimal(km), DistanceUnit::km};
        record(garage.bikes.front(), entry, "a-1");
    }
    const auto plan = planned(ImportKind::readings, "date,odometer\n2024-04-15,21600\n", garage);
    REQUIRE(plan.entries.size() == 1);
    REQUIRE(plan.entries[0].entry.doubts.size() == 1);
    CHECK(plan.entries[0].entry.doubts[0].text == "21600");
    CHECK(plan.entries[0].entry.odometer->number == Decimal(21600));
}

TEST_CASE("A file that runs from new to old is checked in the order of its days") {
    CHECK(
        planned(ImportKind::readings, "date,odometer\n2024-04-15,12600\n2024-04-15,12500\n2024-04-08,12300\n")
            .doubts()
            .empty());
    CHECK(
        planned(ImportKind::readings, "date,odometer\n2024-04-08,12300\n2024-04-15,12500\n2024-04-15,12600\n")
            .doubts()
            .empty());
}

TEST_CASE("A new clock starts a new run") {
    const auto plan = planned(ImportKind::readings,
                              "date,odometer,old last,new first\n2024-01-01,50000,,\n2024-02-01,,50100,0\n"
                              "2024-03-01,300,,\n2024-04-01,600,,\n2024-05-01,900,,\n");
    CHECK(plan.doubts().empty());
}

TEST_CASE("Every entry says where it was imported from") {
    const auto plan = planned(ImportKind::fuel, fuel_file);
    for (const auto& entry : plan.entries) {
        REQUIRE(entry.entry.imported);
        CHECK(entry.entry.imported->file == "file.csv");
        CHECK(entry.entry.imported->date == import_day);
    }
}

TEST_CASE("Doubts carry the part of the doubted field") {
    const auto plan = planned(ImportKind::fuel, "date,odometer,volume,total\n2024-04-02,12000,14.20,ten\n");
    REQUIRE(plan.doubts().size() == 1);
    CHECK(plan.doubts()[0].part == Part::money);
    CHECK(plan.doubts()[0].line == 2);
    CHECK(plan.doubts()[0].column == "total");
    CHECK(plan.doubts()[0].text == "ten");
}

TEST_CASE("A typed total stays; price x volume off by more than rounding is a doubt") {
    const auto total_doubts = [](const std::string& row) {
        return planned(ImportKind::fuel, "date,volume,price per unit,total\n" + row).doubts().size();
    };
    CHECK(total_doubts("2024-04-02,14.20,1.799,25.55\n") == 0); // 25.5458
    CHECK(total_doubts("2024-04-02,14.2,1.8,25.55\n") == 0);    // within the rounding of both
    CHECK(total_doubts("2024-04-02,14.20,1.799,25.65\n") == 1);
    CHECK(total_doubts("2024-04-02,14.20,1.799,52.55\n") == 1);
    const auto plan =
        planned(ImportKind::fuel, "date,volume,price per unit,total\n2024-04-02,14.20,1.799,52.55\n");
    CHECK(text_of(*plan.entries[0].entry.paid) == "52.55 EUR");
}

TEST_CASE("A day in the future is doubted and stays as typed") {
    const auto plan = planned(ImportKind::readings, "date,odometer\n2062-04-02,12000\n");
    REQUIRE(plan.doubts().size() == 1);
    CHECK(iso_text(plan.entries[0].entry.date) == "2062-04-02");
}
