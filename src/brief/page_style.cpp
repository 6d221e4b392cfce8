#include <string_view>

#include "brief/page_parts.hpp"

namespace latchwork::inline v0 {

// Words are set by the page and break where the paper or the screen asks. Of a chart only the cells scroll on a screen
// that is too narrow for them: row numbers and stops stand beside them in a picture of their own, which stays, and
// those of the cells' picture are cut off. --unit is what a unit of the pictures measures on the screen. In print there
// is the cells' picture alone, whole, at the scale of all sheets; src/brief/sheets.hpp reckons with the sizes given
// here.
constexpr std::string_view report::page_style = R"(
html { color: #000; background: #fff; font: 16px/1.45 sans-serif; }
body { max-width: 70rem; margin: 0 auto; padding: 0 .8rem 2rem; overflow-wrap: break-word; }
h1 { font-size: 1.6rem; line-height: 1.2; margin: 1rem 0 .2rem; }
h2 { font-size: 1.2rem; margin: 1.6rem 0 .5rem; border-bottom: 2px solid #000; }
h3 { font-size: 1rem; margin: 1.1rem 0 .3rem; }
p, ul, table { margin: .4rem 0; }
ul { padding-left: 1.3rem; }
table { border-collapse: collapse; width: 100%; }
th, td { border: 1px solid #777; padding: .25rem .5rem; text-align: left; vertical-align: top; }
td.n, th.n { text-align: right; }
table.steps th.n { width: 1%; white-space: nowrap; }
table.terms th, table.terms td { border: none; padding: .08rem .9rem .08rem 0; }
table.terms th { width: 1%; white-space: nowrap; }
td.at { width: 8.5em; white-space: nowrap; font-weight: bold; }
td.again { font-style: italic; }
.box { display: inline-block; width: .8em; height: .8em; border: 1.5px solid #000; margin-right: .4em; }
.range, .phrase { white-space: nowrap; }
.tick { display: inline-block; white-space: nowrap; margin-right: 1em; font-style: normal; }
td.name, table.facts td { overflow-wrap: anywhere; }
.chart { margin: .5rem 0; }
.chart svg, .key svg { display: block; }
.schematic svg { max-width: 32rem; }
.rows { display: none; }
.words { font-size: .85rem; line-height: 1.3; margin: .2rem 0; }
p.title { font-size: 1rem; font-weight: bold; }
.key { list-style: none; padding: 0; font-size: .85rem; line-height: 1.25; margin: 0; }
.key li { display: inline-block; width: 100%; vertical-align: top; margin-bottom: .4rem; }
.key .entry { display: table; }
.key .entry span { display: table-cell; vertical-align: top; }
.key .symbol { width: 1%; padding-right: .5em; }
.key svg { width: calc(var(--units) * .8px); max-width: 45vw; }
nav a { margin-right: 1em; color: #000; }
@media screen {
  .cut { --unit: clamp(var(--least) * 1px, (min(100vw, 70rem) - 3rem) / var(--all), 1px); display: flex; overflow-x: auto; }
  .rows { display: block; position: sticky; left: 0; z-index: 1; flex: none; }
  .rows svg { width: calc(var(--rows) * var(--unit)); }
  .cells { flex: none; overflow: hidden; width: calc(var(--cells) * var(--unit)); }
  .cells svg { width: calc(var(--whole) * var(--unit)); margin-left: calc(var(--left) * var(--unit)); }
  .cells .lw-rows, .cells .lw-strip-rows, .cells .lw-stop-mark { display: none; }
}
@media (min-width: 40rem) {
  .key li { width: 49%; }
}
@media (max-width: 30rem) {
  th, td { padding: .2rem .3rem; }
  table.steps thead, table.pieces thead { display: none; }
  table.steps, table.steps tbody, table.steps tr, table.steps td,
  table.pieces, table.pieces tbody, table.pieces tr, table.pieces td { display: block; width: auto; border: none; }
  table.steps tr, table.pieces tr { border-top: 1px solid #777; padding: .3rem 0; }
  table.steps td, table.pieces td { padding: .1rem 0; }
  table.steps td.n, table.steps td.at { display: inline-block; padding-right: 1em; }
  table.steps td.n:empty { display: none; }
  .phrase { white-space: normal; }
  .tick { margin-right: .5em; font-size: .85rem; }
  table.steps td.n::before { content: "Stop "; }
  table.pieces td.name { font-weight: bold; }
  table.pieces td[data-label]::before { content: attr(data-label) ": "; font-weight: bold; }
  table.facts, table.facts tbody, table.facts tr, table.facts th, table.facts td { display: block; width: auto; }
  table.facts td { margin: 0 0 .5rem; }
}
@media print {
  @page { size: A4; margin: 12mm; }
  html { font-size: 10.5pt; }
  body { max-width: none; padding: 0; }
  nav { display: none; }
  h2, h3, .lead, h2 + p { break-after: avoid; }
  .end { break-before: avoid; }
  tr, li { break-inside: avoid; }
  tr.repeat { break-inside: auto; break-before: avoid; }
  li:last-child, tr:last-child { break-before: avoid; }
  p, li, td { orphans: 3; widows: 3; }
  thead { display: table-header-group; }
  .chart svg { width: var(--print-width); max-width: 100%; margin: 0 auto; }
  .cells svg { max-height: 250mm; }
  .words, .key { font-size: 7.5pt; line-height: 1.25; margin: 0; }
  p.title { font-size: 9.75pt; }
  .cut { margin: 1mm 0; }
  h3.words { margin-bottom: 1mm; }
  .key li { width: 49%; margin-bottom: 1mm; }
  .key svg { width: var(--print-width); max-width: none; }
  .key .symbol { padding-right: 1mm; }
  @page across { size: A4 landscape; margin: 12mm; }
  section.wide { page: across; }
  section.wide .cells svg { max-height: 163mm; }
  section.wide .key li { width: 32.5%; }
  .schematic { break-inside: avoid; }
  section.picture { break-before: page; }
}
)";

}  // namespace latchwork::inline v0
