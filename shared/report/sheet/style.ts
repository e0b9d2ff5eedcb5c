import { FILL_STYLE } from './fill-style.ts';
import { PRINT_STYLE } from './print-style.ts';

/**
 * How the sheet looks: on paper, on a screen by day and by night, in high contrast. Hues are told
 * apart by all usual kinds of colour vision, and never carry a meaning alone.
 */
const LIGHT = `
  --paper: #ffffff; --ink: #16202a; --faint: #55616d; --rule: #b9c2ca; --tile: #f3f5f7;
  --there: #2f6fa8; --there-pale: #8fb8dc; --needed: #b65c00; --part: #d5dce2; --subject: #dfe9f2;
  --ray: #8a6a00; --lamp: #8a6a00; --error: #a4161a; --warning: #8a4b00; --note: #1f5f8b;`;

const DARK = `
  --paper: #14191e; --ink: #e8edf1; --faint: #a4b0bb; --rule: #4a5661; --tile: #1e252c;
  --there: #6ea9dc; --there-pale: #3c6f9c; --needed: #f0a04b; --part: #3a4550; --subject: #263747;
  --ray: #e2c04d; --lamp: #e2c04d; --error: #ff9a94; --warning: #ffbd70; --note: #8fc7ef;`;

const COLOURS = `
:root { color-scheme: light dark; ${LIGHT} }
@media (prefers-color-scheme: dark) { :root { ${DARK} } }
@media (prefers-contrast: more) {
  :root { --faint: var(--ink); --rule: var(--ink); --tile: var(--paper); }
}`;

const PAGE = `
* { box-sizing: border-box; }
body {
  margin: 0 auto; padding: 1.5rem; max-width: 60rem; background: var(--paper); color: var(--ink);
  font: 1rem/1.45 system-ui, "Noto Sans", "DejaVu Sans", sans-serif; overflow-wrap: anywhere;
}
h1 { font-size: 2rem; line-height: 1.15; margin: 0 0 .25rem; }
h2 { font-size: 1.7rem; line-height: 1.15; margin: 0; }
h3, .plan h2 { font-size: 1rem; margin: 0 0 .35rem; }
p { margin: 0 0 .5rem; }
ul, ol { margin: 0; padding: 0; list-style: none; }
.aside, .note { color: var(--faint); }
p.note { margin-top: .4rem; }
.block { margin: 0 0 1.1rem; }
.shot { border-top: 3px solid var(--ink); margin-top: 2rem; padding-top: .8rem; }
.shot > header { display: flex; flex-wrap: wrap; gap: .2rem 1rem; align-items: baseline; justify-content: space-between; }
.state { font-weight: 600; border: 2px solid currentColor; border-radius: 3px; padding: 0 .5rem; }
.state.not-ready, .severity.error { color: var(--error); }
.state.look, .severity.warning { color: var(--warning); }
.severity { font-weight: 600; }
.severity.note { color: var(--note); }
table { border-collapse: collapse; width: 100%; }
th, td { text-align: left; vertical-align: top; padding: .25rem .6rem .25rem 0; border-bottom: 1px solid var(--rule); }
th:first-child { min-width: 6.5em; }
/* A head of one word stays whole, and so does the hour below it. */
thead th { overflow-wrap: normal; }
td.number, th.number { text-align: right; padding-right: 0; white-space: nowrap; }
@media (max-width: 30rem) {
  th, td, td.number, th.number { padding-right: .3rem; white-space: normal; }
  th:first-child { min-width: 0; }
  .focus :is(th, td) { overflow-wrap: anywhere; }
}
@media (max-width: 22rem) {
  thead th { overflow-wrap: anywhere; }
}
.shots {
  position: sticky; top: 0; z-index: 1; display: flex; gap: 0 1rem; overflow-x: auto;
  background: var(--paper); border-bottom: 1px solid var(--rule); padding: .4rem 0; margin-bottom: .8rem;
}
.shots a { color: var(--ink); text-underline-offset: .2em; white-space: nowrap; padding: .2rem 0; }
.shots a[aria-current] { font-weight: 600; text-decoration-thickness: 3px; }
.shots a:focus-visible { outline: 2px solid var(--there); outline-offset: -2px; }
.shot { scroll-margin-top: 3.2rem; }
.patterns { position: absolute; }`;

const SHOT = `
.settings { display: grid; grid-template-columns: repeat(auto-fill, minmax(10.5rem, 1fr)); gap: .5rem; margin: .8rem 0 1rem; }
.setting { background: var(--tile); border-left: 4px solid var(--there); padding: .4rem .6rem; min-width: 0; container-type: inline-size; }
.setting dt { color: var(--faint); }
.setting dd { margin: 0; }
.setting .value { font-size: 1.75rem; line-height: 1.15; font-weight: 600; overflow-wrap: anywhere; }
.setting .value.long { font-size: clamp(1rem, 9cqi, 1.75rem); }
.setting .value.none { font-weight: 400; color: var(--faint); }
.bench { display: grid; grid-template-columns: max-content 1fr; gap: .15rem 1rem; margin: 0; }
.bench dt { color: var(--faint); }
.bench dd { margin: 0; }
.pair { display: grid; grid-template-columns: repeat(auto-fit, minmax(17rem, 1fr)); gap: 0 2rem; }
.checks label { display: flex; gap: .6rem; align-items: flex-start; padding: .2rem 0; }
.checks input { width: 1.35rem; height: 1.35rem; margin: .05rem 0 0; flex: none; accent-color: var(--there); }
code { font-family: ui-monospace, monospace; font-size: .95em; }
.log th, .log td { height: 2rem; border: 1px solid var(--rule); padding: .25rem .5rem; }
.log td:nth-child(2) { text-align: center; }
.log td:last-child { width: 45%; }
.log tr > :nth-child(-n+2) { width: 4.5rem; }
.limits li, .findings li { padding-left: 1.1rem; text-indent: -1.1rem; margin-bottom: .3rem; }
.limits li::before { content: "\\25B8\\00A0\\00A0"; }
.findings li::before { content: "\\25A0\\00A0\\00A0"; }`;

/** Boxes that a pen finds room in. */
const MEASUREMENTS = `
.measurements { border-top: 3px solid var(--ink); margin-top: 2rem; padding-top: .8rem; }
.measurements > ol { margin-top: .8rem; counter-reset: measurement; }
.measurements > ol > li { counter-increment: measurement; border: 1px solid var(--rule); border-left: 4px solid var(--there); padding: .6rem .8rem .8rem; margin-bottom: .8rem; break-inside: avoid; }
.measurements h3::before { content: counter(measurement) ". "; }
.measurements > ol > li > header { display: flex; flex-wrap: wrap; gap: 0 1rem; align-items: baseline; justify-content: space-between; margin-bottom: .2rem; }
.measurements > ol > li > p { margin: 0; }
.boxes { display: flex; flex-wrap: wrap; gap: .4rem .8rem; margin: .5rem 0 0; }
.boxes > div { flex: 0 0 9rem; }
.boxes dt { font-size: .9rem; white-space: nowrap; }
.boxes dd { display: flex; align-items: flex-end; justify-content: flex-end; margin: .1rem 0 0; height: 2.3rem; border: 1px solid var(--faint); background: var(--paper); padding: 0 .4rem .1rem; color: var(--faint); }
.boxes > .remarks { flex: 1 0 14rem; }`;

const DRAWINGS = `
.drawings { margin-bottom: 1rem; }
@media (min-width: 620px) { .drawings { columns: 2; column-gap: 1.5rem; } }
figure { margin: 0 0 1.3rem; break-inside: avoid; }
figure svg, figure img { display: block; height: auto; }
figure img, figure svg:not(.actual) { width: 100%; max-width: 30rem; }
@media screen { figure svg.actual { max-width: 100%; } }
figure.wide svg { max-width: none; min-width: 40rem; }
.focus table { width: auto; }
.focus th, .focus td { padding-right: 2rem; }
.scrolled { overflow-x: auto; }
.scrolled th, .scrolled td { overflow-wrap: normal; }
.scrolled th { white-space: nowrap; }
figcaption { font-size: .9rem; margin-top: .2rem; }
svg text { font: 12px system-ui, "Noto Sans", "DejaVu Sans", sans-serif; fill: var(--ink); stroke: var(--paper); stroke-width: 3px; paint-order: stroke; stroke-linejoin: round; }
svg text { text-anchor: middle; }
svg .from { text-anchor: start; }
svg .to { text-anchor: end; }
.there { fill: var(--there-pale); stroke: var(--there); }
.needed { fill: url(#hatched); stroke: var(--needed); stroke-width: 1.5; }
.black { fill: url(#crossed); stroke: var(--ink); }
.part { fill: var(--part); stroke: var(--ink); }
.paper { fill: var(--paper); stroke: var(--ink); }
.subject { fill: var(--subject); stroke: var(--there); stroke-width: 1.5; }
.frame { fill: none; stroke: var(--ink); stroke-width: 2; }
.image { fill: none; stroke: var(--ray); stroke-width: 1.5; }
.image-rear { fill: none; stroke: var(--ray); stroke-width: 1.5; stroke-dasharray: 4 3; }
.mark { fill: var(--ink); }
.hatch { fill: none; stroke: var(--needed); stroke-width: 1.4; }
.cross { fill: none; stroke: var(--ink); stroke-width: .8; }
.axis { fill: none; stroke: var(--faint); stroke-dasharray: 12 3 2 3; }
.edge { stroke: var(--ink); stroke-width: 1.5; }
.limit { stroke: var(--faint); }
.grid { stroke: var(--rule); }
.ray { stroke: var(--ray); stroke-width: 1.2; }
.thrown { stroke: var(--ray); stroke-width: 1.2; stroke-dasharray: 5 3; }
.lamp { fill: var(--tile); stroke: var(--lamp); stroke-width: 2.5; }
.lamp-face { stroke: var(--lamp); stroke-width: 5; }
.curve { fill: none; stroke: var(--there); stroke-width: 2.5; }
.curve-ends { fill: none; stroke: var(--needed); stroke-width: 2.5; stroke-dasharray: 7 4; }
.bound { stroke: var(--ink); stroke-width: 1.5; stroke-dasharray: 1.5 3; }
.holds { fill: var(--there-pale); fill-opacity: .35; stroke: var(--there); }
.off { stroke: none; fill-opacity: .6; }`;

/** The same drawings on the editor's own ground; what was paper and ink is background and text. */
const GROUND = '--paper: var(--vscode-editor-background); --ink: var(--vscode-editor-foreground);';
const STARK = '--faint: var(--ink); --rule: var(--ink); --tile: var(--paper);';

/** What the live view needs beside: buttons, the shot at the cursor, the editor's own theme. */
export const LIVE_STYLE = `
.head { display: contents; }
.opener {
  font: inherit; color: inherit; background: none; border: 0; padding: 0; text-align: inherit;
  text-decoration: underline dotted; text-underline-offset: .2em; cursor: pointer;
}
.opener:focus-visible { outline: 2px solid var(--there); outline-offset: 2px; }
[data-key], [data-cut] { cursor: pointer; }
.choices rect { fill: transparent; }
.choices rect:hover { fill: var(--there); fill-opacity: .3; }
.chooser { display: block; width: fit-content; font-size: .9rem; margin: .2rem 0; cursor: default; }
.chooser select { font: inherit; color: inherit; background: var(--tile); border: 1px solid var(--rule); }
.shot.current > header h2 { border-left: .4rem solid var(--there); padding-left: .5rem; }
.at-cursor { outline: 2px solid var(--there); outline-offset: 2px; }
.cut-here { overflow-wrap: normal; border-left: .4rem solid var(--there); padding-left: .5rem; margin-bottom: .6rem; overflow-x: auto; }
body { padding: 1rem; font-family: var(--vscode-font-family, system-ui), sans-serif; }
body.vscode-light { color-scheme: light; ${LIGHT} ${GROUND} }
body.vscode-dark { color-scheme: dark; ${DARK} ${GROUND} }
body.vscode-high-contrast { color-scheme: dark; ${DARK} ${GROUND} ${STARK} }
body.vscode-high-contrast-light { color-scheme: light; ${LIGHT} ${GROUND} ${STARK} }
`;

/** Whatever the sheet is shown in. */
export const SHEET_STYLE = `${COLOURS}${PAGE}${SHOT}${MEASUREMENTS}${DRAWINGS}${PRINT_STYLE}\n`;

/** The style of the page, as one text so that its hash can stand in the page's policy. */
export const pageStyle = (isFilled: boolean): string =>
  isFilled ? SHEET_STYLE + FILL_STYLE : SHEET_STYLE;
