/**
 * The sheet on paper: its head, then one page a shot, as high as Letter, which is lower than A4, and as
 * wide as A4, which is narrower. Type is no smaller than 6.5 pt, that in drawings than 4 pt.
 */
export const PRINT_STYLE = `
@media (forced-colors: active) {
  .there, .part, .subject, .setting { forced-color-adjust: none; }
}
@page { margin: 8mm 9mm; }
@media print {
  :root {
    color-scheme: light;
    --paper: #fff; --ink: #000; --faint: #333; --rule: #999; --tile: #f1f1f1;
    --there: #1f5f98; --there-pale: #a9c8e4; --needed: #a85200; --part: #d8d8d8; --subject: #e3ecf5;
    --ray: #6b5200; --lamp: #6b5200; --error: #000; --warning: #000; --note: #000;
  }
  body { padding: 0; max-width: none; font-size: 10pt; print-color-adjust: exact; -webkit-print-color-adjust: exact; orphans: 3; widows: 3; }
  .shots { display: none; }
  .scrolled { overflow: visible; }
  .setting, figure, tr, li, .bench, .block > h2, .block > h3 { break-inside: avoid; }
  h2, h3 { break-after: avoid; }
  figure.wide svg { max-width: none; min-width: 0; }
  .plan .checks { columns: 2; column-gap: 8mm; }

  .shot { break-before: page; display: grid; grid-template-columns: repeat(12, 1fr); gap: 1.5mm 5mm; align-content: start; margin-top: 0; border-top: 0; padding-top: 0; font-size: 8pt; line-height: 1.25; }
  .shot > * { grid-column: 1 / -1; margin: 0; min-width: 0; }
  .shot > header { border-bottom: 2px solid #000; padding-bottom: .6mm; }
  .shot h2 { font-size: 15pt; }
  .shot h3 { font-size: 8.5pt; margin: 0 0 .6mm; }
  .shot > header p { margin: 0; }
  .settings { grid-template-columns: repeat(5, 1fr); grid-auto-flow: dense; gap: 1.2mm; padding-right: 1px; }
  .setting { border: 1px solid #777; border-left: 4px solid #000; padding: .5mm 1.5mm .8mm; }
  .setting.wordy { grid-column: span 2; }
  .setting .value { font-size: 15pt; }
  .setting .value.long { font-size: 13pt; }
  .setting dt, .setting .note { font-size: 7pt; line-height: 1.2; }
  .shot > .block:has(+ .pair) { grid-column: span 3; }
  .shot > .block + .pair { grid-column: span 9; grid-template-columns: 1fr 1fr; gap: 0 5mm; }
  .shot > .block, .pair { font-size: 7.5pt; line-height: 1.2; }
  .shot .block { margin: 0; }
  .shot .bench { gap: .3mm 2mm; }
  .shot .checks label { gap: 1.5mm; padding: .2mm 0; }
  .shot .checks input { width: 3.2mm; height: 3.2mm; margin: 0; }
  .limits li, .findings li { margin-bottom: .4mm; }

  .drawings { columns: 3; column-gap: 5mm; }
  .drawings.many { columns: 4; column-gap: 3mm; }
  figure { margin-bottom: 1.6mm; }
  .shot figcaption { font-size: 6.8pt; line-height: 1.15; margin-top: .3mm; }
  .shot figure h3 { font-size: 7.5pt; margin: 0; }
  .drawings figure:has(.actual) { column-span: all; }
  .drawings :is(svg:not(.actual), img) { max-width: 55mm; }
  .drawings.many :is(svg:not(.actual), img) { max-width: 42.5mm; }
  .drawings.many figcaption { font-size: 6.5pt; }
  .focus { break-inside: avoid; }
  .focus th, .focus td { padding: .2mm 4mm .2mm 0; }
  /* A short table stays in one piece, beside its words; one of four columns needs more room. */
  .focus .block:not(:has(tr:nth-child(9))) { display: grid; grid-template-columns: 1fr auto; gap: .5mm 5mm; }
  .focus .block:not(:has(tr:nth-child(9))) table { grid-area: 1 / 2 / span 3; }
  .focus .block:has(tr:nth-child(9)) { columns: 4; column-gap: 5mm; }
  .focus .block:has(tr:nth-child(9) > :nth-child(4)) { columns: 3; }
  .focus table { width: auto; }
  .focus th:first-child { min-width: 0; }
  .focus :is(h3, p) { column-span: all; }

  .log { break-inside: avoid; }
  .log.long { columns: 2; column-gap: 5mm; }
  .log h3 { column-span: all; }
  .log th, .log td { height: 5.8mm; padding: .2mm 1mm; overflow-wrap: normal; }
  .log thead th { height: auto; font-weight: 400; }
  .log tr > :nth-child(-n+2) { width: 10mm; min-width: 0; }
  .log td:last-child { width: 40%; }

  .measurements { break-before: page; break-inside: avoid; margin-top: 0; border-top: 0; padding-top: 0; }
  .measurements > ol > li { border-color: #777; border-left-color: #000; padding: 1.5mm 3mm 2.5mm; margin-bottom: 2.5mm; }
  .boxes > div { flex-basis: 32mm; }
  .boxes > .remarks { flex-basis: 40mm; }
  .measurements > ol > li > header code { font-size: 7.5pt; }
  .boxes dd { height: 8.5mm; border-color: #000; }
}`;
