// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/plot/palette.h"

#include "embedded/okabe_ito_csv.h"
#include "embedded/palette_csv.h"
#include "model/quantity/data_table.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <stdexcept>

namespace sumpbook::plot {

namespace {

/// A row of palette.csv.
struct Look {
    std::array<Rgb, 2> colours; ///< By Background.
    double band_share = 0;      ///< Of the colour in the fill of bands, the rest is paper.
    Mark mark = Mark::circle;
    Stroke stroke = Stroke::solid;
    Hatch hatch = Hatch::none;
};

constexpr Rgb black{0, 0, 0};
constexpr Rgb white{255, 255, 255};

constexpr std::array<std::string_view, 10> tone_names{"first", "second", "third",   "fourth", "fifth",
                                                      "sixth", "good",   "caution", "danger", "muted"};
constexpr std::array<std::string_view, 4> stroke_names{"none", "solid", "dashed", "dotted"};
constexpr std::array<std::string_view, 7> mark_names{"none",    "circle", "square",  "triangle",
                                                     "diamond", "star",   "pentagon"};
constexpr std::array<std::string_view, 6> hatch_names{"none",  "rising",  "falling",
                                                      "level", "upright", "crossed"};

template <class Enum, std::size_t Size>
Enum named(const std::array<std::string_view, Size>& names, std::string_view name) {
    const auto found = std::ranges::find(names, name);
    if (found == names.end()) throw std::logic_error("palette.csv: no such word: " + std::string(name));
    return static_cast<Enum>(found - names.begin());
}

Rgb mixed(Rgb colour, Rgb other, double share_of_other) {
    const auto mix = [&](std::uint8_t a, std::uint8_t b) {
        return static_cast<std::uint8_t>(std::lround(a * (1 - share_of_other) + b * share_of_other));
    };
    return {mix(colour.red, other.red), mix(colour.green, other.green), mix(colour.blue, other.blue)};
}

Rgb published_colour(std::string_view name) {
    static const std::vector<DataRow> rows = read_data_table(data::okabe_ito_csv());
    const auto found = std::ranges::find_if(rows, [&](const DataRow& row) { return row["name"] == name; });
    if (found == rows.end()) throw std::logic_error("okabe_ito.csv: no colour " + std::string(name));
    return rgb((*found)["hex"]);
}

std::array<Look, all_tones.size()> read_looks() {
    std::array<Look, all_tones.size()> looks;
    const std::vector<DataRow> rows = read_data_table(data::palette_csv());
    if (rows.size() != looks.size()) throw std::logic_error("palette.csv: one row a tone");
    for (const DataRow& row : rows) {
        const Rgb published = published_colour(row["colour"]);
        const auto share = [&](std::string_view column) { return row.required(column).to_double() / 100; };
        looks[named<std::size_t>(tone_names, row["tone"])] = {
            {mixed(published, published == black ? white : black, share("light_percent")),
             mixed(published, white, share("dark_percent"))},
            share("band_percent"),
            named<Mark>(mark_names, row["mark"]),
            named<Stroke>(stroke_names, row["stroke"]),
            named<Hatch>(hatch_names, row["hatch"])};
    }
    return looks;
}

const Look& look(Tone tone) {
    static const std::array<Look, all_tones.size()> looks = read_looks();
    return looks[static_cast<std::size_t>(tone)];
}

double linear_part(std::uint8_t part) {
    const double share = part / 255.0;
    return share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
}

struct Lab {
    double lightness, green_red, blue_yellow;
};

/// SOURCE: CIE 1976 L*a*b* for the white D65; sRGB to XYZ by IEC 61966-2-1. From memory.
Lab lab(Rgb colour) {
    const double red = linear_part(colour.red), green = linear_part(colour.green),
                 blue = linear_part(colour.blue);
    const auto bent = [](double share) {
        constexpr double straight_below = 216.0 / 24389;
        return share > straight_below ? std::cbrt(share) : (24389.0 / 27 * share + 16) / 116;
    };
    const double x = bent((0.4124 * red + 0.3576 * green + 0.1805 * blue) / 0.9505);
    const double y = bent(0.2126 * red + 0.7152 * green + 0.0722 * blue);
    const double z = bent((0.0193 * red + 0.1192 * green + 0.9505 * blue) / 1.0890);
    return {116 * y - 16, 500 * (x - y), 200 * (y - z)};
}

} // namespace

Rgb rgb(std::string_view hex) {
    unsigned value = 0;
    const char* const end = hex.data() + hex.size();
    const bool shape = hex.size() == 7 && hex.front() == '#';
    if (!shape || std::from_chars(hex.data() + 1, end, value, 16).ptr != end)
        throw std::logic_error("not a colour: " + std::string(hex));
    return {static_cast<std::uint8_t>(value >> 16), static_cast<std::uint8_t>(value >> 8 & 0xFF),
            static_cast<std::uint8_t>(value & 0xFF)};
}

std::string hex(Rgb colour) {
    constexpr std::string_view digits = "0123456789ABCDEF";
    std::string text = "#";
    for (const std::uint8_t part : {colour.red, colour.green, colour.blue}) {
        text += digits[part >> 4];
        text += digits[part & 0xF];
    }
    return text;
}

double relative_luminance(Rgb colour) {
    return 0.2126 * linear_part(colour.red) + 0.7152 * linear_part(colour.green) +
           0.0722 * linear_part(colour.blue);
}

double contrast_ratio(Rgb a, Rgb b) {
    const auto [darker, lighter] = std::minmax({relative_luminance(a), relative_luminance(b)});
    return (lighter + 0.05) / (darker + 0.05);
}

Surface surface(Background background) {
    if (background == Background::light)
        return {white, rgb("#1B1B1B"), rgb("#4D4D4D"), rgb("#E3E3E3"), rgb("#767676")};
    return {rgb("#1E2227"), rgb("#ECECEC"), rgb("#C2C6CB"), rgb("#363C44"), rgb("#8D949C")};
}

Rgb colour(Tone tone, Background background) {
    return look(tone).colours[static_cast<std::size_t>(background)];
}

Rgb band_fill(Tone tone, Background background) {
    return mixed(surface(background).paper, colour(tone, background), look(tone).band_share);
}

Rgb ribbon_fill(Tone tone, Background background) { return band_fill(tone, background); }

Hatch hatch(Tone tone) { return look(tone).hatch; }

Mark mark(Tone tone) { return look(tone).mark; }

Mark mark(const Series& series) { return series.mark == Mark::circle ? mark(series.tone) : series.mark; }

Stroke stroke(const Series& series) {
    return series.stroke == Stroke::solid && series.mark != Mark::none ? look(series.tone).stroke
                                                                       : series.stroke;
}

double difference(Rgb a, Rgb b) {
    const Lab one = lab(a), other = lab(b);
    return std::hypot(one.lightness - other.lightness, one.green_red - other.green_red,
                      one.blue_yellow - other.blue_yellow);
}

} // namespace sumpbook::plot
