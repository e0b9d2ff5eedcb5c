/** How what is filled in looks: for a thumb, at arm's length, and on paper not at all. */
export const FILL_STYLE = `
.fill, .fill-bar, .fill-save, .fill-troubles, .when, .boxes input { display: none; }
@media screen {
  .filling { scroll-padding: 3.6rem 0 6rem; }
  .filling .log, .filling .boxes .pen { display: none; }
  .filling body { padding-bottom: 6.5rem; }
  .filling .shots a { padding: .7rem 0; }
  .filling .shot { scroll-margin-top: 0; }
  .filling .setting .value { font-size: clamp(1.5rem, 19cqi, 2.1rem); }
  .filling .setting .value.long { font-size: clamp(1rem, 9cqi, 2.1rem); }
  .filling :is(.setting dt, .setting .note, .limits, .findings, .bench, .checks) { font-size: 1.1rem; }
  .filling :is(figcaption, code) { font-size: 1rem; }
  .filling .checks label { padding: .5rem 0; align-items: center; min-height: 3rem; }
  .filling .checks input { width: 2rem; height: 2rem; margin: 0; }
  .filling button {
    font: inherit; color: inherit; background: var(--tile); border: 2px solid var(--faint); border-radius: 4px;
    min-height: 3rem; padding: .4rem .8rem; cursor: pointer; touch-action: manipulation; overflow-wrap: normal;
  }
  .filling button:disabled { color: var(--faint); border-style: dashed; cursor: default; }
  .filling :is(button, input, summary, textarea):focus-visible { outline: 3px solid var(--there); outline-offset: 2px; }
  .filling button.main { font-weight: 600; background: var(--ink); color: var(--paper); border-color: var(--ink); }
  .filling button.on { background: var(--paper); color: var(--error); border-color: var(--error); font-weight: 600; }
  .filling button.quiet { border: 0; background: none; text-decoration: underline; text-underline-offset: .2em; padding: .4rem 0; }
  .filling button.sure { color: var(--error); font-weight: 600; }
  .when { display: inline; margin-left: auto; color: var(--faint); white-space: nowrap; }
  .fill { display: block; border: 2px solid var(--rule); border-radius: 4px; padding: .7rem .8rem; margin: 0 0 1rem; }
  .fill .top { display: flex; justify-content: space-between; align-items: baseline; gap: 1rem; }
  .fill .count { font-size: 1.3rem; font-weight: 600; }
  .timer { display: flex; flex-wrap: wrap; align-items: center; gap: .4rem 1rem; margin-bottom: .5rem; }
  .timer > button { flex: 1 1 11rem; }
  .timer > .main { min-height: 4rem; font-size: 1.25rem; }
  .timer > p { margin: 0; display: flex; align-items: baseline; gap: .7rem; flex: 1 1 8rem; }
  .clock { font-size: 2.6rem; line-height: 1.1; font-weight: 600; font-variant-numeric: tabular-nums; }
  .clock.over { color: var(--error); }
  .life .clock { font-size: 1.75rem; }
  .of { color: var(--faint); }
  .takes > li { border-top: 1px solid var(--rule); }
  .fill summary { padding: .75rem 0; cursor: pointer; }
  .fill summary strong { margin-right: .7rem; }
  .fill .kept > summary { border-left: 6px solid var(--there); padding-left: .6rem; }
  .fill .rejected > summary { border-left: 6px dashed var(--needed); padding-left: .6rem; }
  .verdict { display: grid; grid-template-columns: 1fr 1fr; gap: .6rem; margin-bottom: .6rem; }
  .filling .verdict [aria-pressed="true"] { background: var(--ink); color: var(--paper); border-color: var(--ink); font-weight: 600; }
  .box { display: block; margin-bottom: .6rem; }
  .box > span { display: block; font-size: 1rem; color: var(--faint); }
  .box > input, .fill-save textarea {
    font: inherit; font-size: 1.1rem; color: inherit; background: var(--paper); border: 1px solid var(--faint);
    border-radius: 3px; width: 100%; min-height: 3rem; padding: .3rem .6rem;
  }
  .box > input::placeholder { color: var(--faint); opacity: 1; }
  .set .fields { display: grid; grid-template-columns: repeat(auto-fill, minmax(7rem, 1fr)); gap: 0 .6rem; }
  .filling .boxes dt { font-size: 1rem; }
  .when { font-size: 1rem; }
  .filling .boxes dd { align-items: center; padding: 0 .4rem 0 0; height: 3rem; gap: .4rem; }
  .filling .boxes > div { flex: 1 1 9rem; min-width: 0; }
  .boxes input { display: block; flex: 1; width: 4rem; min-width: 0; border: 0; background: none; color: var(--ink); font: inherit; font-size: 1.25rem; padding: 0 .6rem; }
  .filling .boxes dd input { align-self: stretch; }
  .fill-bar {
    display: flex; gap: .5rem; align-items: stretch; position: fixed; inset: auto 0 0; z-index: 2; padding: .5rem .8rem;
    padding-bottom: max(.5rem, env(safe-area-inset-bottom)); background: var(--paper); border-top: 2px solid var(--ink);
  }
  .fill-bar p { margin: 0; flex: 1 1 6rem; min-width: 0; display: flex; flex-direction: column; justify-content: center; line-height: 1.2; }
  .fill-bar p > * { overflow: hidden; text-overflow: ellipsis; white-space: nowrap; }
  .fill-bar .next { flex: 1 1 8rem; min-width: 0; font-weight: 600; line-height: 1.15; }
  .fill-bar > :last-child { flex: none; }
  .fill-save[open] { display: block; }
  .fill-save { width: min(34rem, 94vw); max-height: 92vh; overflow: auto; background: var(--paper); color: var(--ink); border: 2px solid var(--ink); border-radius: 4px; padding: 1rem .8rem; }
  .fill-save::backdrop { background: #000; opacity: .6; }
  .fill-save h2 { margin-bottom: .5rem; }
  .fill-save textarea { font-family: ui-monospace, monospace; font-size: 1rem; margin-bottom: .6rem; }
  .fill-save .code { display: block; margin: 0 auto .6rem; }
  .ways { display: flex; flex-wrap: wrap; gap: .6rem; margin-bottom: .6rem; justify-content: space-between; }
  .ways > :not(.quiet) { flex: 1; }
  .fill-troubles:not(:empty) { display: block; border: 3px solid var(--error); padding: .6rem .8rem; margin-bottom: 1rem; }
  .fill-troubles p { font-weight: 600; }
  .fill-troubles pre { white-space: pre-wrap; font-size: 1rem; max-height: 10rem; overflow: auto; }
}
`;
