// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/write/html_style.h"

namespace sumpbook::write {

// Severity by the Okabe-Ito hues, darkened on white and as they are on black until text reaches 4.5:1.
std::string_view html_style() {
    return R"css(:root { color-scheme: light dark; }
body { margin: 0; background: #ffffff; color: #1a1a1a; font: 1rem/1.5 system-ui, sans-serif; }
main { max-width: 60rem; margin: 0 auto; padding: 1.5rem; }
h1 { font-size: 1.8rem; line-height: 1.2; margin: 0 0 1rem; }
h2 { font-size: 1.3rem; line-height: 1.3; margin: 2.2rem 0 0.6rem; border-top: 1px solid #c8c8c8; padding-top: 1.2rem; }
h3 { font-size: 1.1rem; margin: 1.6rem 0 0.4rem; }
p { max-width: 42rem; margin: 0.5rem 0; overflow-wrap: anywhere; }
p.good, p.caution, p.danger { border-left: 0.3rem solid; padding-left: 0.7rem; }
p.good { border-color: #009e73; }
p.caution { border-color: #e69f00; }
p.danger { border-color: #d55e00; }
.good .mark, p.good strong, td.good { color: #00684c; }
.caution .mark, p.caution strong, td.caution { color: #7a5300; }
.danger .mark, p.danger strong, td.danger { color: #a84300; }
td.good, td.caution, td.danger { font-weight: 600; }
td.short, td.good, td.caution, td.danger { white-space: nowrap; }
dl { margin: 0.8rem 0; max-width: 42rem; }
dl div { display: flex; gap: 1rem; padding: 0.15rem 0; }
dt { flex: 0 0 12rem; color: #555555; }
dd { margin: 0; flex: 1; overflow-wrap: anywhere; }
.scroll { overflow-x: auto; margin: 0.8rem 0; }
.scroll:focus-visible { outline: 2px solid #0072b2; outline-offset: 2px; }
table { border-collapse: collapse; font-size: 0.92rem; font-variant-numeric: tabular-nums; }
th, td { text-align: left; vertical-align: top; padding: 0.35rem 0.9rem 0.35rem 0; border-bottom: 1px solid #dddddd; }
th { color: #555555; font-weight: 600; border-bottom-color: #888888; }
td { min-width: 3.5rem; max-width: 28rem; }
th.number, td.number { text-align: right; white-space: nowrap; }
figure { margin: 1rem 0; }
figure svg { display: block; width: 100%; height: auto; max-width: 56rem; }
figure.code svg { width: 40mm; height: 40mm; }
figcaption { max-width: 42rem; color: #555555; font-size: 0.92rem; }
@media (max-width: 36rem) {
main { padding: 1rem; }
dl div { display: block; }
}
@media (prefers-color-scheme: dark) {
body { background: #161616; color: #ececec; }
h2 { border-top-color: #4a4a4a; }
dt, th, figcaption { color: #b4b4b4; }
th, td { border-bottom-color: #3a3a3a; }
th { border-bottom-color: #8a8a8a; }
.good .mark, p.good strong, td.good { color: #35c79a; }
.caution .mark, p.caution strong, td.caution { color: #f0b429; }
.danger .mark, p.danger strong, td.danger { color: #ff8a4c; }
}
@media print {
@page { margin: 18mm 16mm; }
:root { color-scheme: light; }
body { background: #ffffff; color: #000000; font-size: 10pt; }
main { max-width: none; padding: 0; }
h1, h2, h3 { break-after: avoid; }
dt, th, figcaption { color: #444444; }
.good .mark, p.good strong, td.good { color: #00684c; }
.caution .mark, p.caution strong, td.caution { color: #7a5300; }
.danger .mark, p.danger strong, td.danger { color: #a84300; }
figure, dl div, tr { break-inside: avoid; }
p { orphans: 3; widows: 3; max-width: none; }
.scroll { overflow: visible; }
table { font-size: 8.5pt; }
thead { display: table-header-group; }
td { min-width: 0; overflow-wrap: anywhere; }
th.number, td.number, td.good, td.caution, td.danger { white-space: normal; }
}
)css";
}

} // namespace sumpbook::write
