// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/plot/palette.h"
#include "tests/catch.h"
#include "tests/outside/check_table.h"

#include <cmath>
#include <vector>

using namespace sumpbook;
using namespace sumpbook::outside;
using namespace sumpbook::plot;

namespace {

constexpr Rgb white{255, 255, 255};
constexpr Rgb black{0, 0, 0};

/// "4.5:1" as 4.5.
double ratio_of(const CheckRow& row) { return std::stod(row["value"].substr(0, row["value"].find(':'))); }

/// Everything a mark or a word can stand on.
std::vector<Rgb> grounds(Background background) {
    std::vector<Rgb> result{surface(background).paper};
    for (const Tone tone : all_tones)
        result.push_back(band_fill(tone, background));
    return result;
}

/// 0 to 360 degrees round the colour circle.
double hue(Rgb colour) {
    const double red = colour.red, green = colour.green, blue = colour.blue;
    return std::fmod(
        std::atan2(std::sqrt(3.0) * (green - blue), 2 * red - green - blue) * 180 / 3.14159265 + 360, 360);
}

double apart(double a, double b) { return std::abs(std::remainder(a - b, 360)); }

} // namespace

TEST_CASE("Luminance and contrast of published colours", "[outside][colours]") {
    for (const CheckRow& row : check_table("std-colours.csv")) {
        TESTING_ROW(row);
        const Rgb published = rgb(row["hex"]);
        CHECK(hex(published) == row["hex"]);
        CHECK(relative_luminance(published) == Approx(row.number("rel_luminance")).margin(0.00006));
        CHECK(contrast_ratio(published, white) == Approx(row.number("contrast_vs_white")).margin(0.0051));
        CHECK(contrast_ratio(black, published) == Approx(row.number("contrast_vs_black")).margin(0.0051));
    }
}

TEST_CASE("Worked contrasts of WCAG 2.2", "[outside][colours]") {
    const CheckRow& extreme = check_row("std-contrast-rules.csv", "black on white");
    {
        TESTING_ROW(extreme);
        CHECK(contrast_ratio(black, white) == Approx(ratio_of(extreme)));
    }
    for (const auto& [key, colour, ratio, passes] : {std::tuple{"#777777 on white", "#777777", 4.48, false},
                                                     {"#767676 on white", "#767676", 4.54, true},
                                                     {"#FF0000 on white", "#FF0000", 4.00, false}}) {
        const CheckRow& row = check_row("std-contrast-rules.csv", key);
        TESTING_ROW(row);
        REQUIRE(std::stod(row["value"]) == Approx(ratio));
        CHECK(contrast_ratio(rgb(colour), white) == Approx(ratio).margin(0.0051));
        CHECK((contrast_ratio(rgb(colour), white) >= 4.5) == passes);
    }
}

TEST_CASE("The ratio, the luminance and its threshold are those of WCAG 2.2", "[outside][colours]") {
    const CheckRow& ratio = check_row("std-contrast-rules.csv", "ratio");
    {
        TESTING_ROW(ratio);
        CHECK(ratio["value"] == "(L1+0.05)/(L2+0.05)");
        const Rgb a = rgb("#D55E00"), b = rgb("#1E2227");
        CHECK(contrast_ratio(a, b) ==
              Approx((relative_luminance(a) + 0.05) / (relative_luminance(b) + 0.05)));
    }
    const CheckRow& luminance = check_row("std-contrast-rules.csv", "luminance");
    {
        TESTING_ROW(luminance);
        CHECK(relative_luminance({255, 0, 0}) == Approx(0.2126));
        CHECK(relative_luminance({0, 255, 0}) == Approx(0.7152));
        CHECK(relative_luminance({0, 0, 255}) == Approx(0.0722));
        CHECK(relative_luminance({10, 10, 10}) == Approx(10 / 255.0 / 12.92));
        CHECK(relative_luminance({11, 11, 11}) == Approx(std::pow((11 / 255.0 + 0.055) / 1.055, 2.4)));
    }
    const CheckRow& threshold = check_row("std-contrast-rules.csv", "threshold erratum");
    {
        TESTING_ROW(threshold);
        for (int value = 0; value < 256; ++value) // no 8-bit value lies between the two thresholds
            CHECK((value / 255.0 <= 0.03928) == (value / 255.0 <= 0.04045));
    }
}

TEST_CASE("Marks stand out 3:1 and words 4.5:1 from everything they can stand on", "[outside][colours]") {
    const CheckRow& marks = check_row("std-contrast-rules.csv", "WCAG 2.2 SC 1.4.11 non-text");
    const CheckRow& words = check_row("std-contrast-rules.csv", "WCAG 2.2 SC 1.4.3 normal text (AA)");
    TESTING_ROW(marks);
    TESTING_ROW(words);
    REQUIRE(ratio_of(marks) == 3);
    REQUIRE(ratio_of(words) == 4.5);
    for (const Background background : all_backgrounds)
        for (const Rgb ground : grounds(background)) {
            CAPTURE(hex(ground));
            for (const Tone tone : all_tones) {
                CAPTURE(static_cast<int>(tone), hex(colour(tone, background)));
                CHECK(contrast_ratio(colour(tone, background), ground) >= ratio_of(marks));
            }
            CHECK(contrast_ratio(surface(background).text, ground) >= ratio_of(words));
            CHECK(contrast_ratio(surface(background).soft_text, ground) >= ratio_of(words));
            CHECK(contrast_ratio(surface(background).frame, surface(background).paper) >= ratio_of(marks));
        }
}

TEST_CASE("Severities have the colours of ISO 22324 and say the same by a shape", "[outside][colours]") {
    struct Meaning {
        const char* colour;
        const char* meaning;
        Tone tone;
        double hue_from, hue_to;
    };
    for (const Meaning& expected : {Meaning{"red", "danger", Tone::danger, -20, 30},
                                    Meaning{"yellow", "caution", Tone::caution, 40, 65},
                                    Meaning{"green", "safe", Tone::good, 90, 170}}) {
        const CheckRow& row = check_row("std-severity-colours.csv", expected.colour);
        TESTING_ROW(row);
        CHECK(row["meaning"] == expected.meaning);
        for (const Background background : all_backgrounds) {
            const double middle = (expected.hue_from + expected.hue_to) / 2;
            CAPTURE(hex(colour(expected.tone, background)));
            CHECK(apart(hue(colour(expected.tone, background)), middle) <=
                  (expected.hue_to - expected.hue_from) / 2);
        }
    }
    const CheckRow& redundancy = check_row("std-severity-colours.csv", "redundancy");
    TESTING_ROW(redundancy);
    CHECK(mark(Tone::good) != mark(Tone::caution));
    CHECK(mark(Tone::caution) != mark(Tone::danger));
    CHECK(mark(Tone::good) != mark(Tone::danger));
}

TEST_CASE("No two series look the same in grey", "[outside][colours]") {
    const std::array tones{Tone::first, Tone::second, Tone::third, Tone::fourth, Tone::fifth, Tone::sixth};
    for (const Tone a : tones)
        for (const Tone b : tones) {
            if (a == b) continue;
            const Series first{"a", {}, a}, second{"b", {}, b};
            CHECK(mark(first) != mark(second));
            CHECK(hatch(a) != hatch(b));
            for (const Background background : all_backgrounds) // DESIGN: two hues, not two blues
                CHECK(difference(colour(a, background), colour(b, background)) >= 25);
        }
}
