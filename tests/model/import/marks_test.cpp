// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/marks.h"

#include "model/import/amount_text.h"
#include "tests/catch.h"

#include <string>

using namespace sumpbook;
using namespace sumpbook::import;

namespace {

Marks marks_of(const std::string& text, const ImportOptions& options = {}) {
    const auto table = find_table(text, ImportKind::fuel, options).value();
    const auto columns = propose_columns(ImportKind::fuel, table.headings, options, Currency()).value();
    return find_marks(table, columns, options);
}

const std::string heading = "date;odometer;volume;price per unit\n";

} // namespace

TEST_CASE("One certain cell decides the mark of a whole file") {
    CHECK(marks_of(heading + "2024-05-01;12.345;10,5;1,859\n").decimal == DecimalMark::comma);
    CHECK(marks_of(heading + "2024-05-01;12,345;10.5;1.859\n").decimal == DecimalMark::point);
    CHECK(marks_of(heading + "2024-05-01;12345;10;2\n").decimal == DecimalMark::unknown);
    CHECK(marks_of(heading + "2024-05-01;12345;10;2\n").questions.empty());
}

TEST_CASE("Where every cell has two readings the owner is asked") {
    const auto marks = marks_of(heading + "2024-05-01;12.345;10;1.859\n");
    REQUIRE(marks.questions.size() == 1);
    CHECK(marks.questions[0].option == "--decimal point");
    ImportOptions options;
    options.decimal_mark = DecimalMark::comma;
    CHECK(marks_of(heading + "2024-05-01;12.345;10;1.859\n", options).questions.empty());
}

TEST_CASE("Both marks in one file: a clear majority decides, anything closer is asked") {
    std::string text = heading;
    for (int i = 0; i < 10; ++i)
        text += "2024-05-01;100;10,5;\n";
    CHECK(marks_of(text + "2024-05-02;100;10.5;\n").decimal == DecimalMark::comma);
    CHECK(marks_of(text + "2024-05-02;100;10.5;1.8\n").questions.size() == 1);
}

TEST_CASE("The order of day and month is found over all dates, or asked") {
    CHECK(marks_of(heading + "03/04/2024;1;1;1\n25/04/2024;1;1;1\n").order == DateOrder::day_month_year);
    CHECK(marks_of(heading + "03/04/2024;1;1;1\n04/25/2024;1;1;1\n").order == DateOrder::month_day_year);
    CHECK(marks_of(heading + "03/04/2024;1;1;1\n").questions.size() == 1);
    CHECK(marks_of(heading + "25/04/2024;1;1;1\n04/25/2024;1;1;1\n").questions.size() == 1);
    CHECK(marks_of(heading + "2024-04-03;1;1;1\n3 Apr 2024;1;1;1\n05/05/2024;1;1;1\n").questions.empty());
}

TEST_CASE("A time of day behind a date is set apart") {
    CHECK(date_part("2024-05-01 14:30") == "2024-05-01");
    CHECK(date_part("2024-05-01T14:30:00Z") == "2024-05-01");
    CHECK(date_part("5/1/2024 2:30 PM") == "5/1/2024");
    CHECK(date_part("3 Mar 2024") == "3 Mar 2024");
    CHECK(date_part("2024-05-01 evening") == "2024-05-01 evening");
}

TEST_CASE("An amount is taken apart without losing a character of its number") {
    const auto check = [](std::string_view cell, std::string_view before, std::string_view number,
                          std::string_view behind) {
        INFO(cell);
        const auto apart = take_amount_apart(cell);
        CHECK(apart.before == before);
        CHECK(apart.number == number);
        CHECK(apart.behind == behind);
    };
    check("€ 12.50", "€", "12.50", "");
    check("12,50 EUR", "", "12,50", "EUR");
    check("-12.5", "", "-12.5", "");
    check("<2", "<", "2", "");
    check("12 345 km", "", "12 345", "km");
    check("Fr.5", "Fr.", "5", "");
    check(".5 L", "", ".5", "L");
    check("1e5", "", "1", "e5");
    check("n.d.", "n.d.", "", "");
    check("12.", "", "12.", "");
}
