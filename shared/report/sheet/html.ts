/** The sheet as HTML: one page that needs nothing else, or the parts that a live view exchanges. */

import type { Child, Drawing, Element } from '../../api/drawing.ts';
import type { Check, EditSheet, Setting, Sheet, SheetFinding, ShotSheet } from '../../api/sheet.ts';
import type { Say } from '../../say/say.ts';
import { allOf } from '../../words/listed.ts';
import { inLanguage, languageInForce, message } from '../../words/message.ts';
import { patterns, svgOf } from './canvas.ts';
import { el, markup } from './markup.ts';
import { capital } from './said.ts';
import { SHEET_STYLE } from './style.ts';
import { SEVERITY_WORDS, stateWords } from './words.ts';

/** Parts of the page; `live`: with marks of what stands where in the plan. */
export interface HtmlOptions {
  readonly say: Say;
  readonly live?: boolean;
}

/**
 * The whole page, with no script and nothing from outside.
 *
 * @param styleHash `sha256-…` of `SHEET_STYLE` in base64, as the policy names it
 */
export function sheetPage(sheet: Sheet, options: HtmlOptions, styleHash: string): string {
  const policy = `default-src 'none'; style-src '${styleHash}'; base-uri 'none'; form-action 'none'`;
  const head = [
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
    `<style>${SHEET_STYLE}</style></head><body>`,
    parts.patterns,
    `<main>${parts.head}`,
    ...sheet.shots.map((shot, index) => shotHtml(shot, index, options)),
    '</main></body></html>\n',
  ].join('');
}

/** All but the shots; `patterns` is what drawings refer to, once for a page. */
export const sheetHead = (
  sheet: Sheet,
  options: HtmlOptions,
): { readonly patterns: string; readonly head: string } => ({
  patterns: markup(patterns()),
  head: markup(headOf(sheet, options)),
});

function headOf(
  { title, file, about, deliver, once, order, recording, edit, findings }: Sheet,
  options: HtmlOptions,
): Element {
  return el(
    'header',
    { class: 'plan' },
    el('h1', {}, title),
    el('p', { class: 'aside' }, [file, deliver].filter((one) => one).join(' · ')),
    about !== null && el('p', {}, about),
    order.steps.length > 0 && orderBlock({ order, options }),
    recording.length > 0 && block('h2', message`Cards and batteries`, lines(recording)),
    edit && editBlock(edit, options),
    once.length > 0 && block('h2', message`Before the day`, checkList(once, options)),
    findings.length > 0 && block('h2', message`In the plan and its kit`, findingList(findings)),
  );
}

function editBlock({ total, head, rows, drawing }: EditSheet, options: HtmlOptions): Element {
  const { id, title, words, caption, picture } = drawing;
  return block(
    'h2',
    message`The edit`,
    el('p', { class: 'note' }, ...worded(capital(total))),
    el(
      'figure',
      { class: 'wide' },
      picture && scrolled(message`The edit over its time`, svgOf(picture, id, title, words)),
      el('figcaption', {}, ...worded(picture ? (caption ?? words) : words)),
    ),
    scrolled(
      message`Cuts of the edit`,
      el(
        'table',
        {},
        el(
          'thead',
          {},
          el(
            'tr',
            {},
            ...head.map((one) => el('th', { scope: 'col' }, capital(one || message`remarks`))),
          ),
        ),
        el('tbody', {}, ...rows.map((row) => cutRow(row, options))),
      ),
    ),
  );
}

/** In the live view the cut's name leads to its line. */
function cutRow({ cut, cells }: EditSheet['rows'][number], options: HtmlOptions): Element {
  const cell = (text: string) =>
    el('td', {}, ...(text === cut ? [opener(text, options)] : worded(text)));
  return el('tr', options.live ? { 'data-cut': cut } : {}, ...cells.map(cell));
}

/** What may be wider than a small window; scrolled by keyboard too. */
const scrolled = (name: string, content: Element): Element =>
  el('div', { class: 'scrolled', tabindex: 0, role: 'region', 'aria-label': name }, content);

const lines = (each: readonly string[]): Element =>
  el('ul', { class: 'limits' }, ...each.map((one) => el('li', {}, ...worded(one))));

/** Words of a message; what it has between backticks is a word of the plan's. */
const worded = (text: string): readonly Child[] =>
  text.split(/`([^`]+)`/).map((part, index) => (index % 2 ? el('code', {}, part) : part));

/** Of the plan a heading of the second level, of a shot one of the third. */
const block = (level: 'h2' | 'h3', title: string, ...content: readonly Child[]): Element =>
  el('section', { class: 'block' }, el(level, {}, title), ...content);

function orderBlock({ order, options }: { order: Sheet['order']; options: HtmlOptions }): Element {
  const { say } = options;
  const { steps, changes, changesAsWritten, seconds, untimed } = order;
  const words = [
    orderWords(changes, changesAsWritten - changes > 0 ? changesAsWritten : null),
    takesWords(seconds === 0 && untimed > 0 ? null : say.seconds(seconds), untimed),
    message`Building, making the subject and missed takes not counted.`,
  ];
  return block(
    'h2',
    message`Order of shots`,
    el(
      'table',
      {},
      el(
        'thead',
        {},
        el(
          'tr',
          {},
          el('th', { scope: 'col' }, message`Shot`),
          el('th', { scope: 'col' }, message`Put up or change before it`),
          el('th', { scope: 'col', class: 'number' }, message`Takes`),
        ),
      ),
      el(
        'tbody',
        {},
        ...steps.map(({ shot, changes: before, seconds: time }) =>
          el(
            'tr',
            {},
            el('th', { scope: 'row' }, shot),
            el('td', {}, before.length > 0 ? capital(allOf(before)) : message`Nothing`),
            el('td', { class: 'number' }, time === null ? message`not known` : say.seconds(time)),
          ),
        ),
      ),
    ),
    el('p', { class: 'note' }, words.join(' ')),
  );
}

/** `asWritten`: how often in the plan's own order; null: not more often. */
function orderWords(changes: number, asWritten: number | null): string {
  if (asWritten === null)
    return changes === 0
      ? message`Rig or light never changes in this order.`
      : message`Rig or light changes ${times(changes)} in this order.`;
  return changes === 0
    ? message`Rig or light never changes in this order, ${times(asWritten)} in the plan’s own.`
    : message`Rig or light changes ${times(changes)} in this order, ${times(asWritten)} in the plan’s own.`;
}

/** `length`: of what is known; null: nothing is. */
function takesWords(length: string | null, untimed: number): string {
  if (length === null) return message`Takes and settling: not known.`;
  if (untimed === 0) return message`Takes and settling: ${length}.`;
  return untimed === 1
    ? message`Takes and settling: ${length}, and ${untimed} shot of unknown length.`
    : message`Takes and settling: ${length}, and ${untimed} shots of unknown length.`;
}

const times = (count: number): string =>
  count === 1 ? message`once` : count === 2 ? message`twice` : message`${count} times`;

/** By its name, so that a shot's section stays the same where others come and go. */
const idOf = (name: string, index: number): string =>
  /^[a-z][a-z0-9-]*$/.test(name) ? `shot.${name}` : `shot.${index + 1}`;

/** One shot's section: the same text as long as the shot is the same. */
export function shotHtml(shot: ShotSheet, index: number, options: HtmlOptions): string {
  const id = idOf(shot.name, index);
  const { name, about, state, settings, bench, checks, limits, clips, findings, drawings } = shot;
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
          message`Put up`,
          el('dl', { class: 'bench' }, ...bench.flatMap((one) => benchRow(one, options))),
        ),
      (checks.length > 0 || limits.length > 0) &&
        el(
          'div',
          { class: 'pair' },
          checks.length > 0 && block('h3', message`Check`, checkList(checks, options)),
          limits.length > 0 && block('h3', message`What goes wrong, and when`, lines(limits)),
        ),
      clips.length > 0 && block('h3', message`Recorded`, lines(clips)),
      findings.length > 0 && block('h3', message`Found`, findingList(findings)),
      drawings.length > 0 &&
        el(
          'div',
          { class: 'drawings' },
          ...drawings.filter(({ picture }) => picture).map((one) => figure(one, id, options)),
        ),
      notDrawn(drawings),
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
    { class: 'setting', ...goesTo(key, options) },
    el('dt', {}, opener(label, options)),
    el(
      'dd',
      { class: value === null ? 'value none' : hasLongPart(value) ? 'value long' : 'value' },
      value === null ? (follows ? message`not known` : message`not set`) : unbroken(value),
    ),
    note !== undefined && el('dd', { class: 'note' }, ...worded(note)),
  );
}

/** The numbers of a measure stay together and with their unit: "40 x 22.5 mm". */
const unbroken = (value: string): string =>
  value.replace(
    /(?<=\d) (?=x \d)|(?<=\d x) (?=\d)|(?<=\d) (?!to\b)(?=[^\s\d]+(?:[\s,]|$))/g,
    '\u00a0',
  );

/** Characters of the large type that the narrowest tile has room for. */
const TILE_HOLDS = 9;

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
    ...(note !== undefined ? worded(` ${note}`) : []),
  ),
];

/** Boxes are ticked on paper or in the page; the live view shows what the plan says. */
const checkList = (checks: readonly Check[], { live }: HtmlOptions): Element =>
  el(
    'ul',
    { class: 'checks' },
    ...checks.map(({ what, done, by }) =>
      el(
        'li',
        {},
        el(
          'label',
          {},
          el('input', {
            type: 'checkbox',
            checked: done,
            disabled: live === true,
          }),
          el('span', {}, ...worded(what), by !== null && ` (${by})`),
        ),
      ),
    ),
  );

const findingList = (findings: readonly SheetFinding[]): Element =>
  el(
    'ul',
    { class: 'findings' },
    ...findings.map(({ severity, what, why }) =>
      el(
        'li',
        {},
        el('span', { class: `severity ${severity}` }, `${inLanguage(SEVERITY_WORDS[severity])}: `),
        ...worded(why === '' ? what : `${what} ${why}`),
      ),
    ),
  );

/** Drawings that there are none of, by the reason. */
function notDrawn(drawings: readonly Drawing[]): Element | null {
  const missing = drawings.filter(({ picture }) => picture === null);
  const reasons = [...new Set(missing.map(({ words }) => words))];
  if (reasons.length === 0) return null;
  return block(
    'h3',
    message`Not drawn`,
    el(
      'ul',
      { class: 'limits' },
      ...reasons.map((reason) => {
        const titles = missing.filter(({ words }) => words === reason).map(({ title }) => title);
        return el('li', {}, ...worded(`${allOf(titles)}. ${reason}`));
      }),
    ),
  );
}

function figure(
  { id, title, words, caption, picture, key }: Drawing,
  shotId: string,
  options: HtmlOptions,
): Element {
  const own = `${shotId}.${id}`;
  const says = !picture || caption === undefined;
  return el(
    'figure',
    goesTo(key, options),
    el('h3', {}, opener(title, options)),
    picture && svgOf(picture, own, title, words, says ? `${own}-words` : undefined),
    el('figcaption', { id: says && `${own}-words` }, ...worded(says ? words : caption)),
  );
}
