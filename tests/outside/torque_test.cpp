// SPDX-License-Identifier: GPL-3.0-or-later
// Tightening torques against VDI 2230, Shigley and workshop tables; sources stand in the tables.
#include "model/garage/torque.h"

#include "tests/catch.h"
#include "tests/outside/check_table.h"
#include "tests/outside/numbers.h"

using namespace sumpbook;
using namespace sumpbook::outside;

namespace {

void check_every_class_is_plausible(const CheckRow& row) {
    for (const char* column : {"M_8.8_Nm", "M_10.9_Nm", "M_12.9_Nm"}) {
        if (row.empty(column)) continue;
        const WrittenTorque torque{Decimal::parse(row[column]).value(), TorqueUnit::nm};
        CHECK(judge_torque(row["thread"], torque) == TorquePlausibility::plausible);
    }
}

/// The row of std-torque-k.csv that begins like this; counts as tested.
const CheckRow& k_row(const std::string& start) {
    for (const CheckRow& row : check_table("std-torque-k.csv")) {
        if (!row["item"].starts_with(start)) continue;
        row.count_as_tested();
        return row;
    }
    throw std::logic_error("std-torque-k.csv has no row " + start);
}

} // namespace

TEST_CASE("the band of a thread hangs on two rows of VDI 2230 and holds all others", "[outside][torque]") {
    for (const CheckRow& row : check_table("std-bolt-torque-vdi.csv")) {
        TESTING_ROW(row);
        check_every_class_is_plausible(row);
        const auto band = torque_band(row["thread"]).value();
        if (row["mu"] == "0.12") CHECK(band.lowest_nm.to_double() == Approx(0.25 * row.number("M_8.8_Nm")));
        if (row["mu"] == "0.14") CHECK(band.highest_nm.to_double() == Approx(1.25 * row.number("M_12.9_Nm")));
    }
}

TEST_CASE("published workshop torques are not doubted", "[outside][torque]") {
    for (const CheckRow& row : check_table("std-bolt-torque-published.csv")) {
        TESTING_ROW(row);
        check_every_class_is_plausible(row);
    }
}

TEST_CASE("the band of M8 as first worked out", "[outside][torque]") {
    const auto limits = numbers_in(k_row("plausibility band")["note"]); // "M8: above 58.6 or below 6.2 N m"
    const auto band = torque_band("M8").value();
    CHECK(band.highest_nm.to_double() == Approx(limits.at(1)).epsilon(0).margin(0.051));
    CHECK(band.lowest_nm.to_double() == Approx(limits.at(2)).epsilon(0).margin(0.051));
}

TEST_CASE("worked examples of T = K d F", "[outside][torque]") {
    CHECK(k_row("relation")["value"] == "T = K d F");
    // 3/4 in, 25 kip, K 0.20; pound-force 4.4482216152605 N (exact)
    const auto shigley = numbers_in(k_row("Shigley Example 8-3(b)")["value"]);
    CHECK(tightening_torque_nm(0.20, 0.75 * 25.4, 25'000 * 4.4482216152605) ==
          Approx(shigley.back()).epsilon(0).margin(0.05));
    // ten bolts of 12 mm tightened to 90 N m: the mean preload goes with K = 0.219
    const auto bolts = numbers_in(k_row("Shigley Table 8-14")["value"]);
    CHECK(tightening_torque_nm(0.219, 12, bolts.at(0) * 1000) == Approx(90).epsilon(0.005));
    // 84.3 mm2 at 70 % of 580 MPa
    const auto m12 = numbers_in(k_row("M12 8.8, As 84.3")["value"]);
    CHECK(84.3 * 580 * 0.70 / 1000 == Approx(m12.at(0)).epsilon(0).margin(0.05));
    CHECK(tightening_torque_nm(0.2, 12, 84.3 * 580 * 0.70) == Approx(m12.at(1)).epsilon(0).margin(0.05));
    // 75 % of the proof loads of ISO 898-1, class 8.8
    const auto m8 = numbers_in(k_row("M8 8.8 at 75 % proof")["value"]);
    CHECK(tightening_torque_nm(0.2, 8, 0.75 * 21233) == Approx(m8.at(0)).epsilon(0).margin(0.05));
    const auto others = numbers_in(k_row("M6 8.8 / M10 8.8 / M12 8.8")["value"]);
    CHECK(tightening_torque_nm(0.2, 6, 0.75 * 11600) == Approx(others.at(0)).epsilon(0).margin(0.1));
    CHECK(tightening_torque_nm(0.2, 10, 0.75 * 33700) == Approx(others.at(1)).epsilon(0).margin(0.1));
    CHECK(tightening_torque_nm(0.2, 12, 0.75 * 48900) == Approx(others.at(2)).epsilon(0).margin(0.1));
}
