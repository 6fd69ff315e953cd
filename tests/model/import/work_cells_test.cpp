// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/work_cells.h"

#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::import;

namespace {

CellRules comma() {
    return {.mark = DecimalMark::comma,
            .order = {},
            .has_decimals = false,
            .stated = {},
            .usual = {},
            .garage = Currency::from_code("EUR").value()};
}

} // namespace

TEST_CASE("A check has a name, an outcome and perhaps a reading") {
    const auto check = check_in("chain slack: adjusted 30 mm").value();
    CHECK(check.name == "chain slack");
    CHECK(check.outcome == CheckOutcome::adjusted);
    CHECK(check.reading == "30 mm");
    CHECK_FALSE(check_in("horn: ok").value().reading);
    CHECK(check_in("lamp: failed, left one").value().reading == "left one");
    CHECK_FALSE(check_in("chain slack 30 mm"));
    CHECK_FALSE(check_in(": pass"));
    CHECK_FALSE(check_in("chain: fine I think"));
}

TEST_CASE("A part has a name and, as far as typed, quantity, numbers and price") {
    const auto full = part_in("oil filter x 2 [K-204 replaces K-203] = 19,80", comma()).value();
    CHECK(full.name == "oil filter");
    CHECK(full.quantity == Decimal(2));
    CHECK(full.number == "K-204");
    CHECK(full.replaces_number == "K-203");
    CHECK(text_of(*full.price) == "19.80 EUR");
    const auto bare = part_in("drain washer", comma()).value();
    CHECK(bare.name == "drain washer");
    CHECK_FALSE(bare.quantity);
    CHECK(part_in("chain 525 x 118 links", comma()).value().name == "chain 525 x 118 links");
    CHECK(part_in("washer [replaces W-1]", comma()).value().replaces_number == "W-1");
    CHECK_FALSE(part_in("filter = cheap", comma()));
    CHECK_FALSE(part_in("= 3,00", comma()));
    CHECK_FALSE(part_in("filter [K", comma()));
}

TEST_CASE("A torque has a fastener, a number, a unit and perhaps a paint mark") {
    const auto plug = torque_in("oil drain plug 24 Nm painted", comma()).value();
    CHECK(plug.fastener == "oil drain plug");
    CHECK(text_of(plug.torque) == "24 N m");
    CHECK(plug.paint_mark == true);
    const auto bolt = torque_in("M8 pinch bolt 16,5 lbf ft", comma()).value();
    CHECK(bolt.fastener == "M8 pinch bolt");
    CHECK(text_of(bolt.torque) == "16.5 lbf ft");
    CHECK_FALSE(bolt.paint_mark);
    CHECK(torque_in("axle nut 98Nm not painted", comma()).value().paint_mark == false);
    CHECK_FALSE(torque_in("plug tight", comma()));
    CHECK_FALSE(torque_in("24 Nm", comma()));
}

TEST_CASE("A paint mark is seen aligned or moved") {
    CHECK(paint_mark_in("rear axle nut: aligned").value().still_aligned);
    CHECK_FALSE(paint_mark_in("rear axle nut: moved").value().still_aligned);
    CHECK_FALSE(paint_mark_in("rear axle nut: hm"));
}
