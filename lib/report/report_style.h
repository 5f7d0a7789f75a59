// report_style.h - how the HTML page looks: screen, dark, telephone and paper.
#pragma once

#include <string_view>

namespace pluckbook {

/// Contrast with the ground, for text at least 4.5:1, for lines and marks at least 3:1.
inline constexpr std::string_view report_style = R"css(
:root { --ground: #ffffff; --ink: #1b1b1b; --quiet: #555555; --rule: #8a8a8a; --faint: #d9d9d9;
  --diet: #0072b2; --need: #9c3f00; --bags: #222222; --link: #00538a; --panel: #f4f1ea; }
@media screen and (prefers-color-scheme: dark) {
  :root { --ground: #16191c; --ink: #ecebe8; --quiet: #b4b2ad; --rule: #8a8f94; --faint: #3a3f44;
    --diet: #5cb8f0; --need: #f0a050; --bags: #f2f2f2; --link: #8cc8f5; --panel: #22272b; } }
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; }
body { margin: 0; background: var(--ground); color: var(--ink);
  font: 1rem/1.5 "Liberation Sans", Arial, Helvetica, sans-serif; overflow-wrap: anywhere; }
main { max-width: 64rem; margin: 0 auto; padding: 1rem; }
h1 { font-size: 1.5rem; line-height: 1.2; margin: 0 0 .75rem; }
h2 { font-size: 1.25rem; line-height: 1.25; margin: 2rem 0 .5rem;
  border-top: 2px solid var(--ink); padding-top: .5rem; }
h3 { font-size: 1.05rem; margin: 1.25rem 0 .25rem; }
h4 { font-size: 1rem; margin: 1rem 0 .25rem; }
p { margin: .35rem 0; }
ul { margin: .35rem 0; padding-left: 1.25rem; }
a { color: var(--link); }
a:focus-visible, summary:focus-visible { outline: 3px solid var(--diet); outline-offset: 2px; }
.advice { background: var(--panel); border-left: .4rem solid var(--need); padding: .25rem 1rem;
  margin: .75rem 0; }
.advice h2 { border: 0; margin: .5rem 0 .25rem; padding: 0; font-size: 1.1rem; }
.advice p { font-size: 1.05rem; }
.advice a { color: inherit; text-decoration: underline dotted; text-underline-offset: .2em; }
.quiet, figcaption, caption { color: var(--quiet); }
.cautions { border: 2px solid var(--need); padding: .25rem 1rem; margin: .75rem 0; }
.cautions h4 { margin: .25rem 0; }
.charts { display: grid; gap: 1rem; grid-template-columns: repeat(auto-fit, minmax(min(100%, 26rem), 1fr)); }
figure { margin: 0; }
.chart-title { font-weight: 600; margin: 0 0 .25rem; }
figcaption, caption { font-size: .9rem; text-align: left; }
caption { width: 0; min-width: 100%; }
.tables { display: flex; flex-wrap: wrap; gap: .5rem 2.5rem; align-items: start; }
.table { margin: .5rem 0; max-width: 100%; }
table { border-collapse: collapse; font-size: .95rem; font-variant-numeric: tabular-nums; }
th, td { padding: .15rem .6rem .15rem 0; vertical-align: top; text-align: left; }
thead th { border-bottom: 1px solid var(--ink); font-weight: 600; vertical-align: bottom; }
tbody th { font-weight: 400; }
tbody tr { border-bottom: 1px solid var(--faint); }
.number { text-align: right; }
details { margin: .75rem 0; }
summary { cursor: pointer; font-weight: 600; }
dl { columns: 20rem auto; column-gap: 2.5rem; }
dt { font-weight: 600; break-after: avoid; }
dd { margin: 0 0 .35rem 1.25rem; }
.line { font-variant-numeric: tabular-nums; }
svg.chart { display: block; width: 100%; height: auto; }
svg.chart text { font: 13px "Liberation Sans", Arial, Helvetica, sans-serif; fill: var(--ink); }
.grid { stroke: var(--faint); }
.tick { stroke: var(--rule); }
.band { fill: var(--diet); fill-opacity: .18; stroke: none; }
.diet { fill: none; stroke: var(--diet); stroke-width: 2.5; }
.path { fill: none; stroke: var(--diet); stroke-width: .6; stroke-opacity: .6; }
.need { fill: none; stroke: var(--need); stroke-width: 2.5; stroke-dasharray: 9 5; }
.class-curve { fill: none; stroke: var(--quiet); stroke-width: 1.5; stroke-dasharray: 1.5 4; }
.bags circle { fill: var(--bags); stroke: var(--ground); stroke-width: 1; }
.earlier circle { fill: none; stroke: var(--rule); stroke-width: 1.2; }
.crossing { stroke: var(--need); stroke-width: 1.2; stroke-dasharray: 2 3; }
@media (max-width: 34rem) {
  main { padding: .6rem; }
  table, thead, tbody, tr { display: block; width: 100%; }
  thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
  caption { display: block; }
  tbody th, tbody td, tbody td.number { display: block; text-align: left; padding: 0; }
  svg.chart text { font-size: 16px; }
  tbody th { font-weight: 600; }
  tbody td::before { content: attr(data-head) ": "; color: var(--quiet); }
  tbody tr { padding: .3rem 0; }
}
@page { margin: 8mm; }
@media print {
  body { font-size: 7.8pt; line-height: 1.14; background: #ffffff; color: #000000; }
  main { max-width: none; padding: 0; } p, ul { margin: 1.5pt 0; }
  h2 { font-size: 11.5pt; margin: 8pt 0 3pt; } h3, h4 { font-size: 9.5pt; margin: 5pt 0 2pt; }
  h1 { font-size: 16pt; } .advice p { font-size: 10.5pt; line-height: 1.3; } .advice h2 { font-size: 12pt; }
  .advice, .cautions { background: none; margin: 4pt 0; padding: 2pt 8pt; }
  th, td { padding-top: .4pt; padding-bottom: .4pt; } ul { columns: 2; column-gap: 14pt; }
  .charts { grid-template-columns: 1fr 1fr; gap: 8pt; }
  table, .table, figcaption, caption { font-size: 7.3pt; } svg.chart { max-height: 3.5cm; } .table { margin: 2pt 0; } .tables { gap: 0 18pt; }
  figure, tr, li, .advice, .cautions { break-inside: avoid; }
  h2, h3, h4, caption { break-after: avoid; }
  details { display: none; } dl { columns: 3; margin: 2pt 0; } dt, dd { margin-bottom: 0; }
  a { color: inherit; text-decoration: none; }
  a[href^="http"]::after { content: " (" attr(href) ")";
}
}
)css";

}  // namespace pluckbook
