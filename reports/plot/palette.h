// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/plot/plot.h"

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

namespace sumpbook::plot {

/// A colour of a screen, sRGB.
struct Rgb {
    std::uint8_t red = 0;
    std::uint8_t green = 0;
    std::uint8_t blue = 0;
    auto operator<=>(const Rgb&) const = default;
};
/// "#0072B2" both ways; other text is a fault of the program: std::logic_error.
[[nodiscard]] Rgb rgb(std::string_view hex);
[[nodiscard]] std::string hex(Rgb colour);

/// 0 black to 1 white. SOURCE: WCAG 2.2, relative luminance, with the sRGB threshold 0.04045.
[[nodiscard]] double relative_luminance(Rgb colour);
/// 1 to 21, whichever is lighter. SOURCE: WCAG 2.2, contrast ratio, (L1 + 0.05) / (L2 + 0.05).
[[nodiscard]] double contrast_ratio(Rgb a, Rgb b);

/// How far two colours are apart to the eye: 0 the same, about 2 just to be told apart side by side, 100 from
/// black to white. SOURCE: CIE 1976 colour difference in L*a*b*. From memory.
[[nodiscard]] double difference(Rgb a, Rgb b);

enum class Background { light, dark };

/// What every picture has, whatever it shows. DESIGN; text 4.5:1 (WCAG 2.2, 1.4.3) on the paper and on
/// every band.
struct Surface {
    Rgb paper;
    Rgb text;
    Rgb soft_text; ///< Labels of ticks, axes.
    Rgb grid;      ///< Only there to guide the eye: no contrast asked.
    Rgb frame;     ///< Axis lines.
};
[[nodiscard]] Surface surface(Background background);

/// Lines, marks and bars: at least 3:1 on the paper and on every band.
[[nodiscard]] Rgb colour(Tone tone, Background background);
/// Bands behind the data: so pale that text and marks stand out on them.
[[nodiscard]] Rgb band_fill(Tone tone, Background background);
/// Ribbons and spans: as pale, so that the line in them stands out; their edges are drawn in the full colour.
[[nodiscard]] Rgb ribbon_fill(Tone tone, Background background);

/// Lines in a bar, so that stacked parts can be told apart in grey.
enum class Hatch { none, rising, falling, level, upright, crossed };
[[nodiscard]] Hatch hatch(Tone tone);
[[nodiscard]] Mark mark(Tone tone);

/// How a series is drawn: Mark::circle stands for the mark of its tone, Stroke::solid for its stroke where
/// there are marks. Anything else is drawn as asked.
[[nodiscard]] Mark mark(const Series& series);
[[nodiscard]] Stroke stroke(const Series& series);

inline constexpr std::array all_tones{Tone::first, Tone::second, Tone::third,   Tone::fourth, Tone::fifth,
                                      Tone::sixth, Tone::good,   Tone::caution, Tone::danger, Tone::muted};
inline constexpr std::array all_backgrounds{Background::light, Background::dark};

} // namespace sumpbook::plot
