/** The sheet as HTML: one page that needs nothing else, or the parts that a live view exchanges. */

import { list, paragraph, section, worded } from '../../api/document.ts';
import type { Child, Drawing, Element } from '../../api/drawing.ts';
import type { PageFrame } from '../../api/frame.ts';
import type { Check, DaySheet, EditSheet, Setting, Sheet, ShotSheet } from '../../api/sheet.ts';
import type { Say } from '../../say/say.ts';
import { allOf } from '../../words/listed.ts';
import { languageInForce, message } from '../../words/message.ts';
import { blockHtml, inline, sectionHtml } from '../document/html.ts';
import { attribute, el, markup } from '../markup.ts';
import { patterns, svgOf } from './canvas.ts';
import { bandsOf, chooser } from './choices.ts';
import {
  cutTable,
  orderTable,
  planParts,
  runningWords,
  shotParts,
  takesWords,
} from './document.ts';
import { fillText } from './fill.ts';
import { framePicture } from './frame.ts';
import { measurementsHtml } from './measurements.ts';
import { capital } from './said.ts';
import { pageStyle } from './style.ts';
import { stateWords } from './words.ts';

/** Parts of the page; `live`: with marks of what stands where in the plan. */
interface HtmlOptions {
  readonly say: Say;
  readonly live?: boolean;
  /** Traced frames by shot. */
  readonly frames?: ReadonlyMap<string, PageFrame>;
  /** What makes the page one to fill in, with its `sha256-…` as the policy names it. */
  readonly fill?: {
    readonly script: string;
    readonly scriptHash: string;
    /** It prints itself once it is opened. */
    readonly prints?: boolean;
  };
}

/**
 * The whole page, with nothing from outside and no script but the one that fills it in.
 *
 * @param styleHash `sha256-…` of `pageStyle` in base64, as the policy names it
 */
export function sheetPage(sheet: Sheet, options: HtmlOptions, styleHash: string): string {
  const pictures = options.frames ? 'img-src data:; ' : '';
  const { fill } = options;
  const script = fill ? `script-src '${fill.scriptHash}'; ` : '';
  const policy = `default-src 'none'; style-src '${styleHash}'; ${script}${pictures}base-uri 'none'; form-action 'none'`;
  const head = [
    // By it the command line knows what it may replace: `server/files/own-output.ts`.
    el('meta', { name: 'generator', content: 'Lamella' }),
    el('meta', { charset: 'utf-8' }),
    el('meta', { 'http-equiv': 'Content-Security-Policy', content: policy }),
    el('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
    el('meta', { name: 'color-scheme', content: 'light dark' }),
    el('title', {}, message`${sheet.title}: shot sheet`),
  ];
  const parts = sheetHead(sheet, options);
  return [
    `<!doctype html>\n<html lang="${languageInForce()}"><head>`,
    ...head.map(markup),
    // Our own text, and in `style` nothing is to be escaped.
    `<style>${pageStyle(fill !== undefined)}</style></head><body>`,
    parts.patterns,
    `<main${fill ? ` data-fill="${attribute(fillText(sheet))}"` : ''}${fill?.prints ? ' data-print' : ''}>${parts.head}`,
    ...sheet.shots.map((shot, index) => shotHtml(shot, index, options)),
    ...measurementsHtml(sheet.measurements),
    '</main>',
    // Ours too; its bundler writes no end tag into it.
    fill ? `<script>${fill.script}</script>` : '',
    '</body></html>\n',
  ].join('');
}

/** All but the shots; `patterns` is what drawings refer to, once for a page. */
export const sheetHead = (
  sheet: Sheet,
  options: HtmlOptions,
): { readonly patterns: string; readonly head: string } => ({
  patterns: markup(patterns()),
  head: markup(shotList(sheet)) + markup(headOf(sheet, options)),
});

function headOf(sheet: Sheet, options: HtmlOptions): Element {
  const { title, file, about, deliver, day, order, edit } = sheet;
  const { recording, once, findings } = planParts(sheet);
  const isRead = options.live === true;
  const box = isRead ? boxesOf(sheet.once) : undefined;
  return el(
    'header',
    { class: 'plan' },
    el('h1', {}, title),
    el('p', { class: 'aside' }, [file, deliver].filter((one) => one).join(' · ')),
    about !== null && el('p', {}, about),
    day && dayBlock(day),
    order.steps.length > 0 && orderBlock(order, options),
    ...recording.map((one) => sectionHtml(one)),
    edit && editBlock(edit, options),
    ...once.map((one) => sectionHtml(one, { isRead, ...(box && { box }) })),
    ...findings.map((one) => sectionHtml(one, { isRead })),
  );
}

/** In the live view a box says which check it ticks in the plan. */
const boxesOf = (checks: readonly Check[]) => (index: number) => ({
  'data-check': checks[index]?.name,
});

function dayBlock({ when, remarks, drawing }: DaySheet): Element {
  const { id, title, words, caption, picture } = drawing;
  return block(
    'h2',
    message`The day`,
    when !== '' && el('p', { class: 'note' }, when),
    blockHtml(list(remarks.map(worded))),
    el(
      'figure',
      { class: 'wide' },
      picture && scrolled(message`The day over its hours`, svgOf(picture, id, title, words)),
      el('figcaption', {}, ...inline(worded(picture ? (caption ?? words) : words))),
    ),
  );
}

function editBlock(edit: EditSheet, options: HtmlOptions): Element {
  const { id, title, words, caption, picture } = edit.drawing;
  // In the live view the cut's name leads to its line.
  const cuts = blockHtml(cutTable(edit), {
    row: (index) => (options.live ? { 'data-cut': edit.cuts[index]! } : {}),
    cell: (text, index) => (text === edit.cuts[index] ? opener(text, options) : String(text)),
  });
  return block(
    'h2',
    message`The edit`,
    el('p', { class: 'note' }, capital(edit.total)),
    el(
      'figure',
      { class: 'wide' },
      picture && scrolled(message`The edit over its time`, svgOf(picture, id, title, words)),
      el('figcaption', {}, ...inline(worded(picture ? (caption ?? words) : words))),
    ),
    scrolled(message`Cuts of the edit`, cuts),
  );
}

/** What may be wider than a small window; scrolled by keyboard too. */
const scrolled = (name: string, content: Element): Element =>
  el('div', { class: 'scrolled', tabindex: 0, role: 'region', 'aria-label': name }, content);

/** Of the plan a heading of the second level, of a shot one of the third. */
const block = (level: 'h2' | 'h3', title: string, ...content: readonly Child[]): Element =>
  el('section', { class: 'block' }, el(level, {}, title), ...content);

function orderBlock(order: Sheet['order'], { say }: HtmlOptions): Element {
  const { changes, changesAsWritten } = order;
  const words = [
    orderWords(changes, changesAsWritten - changes > 0 ? changesAsWritten : null),
    takesWords(order, say),
  ];
  const running = runningWords(order);
  return block(
    'h2',
    message`Order of shots`,
    blockHtml(orderTable(order, say)),
    ...running.map((one) => blockHtml(paragraph(worded(one)))),
    el('p', { class: 'note' }, words.join(' ')),
  );
}

/** `asWritten`: how often in the plan's own order; null: not more often. */
function orderWords(changes: number, asWritten: number | null): string {
  if (asWritten === null)
    return changes === 0
      ? message`No setup changes in this order.`
      : message`Setup changes in this order: ${changes}.`;
  return changes === 0
    ? message`No setup changes in this order; ${asWritten} in the order of the plan.`
    : message`${changes} setup changes in this order; ${asWritten} in the order of the plan.`;
}

/** State of a shot in one sign, beside its name. On a set, a tick says that all is done. */
const SIGNS: Readonly<Record<ShotSheet['state'], string>> = {
  ready: '\u2713',
  look: '!',
  'not-ready': '\u2715',
  unread: '?',
};

const OPEN = '\u25cb';

const signOf = ({ state, checks }: ShotSheet): string =>
  state === 'ready' && checks.some(({ done }) => !done) ? OPEN : SIGNS[state];

/** Where to find each shot: it stays in view. One shot is found without. */
function shotList({ shots }: Sheet): Child {
  if (shots.length < 2) return null;
  return el(
    'nav',
    { class: 'shots', 'aria-label': message`Shots` },
    ...shots.map((shot, index) =>
      el(
        'a',
        {
          href: `#${idOf(shot.name, index)}`,
          class: shot.state,
          title: stateWords(shot),
          'data-to': shot.name,
        },
        `${signOf(shot)}\u00a0${shot.name}`,
      ),
    ),
  );
}

/** By its name, so that a shot's section stays the same where others come and go. */
export const idOf = (name: string, index: number): string =>
  /^[a-z][a-z0-9-]*$/.test(name) ? `shot.${name}` : `shot.${index + 1}`;

/** Beside the traced picture: on paper, more drawings stand in narrower columns, and more takes in two. */
const FEW_DRAWINGS = 7;
const FEW_TAKES = 3;
/** Characters of checks and of what to watch for, and lines of a table of focus: more fill a page. */
const FEW_WORDS = 700;
const FEW_LINES = 8;

function isFull({ checks, limits, findings, focus }: ShotSheet, drawings: number): boolean {
  const said = findings.map(({ what, why }) => what + why);
  const words = [...checks.map(({ what }) => what), ...limits, ...said].join('');
  const lines = focus?.table.rows.length ?? 0;
  // A table of focus takes the room of two drawings.
  const few = lines > 0 ? FEW_DRAWINGS - 2 : FEW_DRAWINGS;
  return drawings > few || words.length > FEW_WORDS || lines > FEW_LINES;
}

/** As wide as it is: it stands across all columns, before them. */
const isActual = ({ picture }: Drawing): boolean => picture?.isActualSize === true;

/** One shot's section: the same text as long as the shot is the same. */
export function shotHtml(shot: ShotSheet, index: number, options: HtmlOptions): string {
  const id = idOf(shot.name, index);
  const { name, about, state, settings, bench, drawings } = shot;
  const { checks, limits, focus, takes, clips, review, findings } = shotParts(shot);
  const frame = options.frames?.get(name);
  const drawn = drawings.filter(({ picture }) => picture);
  const said = (parts: typeof checks): readonly Child[] =>
    parts.map((part) =>
      sectionHtml(part, options.live ? { isRead: true, box: boxesOf(shot.checks) } : {}),
    );
  return markup(
    el(
      'section',
      {
        class: 'shot',
        id,
        'aria-labelledby': `${id}.name`,
        ...(options.live && { 'data-shot': name }),
      },
      el(
        'header',
        {},
        el('h2', { id: `${id}.name` }, name),
        el('p', { class: `state ${state}` }, stateWords(shot)),
      ),
      about !== null && el('p', {}, about),
      settings.length > 0 &&
        el('dl', { class: 'settings' }, ...settings.map((one) => settingTile(one, options))),
      bench.length > 0 &&
        block(
          'h3',
          message`Setup`,
          el('dl', { class: 'bench' }, ...bench.flatMap((one) => benchRow(one, options))),
        ),
      (checks.length > 0 || limits.length > 0) &&
        el('div', { class: 'pair' }, ...said([...checks, ...limits])),
      ...said([...clips, ...review, ...findings]),
      focus.length > 0 && el('div', { class: 'focus' }, ...said(focus)),
      (drawings.length > 0 || frame) &&
        el(
          'div',
          { class: isFull(shot, drawn.length) ? 'drawings many' : 'drawings' },
          ...drawn.filter(isActual).map((one) => figure(one, id, options)),
          frame && framePicture(frame),
          ...drawn.filter((one) => !isActual(one)).map((one) => figure(one, id, options)),
        ),
      ...notDrawn(drawings),
      // To be written on: of no use in a view that is only read.
      !options.live &&
        el('div', { class: shot.takes > FEW_TAKES ? 'log long' : 'log' }, ...said(takes)),
    ),
  );
}

/** In the live view a button, for keyboard and screen reader, that goes to the line. */
const opener = (label: string, { live }: HtmlOptions): Child =>
  live ? el('button', { type: 'button', class: 'opener' }, label) : label;

/** Where the live view goes on a click anywhere in it. */
const goesTo = (key: string, { live }: HtmlOptions) => (live ? { 'data-key': key } : {});

function settingTile({ label, value, follows, note, key }: Setting, options: HtmlOptions): Element {
  return el(
    'div',
    { class: isWordy(note) ? 'setting wordy' : 'setting', ...goesTo(key, options) },
    el('dt', {}, opener(label, options)),
    el(
      'dd',
      { class: value === null ? 'value none' : hasLongPart(value) ? 'value long' : 'value' },
      value === null ? (follows ? message`unknown` : message`not set`) : unbroken(value),
    ),
    note !== undefined && el('dd', { class: 'note' }, note),
  );
}

/** A note that is long takes two tiles' width on paper. */
const isWordy = (note: string | undefined): boolean => (note?.length ?? 0) > 70;

/** The numbers of a measure stay together and with their unit: "40 × 22.5 mm". */
const unbroken = (value: string): string =>
  value.replace(
    /(?<=\d) (?=× \d)|(?<=\d ×) (?=\d)|(?<=\d) (?!to\b)(?=[^\s\d]+(?:[\s,]|$))/g,
    '\u00a0',
  );

/** Characters of the large type that the narrowest tile has room for. */
const TILE_HOLDS = 8;

const hasLongPart = (value: string): boolean =>
  unbroken(value)
    .split(' ')
    .some((part) => part.length > TILE_HOLDS);

const benchRow = ({ label, value, note, key }: Setting, options: HtmlOptions): Element[] => [
  el('dt', {}, opener(label, options)),
  el(
    'dd',
    goesTo(key, options),
    el('strong', {}, value ?? message`not named`),
    note !== undefined && ` ${note}`,
  ),
];

/** Drawings that there are none of, by the reason. */
function notDrawn(drawings: readonly Drawing[]): readonly Element[] {
  const missing = drawings.filter(({ picture }) => picture === null);
  const reasons = [...new Set(missing.map(({ words }) => words))];
  const items = reasons.map((reason) => {
    const titles = missing.filter(({ words }) => words === reason).map(({ title }) => title);
    return worded(`${allOf(titles)}. ${reason}`);
  });
  return section(3, message`Drawings not made`, [list(items)]).map((one) => sectionHtml(one));
}

function figure(
  { id, title, words, caption, picture, key, choices }: Drawing,
  shotId: string,
  options: HtmlOptions,
): Element {
  const own = `${shotId}.${id}`;
  const says = !picture || caption === undefined;
  const chosen = options.live ? choices : undefined;
  return el(
    'figure',
    { ...goesTo(key, options), 'data-sets': chosen?.key },
    el('h3', {}, opener(title, options)),
    picture &&
      svgOf(
        chosen ? { ...picture, shapes: [...picture.shapes, bandsOf(chosen)] } : picture,
        own,
        title,
        words,
        says ? `${own}-words` : undefined,
      ),
    chosen && chooser(chosen),
    el(
      'figcaption',
      { id: says && `${own}-words` },
      ...inline(worded((says ? words : caption) ?? '')),
    ),
  );
}
