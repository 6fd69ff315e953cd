// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/write/html.h"

#include "reports/plot/palette.h"
#include "reports/plot/plot.h"
#include "reports/write/html_style.h"
#include "tests/catch.h"
#include "tests/reports/write/hostile.h"
#include "tests/reports/write/xml_check.h"

#include <rapidcheck/catch.h>

#include <algorithm>
#include <memory>
#include <set>

using namespace sumpbook;
using namespace sumpbook::document;
using write::testing::read_markup;

namespace {

bool holds(const std::string& text, std::string_view part) { return text.find(part) != std::string::npos; }

/// The text in every place of a picture that holds text.
plot::Plot picture_of(const std::string& text) {
    plot::Plot plot;
    plot.title = text;
    plot.description = text;
    plot.x = {plot::AxisKind::category, text, {}, {}, {text, text}};
    plot.y.title = text;
    plot.bars.push_back({text, {1, 2}, plot::Tone::first});
    plot.bars.push_back({text + "2", {1, 2}, plot::Tone::second});
    plot.bands.push_back({text, 0, 1, plot::Tone::good});
    plot.rules.push_back({text, 2, false, plot::Tone::danger, plot::Stroke::dashed});
    return plot;
}

/// The text in every place of a document.
Document everywhere(const std::string& text) {
    Document document;
    document.heading(text, 1).heading(text, 2).sentence(text).sentence(text, Severity::danger);
    document.facts({{{text, text}}});
    document.table({{{text, Align::left}, {text, Align::right}},
                    {{Cell{text, Severity::none}, Cell{text, Severity::caution}}}});
    document.figure(std::make_shared<const plot::Plot>(picture_of(text)));
    return document;
}

const std::set<std::string>& known_tags() {
    static const std::set<std::string> tags{
        "html",    "head", "meta",   "title",   "style",  "body",     "main",      "h1",    "h2",    "p",
        "strong",  "span", "dl",     "div",     "dt",     "dd",       "table",     "thead", "tbody", "tr",
        "th",      "td",   "figure", "svg",     "desc",   "defs",     "clipPath",  "rect",  "line",  "g",
        "pattern", "path", "text",   "polygon", "circle", "polyline", "figcaption"};
    return tags;
}

void check_safe(const std::string& text) {
    INFO(text);
    const auto page = write::html(everywhere(text));
    const auto read = read_markup(page);
    CHECK(read.fault.empty());
    for (const auto& tag : read.tags) {
        INFO(tag);
        CHECK(known_tags().contains(tag));
    }
    for (const auto& name : read.names) {
        INFO(name);
        CHECK_FALSE(name.starts_with("on"));
        CHECK(name != "href");
        CHECK(name != "src");
        CHECK(name != "style");
    }
    CHECK(std::ranges::count(read.tags, "style") == 1);
    CHECK(std::ranges::count(read.tags, "h1") == 1);
    CHECK_FALSE(holds(page, "\xE2\x80\xAE"));
    CHECK(page.find('\0') == std::string::npos);
}

/// Every "color: #rrggbb" of a stretch of style.
std::vector<plot::Rgb> text_colours(std::string_view css) {
    constexpr std::string_view property = " color: #";
    std::vector<plot::Rgb> colours;
    for (auto at = css.find(property); at != std::string_view::npos; at = css.find(property, at + 1))
        colours.push_back(plot::rgb(css.substr(at + property.size() - 1, 7)));
    return colours;
}

} // namespace

TEST_CASE("Nothing an owner typed is read as markup, wherever it stands") {
    for (const auto& text : write::testing::hostile_texts())
        check_safe(text);
}

TEST_CASE("A page of any text is well-formed") {
    rc::prop("any bytes in any place", [](const std::string& text) {
        RC_ASSERT(read_markup(write::html(everywhere(text))).fault.empty());
    });
}

TEST_CASE("A page needs nothing else and forbids fetching it") {
    const auto page = write::html(everywhere("plain"));
    CHECK(page.starts_with("<!DOCTYPE html>\n<html xmlns=\"http://www.w3.org/1999/xhtml\" lang=\"en\">"));
    CHECK(holds(page, "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src "
                      "'unsafe-inline'; base-uri 'none'; form-action 'none'\"/>"));
    CHECK(holds(page, "<title>plain</title>"));
    CHECK_FALSE(holds(page, "@import"));
    CHECK_FALSE(holds(page, "@font-face"));
    std::size_t urls = 0;
    for (auto at = page.find("url("); at != std::string::npos; at = page.find("url(", at + 1)) {
        ++urls;
        CHECK(page.substr(at, 5) == "url(#"); // a part of this very page
    }
    CHECK(urls > 0);
    for (auto at = page.find("http"); at != std::string::npos; at = page.find("http", at + 1)) {
        const auto after = page.substr(at, 27);
        CHECK((after.starts_with("http-equiv") || after.starts_with("http://www.w3.org/")));
    }
}

TEST_CASE("Severity is said by a mark and a word beside the colour") {
    Document document;
    document.heading("Oil", 1).sentence("Stop.", Severity::danger).sentence("■ act. Stop.", Severity::danger);
    document.table({{{"State", {}}}, {{Cell{"overdue", Severity::danger}}, {Cell{"later", Severity::good}}}});
    const auto page = write::html(document);
    CHECK(
        holds(page, "<p class=\"danger\"><span class=\"mark\">■</span> <strong>Danger.</strong> Stop.</p>"));
    CHECK(holds(page, "<p class=\"danger\">■ act. Stop.</p>")); // says both by itself
    CHECK(holds(page, "<td class=\"danger\"><span class=\"mark\">■</span> overdue</td>"));
    CHECK(holds(page, "<td class=\"good\"><span class=\"mark\">●</span> later</td>"));
}

TEST_CASE("A table has headings and can be scrolled with the keyboard") {
    Document document;
    document.heading("Spent", 1)
        .table({{{"Year", {}}, {"Sum", Align::right}}, {{Cell{"2025", {}}, Cell{"12", {}}}}});
    const auto page = write::html(document);
    CHECK(holds(page, "<div class=\"scroll\" role=\"group\" tabindex=\"0\" aria-label=\"Table: Spent\">"));
    CHECK(holds(page, "<th scope=\"col\">Year</th><th scope=\"col\" class=\"number\">Sum</th>"));
    CHECK(holds(page, "<td class=\"short\">2025</td><td class=\"number\">12</td>"));
}

TEST_CASE("Text keeps 4.5 to 1 to its ground, light, dark and on paper") { // WCAG 2.2, 1.4.3
    const auto css = write::html_style();
    const auto dark = css.find("@media (prefers-color-scheme: dark)");
    const auto print = css.find("@media print");
    REQUIRE(dark != std::string_view::npos);
    REQUIRE(print > dark);
    const auto on = [](std::string_view part, plot::Rgb ground) {
        const auto colours = text_colours(part);
        REQUIRE(colours.size() >= 4);
        for (const auto colour : colours) {
            INFO(plot::hex(colour));
            CHECK(plot::contrast_ratio(colour, ground) >= 4.5);
        }
    };
    on(css.substr(0, dark), plot::rgb("#ffffff"));
    on(css.substr(dark, print - dark), plot::rgb("#161616"));
    on(css.substr(print), plot::rgb("#ffffff"));
}

TEST_CASE("Style can stand in HTML and XML alike") {
    CHECK(write::html_style().find_first_of("<&") == std::string_view::npos);
}

TEST_CASE("Digits of one number stay on one line") {
    Document document;
    document.heading("Spent", 1).sentence("In all 36 198.27 EUR on 3 May 2026.");
    CHECK(holds(write::html(document), "<p>In all 36\xC2\xA0"
                                       "198.27 EUR on 3 May 2026.</p>"));
}
