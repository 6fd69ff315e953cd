// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/write/svg_parts.h"

#include "reports/plot/palette.h"
#include "reports/write/svg.h"

namespace sumpbook::write {
namespace {

using plot::Background;
using plot::Tone;

std::string rule(const std::string& selector, const std::string& property, plot::Rgb colour) {
    return selector + " { " + property + ": " + plot::hex(colour) + "; }\n";
}

std::string tone_rules(Tone tone, Background background) {
    const std::string name(tone_name(tone));
    const auto full = plot::colour(tone, background);
    return rule(".plot .line-" + name, "stroke", full) + rule(".plot .fill-" + name, "fill", full) +
           rule(".plot .band-" + name, "fill", plot::band_fill(tone, background)) +
           rule(".plot .ribbon-" + name, "fill", plot::ribbon_fill(tone, background));
}

std::string rules_for(Background background) {
    const auto surface = plot::surface(background);
    std::string css =
        rule(".plot .text", "fill", surface.text) + rule(".plot .soft", "fill", surface.soft_text) +
        rule(".plot .grid", "stroke", surface.grid) + rule(".plot .frame", "stroke", surface.frame) +
        rule(".plot .paper", "fill", surface.paper) + rule(".plot .hatch", "stroke", surface.paper);
    for (const auto tone : plot::all_tones)
        css += tone_rules(tone, background);
    return css;
}

} // namespace

std::string svg_style() {
    return ".plot text { font-family: system-ui, sans-serif; }\n" + rules_for(Background::light) +
           "@media screen and (prefers-color-scheme: dark) {\n" + rules_for(Background::dark) + "}\n";
}

std::string svg_file(const plot::Plot& plot) {
    std::string picture = svg(plot, "picture");
    const auto end_of_tag = picture.find('>') + 1;
    return picture.insert(end_of_tag, "\n<style>\n.plot text { font-family: sans-serif; }\n" +
                                          rules_for(Background::light) +
                                          "</style>\n<rect width=\"100%\" height=\"100%\" class=\"paper\"/>");
}

} // namespace sumpbook::write
