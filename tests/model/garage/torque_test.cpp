// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/garage/torque.h"

#include "tests/catch.h"

using namespace sumpbook;

namespace {

WrittenTorque nm(const char* number) { return {Decimal::parse(number).value(), TorqueUnit::nm}; }

} // namespace

TEST_CASE("a torque is doubted only past 1.25 x and under 0.25 x the published values", "[torque]") {
    // M8: 0.25 x 24.6 = 6.15, 1.25 x 46.9 = 58.625
    CHECK(judge_torque("M8", nm("6.14")) == TorquePlausibility::too_low);
    CHECK(judge_torque("M8", nm("6.15")) == TorquePlausibility::plausible);
    CHECK(judge_torque("M8", nm("22")) == TorquePlausibility::plausible);
    CHECK(judge_torque("M8", nm("58.625")) == TorquePlausibility::plausible);
    CHECK(judge_torque("M8", nm("58.626")) == TorquePlausibility::too_high);
    CHECK(judge_torque("M8", nm("220")) == TorquePlausibility::too_high);
}

TEST_CASE("other units are converted first", "[torque]") {
    // 58.625 N m is 43.24 lbf ft
    CHECK(judge_torque("M8", {Decimal::parse("43.2").value(), TorqueUnit::lbf_ft}) ==
          TorquePlausibility::plausible);
    CHECK(judge_torque("M8", {Decimal::parse("43.3").value(), TorqueUnit::lbf_ft}) ==
          TorquePlausibility::too_high);
}

TEST_CASE("a thread is known by its diameter and pitch however it is typed", "[torque]") {
    const auto band = [](const char* thread) { return torque_band(thread).value().highest_nm; };
    CHECK(band("M8") == band("m8 x 1.25"));
    CHECK(band("M8x1") == band("M8 \u00d7 1,0"));
    CHECK(band("M8x1") > band("M8"));
    CHECK(band("M10*1.25") > band("M10"));
    for (const char* unknown : {"", "M", "8", "M80", "M8x0.75", "M8x", "M8x1x2", "1/4-20 UNC"}) {
        INFO(unknown);
        CHECK_FALSE(torque_band(unknown).has_value());
        CHECK(judge_torque(unknown, nm("20")) == TorquePlausibility::unknown_thread);
    }
}
