/** The sheet as HTML: one page that needs nothing else, or the parts that a live view exchanges. */
import type { Say } from '../../rules/say.ts';
import { type Drawing, patterns, svgOf } from './canvas.ts';
import { type Child, type Element, el, markup } from './markup.ts';
import { capital, listed } from './said.ts';
import {
  type Check,
  type EditSheet,
  SEVERITY_WORDS,
  type Setting,
  type Sheet,
  type SheetFinding,
  type ShotSheet,
  STATE_WORDS,
} from './sheet.ts';
import { SHEET_STYLE } from './style.ts';

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
    el('title', {}, `${sheet.title}: shot sheet`),
  ];
  const parts = sheetHead(sheet, options);
  return [
    '<!doctype html>\n<html lang="en"><head>',
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
    recording.length > 0 && block('h2', 'Cards and batteries', lines(recording)),
    edit && editBlock(edit, options),
    once.length > 0 && block('h2', 'Before the day', checkList(once, options)),
    findings.length > 0 && block('h2', 'In the plan and its kit', findingList(findings)),
  );
}

function editBlock({ total, head, rows, drawing }: EditSheet, options: HtmlOptions): Element {
  const { id, title, words, caption, picture } = drawing;
  return block(
    'h2',
    'The edit',
    el('p', { class: 'note' }, capital(total)),
    el(
      'figure',
      { class: 'wide' },
      picture && scrolled('The edit over its time', svgOf(picture, id, title, words)),
      el('figcaption', {}, picture ? (caption ?? words) : words),
    ),
    scrolled(
      'Cuts of the edit',
      el(
        'table',
        {},
        el(
          'thead',
          {},
          el('tr', {}, ...head.map((one) => el('th', { scope: 'col' }, capital(one || 'remarks')))),
        ),
        el('tbody', {}, ...rows.map((row) => cutRow(row, options))),
      ),
    ),
  );
}

/** In the live view the cut's name leads to its line. */
function cutRow({ cut, cells }: EditSheet['rows'][number], options: HtmlOptions): Element {
  const cell = (text: string) => el('td', {}, text === cut ? opener(text, options) : text);
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
  const less = changesAsWritten - changes;
  const words = [
    `Rig or light ${changes === 0 ? 'never changes' : `changes ${times(changes)}`} in this order${
      less > 0 ? `, ${times(changesAsWritten)} in the plan’s own` : ''
    }.`,
    `Takes and settling: ${seconds === 0 && untimed > 0 ? 'not known' : say.seconds(seconds)}${
      seconds > 0 && untimed > 0
        ? `, and ${untimed} ${untimed === 1 ? 'shot' : 'shots'} of unknown length`
        : ''
    }. Building, making the subject and missed takes not counted.`,
  ];
  return block(
    'h2',
    'Order of shots',
    el(
      'table',
      {},
      el(
        'thead',
        {},
        el(
          'tr',
          {},
          el('th', { scope: 'col' }, 'Shot'),
          el('th', { scope: 'col' }, 'Put up or change before it'),
          el('th', { scope: 'col', class: 'number' }, 'Takes'),
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
            el('td', {}, before.length > 0 ? capital(listed(before)) : 'Nothing'),
            el('td', { class: 'number' }, time === null ? 'not known' : say.seconds(time)),
          ),
        ),
      ),
    ),
    el('p', { class: 'note' }, words.join(' ')),
  );
}

const times = (count: number): string =>
  count === 1 ? 'once' : count === 2 ? 'twice' : `${count} times`;

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
        el('p', { class: `state ${state}` }, STATE_WORDS[state]),
      ),
      about !== null && el('p', {}, about),
      settings.length > 0 &&
        el('dl', { class: 'settings' }, ...settings.map((one) => settingTile(one, options))),
      bench.length > 0 &&
        block(
          'h3',
          'Put up',
          el('dl', { class: 'bench' }, ...bench.flatMap((one) => benchRow(one, options))),
        ),
      (checks.length > 0 || limits.length > 0) &&
        el(
          'div',
          { class: 'pair' },
          checks.length > 0 && block('h3', 'Check', checkList(checks, options)),
          limits.length > 0 && block('h3', 'What goes wrong, and when', lines(limits)),
        ),
      clips.length > 0 && block('h3', 'Recorded', lines(clips)),
      findings.length > 0 && block('h3', 'Found', findingList(findings)),
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
      { class: value === null ? 'value none' : 'value' },
      value === null ? (follows ? 'not known' : 'not set') : unbroken(value),
    ),
    note !== undefined && el('dd', { class: 'note' }, note),
  );
}

/** A number stays with its unit. */
const unbroken = (value: string): string => value.replace(/(\d) (?=\S+$)/, '$1\u00a0');

const benchRow = ({ label, value, note, key }: Setting, options: HtmlOptions): Element[] => [
  el('dt', {}, opener(label, options)),
  el(
    'dd',
    goesTo(key, options),
    el('strong', {}, value ?? 'not named'),
    note !== undefined && ` ${note}`,
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
          el('span', {}, by === null ? what : `${what} (${by})`),
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
        el('span', { class: `severity ${severity}` }, `${SEVERITY_WORDS[severity]}: `),
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
    'Not drawn',
    el(
      'ul',
      { class: 'limits' },
      ...reasons.map((reason) => {
        const titles = missing.filter(({ words }) => words === reason).map(({ title }) => title);
        return el('li', {}, ...worded(`${listed(titles)}. ${reason}`));
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
    el('figcaption', { id: says && `${own}-words` }, says ? words : caption),
  );
}
