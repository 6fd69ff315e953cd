// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/columns.h"

#include "model/import/words.h"
#include "tests/catch.h"

#include <map>
#include <string>
#include <vector>

using namespace sumpbook;
using namespace sumpbook::import;

namespace {

const Currency eur = Currency::from_code("EUR").value();

Columns proposed(ImportKind kind, const std::vector<std::string>& headings,
                 const ImportOptions& options = {}) {
    return propose_columns(kind, headings, options, eur).value();
}

std::string field_of(const Columns& columns, std::size_t index) {
    const auto* field = columns.all.at(index).field;
    return field == nullptr ? "-" : field->slug;
}

std::string unit_of(const Columns& columns, std::size_t index) {
    const auto& column = columns.all.at(index);
    return column.field == nullptr ? "-" : text_of(column.unit, column.field->type);
}

} // namespace

TEST_CASE("Every field is known by its own name") {
    for (const auto kind :
         {ImportKind::fuel, ImportKind::work, ImportKind::costs, ImportKind::readings, ImportKind::samples}) {
        std::vector<std::string> headings;
        for (const auto& field : fields_of(kind))
            headings.push_back(field.slug);
        const auto columns = proposed(kind, headings);
        for (std::size_t i = 0; i < headings.size(); ++i)
            CHECK(field_of(columns, i) == headings[i]);
        CHECK(columns.questions.empty());
    }
}

TEST_CASE("Headings with units are proposed with their unit") {
    const auto columns =
        proposed(ImportKind::fuel, {"Date", "Odometer [mi]", "Volume (US gal)", "Total (GBP)",
                                    "Price per unit (GBP/US gal)", "trip km", "Full"});
    CHECK(field_of(columns, 1) == "odometer");
    CHECK(unit_of(columns, 1) == "mi");
    CHECK(field_of(columns, 2) == "volume");
    CHECK(unit_of(columns, 2) == "US gal");
    CHECK(unit_of(columns, 3) == "GBP");
    CHECK(unit_of(columns, 4) == "GBP per US gal");
    CHECK(field_of(columns, 5) == "trip");
    CHECK(unit_of(columns, 5) == "km");
    CHECK(columns.questions.empty());
}

TEST_CASE("Everyday headings of five languages are proposed") {
    const std::map<std::string, std::vector<std::string>> files = {
        {"en", {"Date", "Miles", "Litres", "Price per litre", "Total cost", "Full tank", "Notes"}},
        {"de", {"Datum", "km-Stand", "Liter", "Preis pro Liter", "Gesamtpreis", "voll", "Bemerkung"}},
        {"fr", {"date", "Kilométrage", "Litres", "Prix au litre", "Montant", "Plein", "Commentaire"}},
        {"es", {"Fecha", "Kilómetros", "Litros", "Precio por litro", "Importe", "Lleno", "Notas"}},
        {"it", {"Data", "Chilometri", "Litri", "Prezzo al litro", "Totale", "Pieno", "Nota"}}};
    const std::vector<std::string> fields = {"date",  "odometer", "volume", "price per unit",
                                             "total", "full",     "note"};
    for (const auto& [language, headings] : files) {
        INFO(language);
        const auto columns = proposed(ImportKind::fuel, headings);
        for (std::size_t i = 0; i < fields.size(); ++i)
            CHECK(field_of(columns, i) == fields[i]);
        CHECK(unit_of(columns, 1) == (language == "en"                                           ? "mi"
                                      : language == "de" || language == "es" || language == "it" ? "km"
                                                                                                 : ""));
        CHECK(unit_of(columns, 2) == "L");
        CHECK(columns.all[3].unit.volume == VolumeUnit::l);
        CHECK(columns.questions.empty());
    }
}

TEST_CASE("A heading of two meanings takes the one that is free, else it is asked about") {
    const auto with_total =
        proposed(ImportKind::fuel, {"Date", "Odometer", "Distance", "Litres", "Price", "Total"});
    CHECK(field_of(with_total, 2) == "trip");
    CHECK(field_of(with_total, 4) == "price per unit");
    CHECK(with_total.questions.empty());
    const auto alone = proposed(ImportKind::fuel, {"Date", "Odometer", "Litres", "Price"});
    REQUIRE(alone.questions.size() == 1);
    CHECK(alone.questions[0].sentence.find("\"Price\"") != std::string::npos);
    ImportOptions options;
    options.map = {{"Price", "total"}};
    const auto told = proposed(ImportKind::fuel, {"Date", "Odometer", "Litres", "Price"}, options);
    CHECK(field_of(told, 3) == "total");
    CHECK(told.questions.empty());
}

TEST_CASE("Bare gallons and unknown units in brackets are asked about") {
    CHECK(proposed(ImportKind::fuel, {"Date", "Gallons"}).questions.size() == 1);
    CHECK(proposed(ImportKind::fuel, {"Date", "Volume (gal)"}).questions.size() == 1);
    CHECK(proposed(ImportKind::fuel, {"Date", "Volume (cups)"}).questions.size() == 1);
    CHECK(proposed(ImportKind::fuel, {"Date", "Litres", "Price per gallon"}).questions.size() == 1);
    ImportOptions options;
    options.units = {{"volume", "imp gal"}};
    const auto told = proposed(ImportKind::fuel, {"Date", "Gallons"}, options);
    CHECK(told.questions.empty());
    CHECK(unit_of(told, 1) == "imp gal");
}

TEST_CASE("Two columns for one field are asked about, and the owner's map settles it") {
    CHECK(proposed(ImportKind::fuel, {"Date", "Litres", "Fuel volume"}).questions.size() == 1);
    ImportOptions options;
    options.map = {{"#3", "-"}};
    const auto told = proposed(ImportKind::fuel, {"Date", "Litres", "Fuel volume"}, options);
    CHECK(told.questions.empty());
    CHECK(field_of(told, 2) == "-");
}

TEST_CASE("Unknown columns stay out and can be mapped; a map must fit the file") {
    CHECK(field_of(proposed(ImportKind::fuel, {"Date", "Weather"}), 1) == "-");
    ImportOptions options;
    options.map = {{"Weather", "note"}};
    CHECK(field_of(proposed(ImportKind::fuel, {"Date", "Weather"}, options), 1) == "note");
    CHECK(propose_columns(ImportKind::fuel, {"Date"}, options, eur).error().kind == ProblemKind::wrong_usage);
    options.map = {{"Date", "moon"}};
    CHECK(propose_columns(ImportKind::fuel, {"Date"}, options, eur).error().kind == ProblemKind::wrong_usage);
}

TEST_CASE("A method may stand in the heading of a sample quantity") {
    const auto columns =
        proposed(ImportKind::samples, {"date", "TBN (ASTM D2896)", "Iron (ppm)", "kv100 [cSt]", "water (%)"});
    CHECK(field_of(columns, 1) == "tbn");
    CHECK(columns.all[1].unit.method == "ASTM D2896");
    CHECK(field_of(columns, 2) == "Fe");
    CHECK(unit_of(columns, 2) == "mg/kg");
    CHECK(unit_of(columns, 3) == "mm2/s");
    CHECK(unit_of(columns, 4) == "%");
}

TEST_CASE("Words are compared without case, accents and punctuation") {
    CHECK(plain_words(" km-Stand ") == "km stand");
    CHECK(plain_words("Kilométrage") == "kilometrage");
    CHECK(plain_words("€/L") == "€ / l");
    CHECK(plain_words("maker's number") == "makers number");
    CHECK(plain_words("-–-").empty());
    CHECK(trimmed("\u00A0 a b\t") == "a b");
}
