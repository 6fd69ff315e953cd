// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/model/store/example_records.h"

namespace sumpbook::store {
namespace {

WrittenVolume litres(std::int64_t hundredths) { return {Decimal(hundredths, 2), VolumeUnit::l}; }
WrittenDistance km(std::int64_t whole) { return {Decimal(whole), DistanceUnit::km}; }
Money euros(std::int64_t cents) { return {cents, eur()}; }

RecordName name(std::uint8_t number, std::uint32_t index) {
    RecordName name;
    name.frame_hash.fill(number);
    name.index = index;
    return name;
}

BikeDetails full_bike() {
    BikeDetails bike;
    bike.name = "Old twin";
    bike.maker = "An invented maker";
    bike.model = "T 650";
    bike.year = 1978;
    bike.vin = "TESTV1N0000000001";
    bike.plate = "AB 123";
    bike.displacement_cm3 = 649;
    bike.cooling = Cooling::air;
    bike.fuel = FuelType::petrol_with_lead_substitute;
    bike.block = BlockMaterial::iron;
    bike.bore = Bore::other;
    bike.gearbox_oil = GearboxOil::separate;
    bike.wet_clutch = true;
    bike.compartments = {{"engine", litres(250), litres(270)},
                         {"gearbox", {Decimal(500), VolumeUnit::ml}, {}}};
    bike.between_level_marks = litres(60);
    bike.odometer_unit = DistanceUnit::mi;
    bike.hour_meter = false;
    bike.average_speed_km_h = Decimal(45);
    bike.in_service_date = day(1978, 5, 1);
    bike.in_service_odometer = {Decimal(3), DistanceUnit::mi};
    bike.expected_distance_a_year = km(4000);
    bike.bought = {day(2019, 3, 30), WrittenDistance{Decimal(21'400), DistanceUnit::mi}, euros(380'000)};
    bike.sold = {day(2024, 9, 1), {}, euros(420'050)};
    bike.for_us_or_canada = false;
    bike.oil_profile = "air-cooled";
    bike.oil_carry_over = Decimal(12, 2);
    bike.handbook_oil_use_l_per_1000km = Decimal(5, 1);
    bike.note = "Stands in the shed";
    return bike;
}

PlanItem full_item() {
    PlanItem item;
    item.slug = "engine-oil";
    item.label = "Engine oil";
    item.compartment = "engine";
    item.slot = "engine";
    item.first = {km(1000), 3, Decimal(20)};
    item.repeat = {km(6000), 12, Decimal(150)};
    item.counted_from = CountedFrom::grid;
    item.window = Margin{km(300), 30, Decimal(5)};
    item.lead = Margin{km(500), 14, Decimal(10)};
    item.includes = {"oil-filter"};
    item.estimate = euros(6'500);
    item.done_by = DoneBy::self;
    item.parts = {"filter", "washer"};
    item.kind = PlanKind::renewal;
    item.in_force_from = day(2020, 1, 1);
    item.source = "owner's handbook p. 40";
    return item;
}

Work full_work() {
    Work work;
    work.text = "Chain and tyres";
    work.checks = {{"chain slack", CheckOutcome::adjusted, "30 mm"}, {"lights", CheckOutcome::failed, {}}};
    work.parts = {{"chain", "C-520", Decimal(1), euros(8'999), "C-519"}, {"link", {}, {}, {}, {}}};
    work.labour_hours = Decimal(15, 1);
    work.labour_price = euros(9'000);
    work.done_by = DoneBy::workshop;
    work.planned = true;
    work.torques = {{"rear axle nut", {Decimal(98), TorqueUnit::nm}, true}};
    work.paint_marks_seen = {{"rear axle nut", false}};
    return work;
}

Sample full_sample() {
    Sample sample;
    sample.use = OilUse::virgin;
    sample.laboratory = "An invented laboratory";
    sample.number = "S-17";
    sample.sent = day(2024, 2, 1);
    sample.result = day(2024, 2, 9);
    sample.compartment = "gearbox";
    sample.oil_name = "Example 10W-40";
    sample.oil_change_date = day(2023, 10, 2);
    sample.distance_on_oil = km(5200);
    sample.hours_on_oil = Decimal(101);
    sample.drawn = TopUpSide::after;
    sample.values = {{"Fe", ValueState::measured, Decimal(23), "mg/kg", "ASTM D5185"},
                     {"Sn", ValueState::below, Decimal(1), "mg/kg", {}},
                     {"water", ValueState::not_detected, Decimal(), "%", {}}};
    sample.flag = LabFlag::watch;
    sample.flag_words = "keep an eye on it";
    sample.remark = "Sample again in half the interval";
    return sample;
}

} // namespace

Currency eur() { return Currency::from_code("EUR").value(); }

GarageSettings full_settings() {
    GarageSettings settings;
    settings.currency = eur();
    settings.home_country = "AT";
    settings.distance_unit = DistanceUnit::mi;
    settings.volume_unit = VolumeUnit::imp_gal;
    settings.consumption_unit = ConsumptionUnit::mpg_imp;
    settings.categories = {"upkeep", "fuel"};
    settings.yearly_budgets = {{"fuel", euros(60'000)}, {"upkeep", euros(80'000)}};
    settings.exchange_rates = {
        {day(2024, 1, 2), Currency::from_code("GBP").value(), eur(), Decimal(11'532, 4)}};
    settings.price_drift_percent_a_year = {{"fuel", Decimal(25, 1)}};
    settings.oil_bought_counts = OilBoughtCounts::per_litre_used;
    return settings;
}

Entry full_entry(EntryBody body) {
    Entry entry;
    entry.date = day(2024, 5, 17);
    entry.odometer = km(25'412);
    entry.hours = Decimal(8123, 1);
    entry.note = "Drizzle; caf\u00e9 stop";
    entry.place = "Somewhere";
    entry.who = "A friend";
    entry.evidence = Evidence::invoice;
    entry.visit = "2024-05-17-a";
    entry.does = {"engine-oil", "oil-filter"};
    entry.paid = euros(7'512);
    entry.imported = {"fuel.csv", day(2024, 6, 1)};
    entry.attachments = {{"invoice.pdf", "application/pdf", 12'345, name(9, 0).frame_hash}};
    entry.doubts = {{"fuel.csv", 12, "Datum", "31.02.2024", "a date", Part::open},
                    {"fuel.csv", 12, "Preis", "1,8,9", "a price", Part::money},
                    {"fuel.csv", 12, "Notiz", "?", "a note", Part::personal}};
    entry.body = std::move(body);
    return entry;
}

std::vector<EntryBody> full_bodies() {
    return {Reading{ClockChange{km(99'990), {Decimal(2), DistanceUnit::mi}}},
            Fuel{litres(1234), UnitPrice{Decimal(1859, 3), eur(), VolumeUnit::l}, false, true, Decimal(95),
                 km(212)},
            OilChange{"gearbox", "Example 10W-40", "10W-40", "MA2", "2016", litres(250), litres(210), true,
                      "F-1", Decimal(9, 1), "S-17"},
            TopUp{"primary", litres(20), Decimal(2, 1), Decimal(8, 1), true},
            full_work(),
            Fit{"rear-tyre", "An invented maker", "T-140", "SN 77", "2319", km(1200), Decimal(30)},
            Modification{"Softer springs", true, false, "paper 4", "15-tooth", "16-tooth"},
            Measure{"pad", Decimal(32, 1), "mm", "front left", Decimal(15, 1)},
            full_sample(),
            Fault{"P0130", "Oxygen sensor", 3U, FaultStatus::permanent, true},
            Recall{RecallType::bulletin, "B-12", "Fuel tap", Applies::yes, true, "Tap replaced", true,
                   day(2025, 5, 1)},
            Cost{"insurance", "Third party", day(2024, 1, 1), day(2024, 12, 31), 12U, day(2030, 1, 1), true},
            Layup{day(2025, 3, 1), true},
            Note{},
            Attach{"The old registration paper"}};
}

std::vector<Record> full_records() {
    const RecordedTime recorded{1'716'000'000};
    std::vector<Record> records{
        {recorded, {}, full_settings()},
        {recorded, {name(1, 0)}, full_bike()},
        {recorded, {}, DataCardValue{"rear axle nut", "98", "N m", "owner's handbook p. 112"}},
        {recorded, {}, full_item()},
        {recorded, {}, Baseline{"engine-oil", day(2019, 4, 1), km(34'440), Decimal(500), Evidence::told}},
        {recorded, {name(1, 3), name(2, 0)}, Withdrawal{"Written twice"}}};
    for (auto& body : full_bodies())
        records.push_back({recorded, {}, full_entry(std::move(body))});
    return records;
}

std::vector<Record> bare_records() {
    const RecordedTime recorded{-1};
    std::vector<Record> records{
        {recorded, {}, GarageSettings{}},
        {recorded, {}, BikeDetails{}},
        {recorded, {}, DataCardValue{}},
        {recorded, {}, PlanItem{}},
        {recorded,
         {},
         Baseline{.slug = {}, .date = day(1900, 1, 1), .odometer = {}, .hours = {}, .evidence = {}}},
        {recorded, {name(1, 0)}, Withdrawal{}}};
    for (const auto slug : entry_kind_slugs()) {
        Entry entry;
        entry.date = day(2100, 12, 31);
        entry.body = body_of_kind(slug).value();
        records.push_back({recorded, {}, entry});
    }
    return records;
}

Record fuel_record(int number) {
    Entry entry;
    entry.date = plus_days(day(2024, 1, 1), number % 1000);
    entry.odometer = km(10'000 + 200 * number);
    entry.note = "Fill " + std::to_string(number);
    entry.paid = euros(2'000 + number);
    entry.body = Fuel{litres(1'100 + number), {}, true, false, {}, {}};
    return {{1'704'110'400 + std::int64_t{86'400} * number}, {}, entry};
}

} // namespace sumpbook::store
