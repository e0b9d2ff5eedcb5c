/** What may be written at a caret, as edits of the text. */

import type { Completion, Completions } from '../../api/completions.ts';
import type { Position } from '../../api/located.ts';
import { entryAt, keysOf } from '../../plan/entry-id.ts';
import type { DefName } from '../../plan/generated/names.ts';
import type { FileId } from '../../plan/place.ts';
import type { Shape } from '../../plan/shape.ts';
import { type Caret, caretAt } from '../../text/caret.ts';
import { inlineText, lineEndOf } from '../../text/layout-text.ts';
import { pairAt } from '../../text/path.ts';
import type { Node } from '../../text/tree.ts';
import { inLanguage, message } from '../../words/message.ts';
import type { Context } from '../../workspace/context.ts';
import type { FormerValue } from '../../workspace/former-values.ts';
import { planTemplate } from '../template.ts';
import { withFormer } from './as-it-was.ts';
import { newEntryAtMargin } from './at-margin.ts';
import { namesFor } from './by-name.ts';
import { placesByValue } from './by-value.ts';
import { defaultAt } from './defaults.ts';
import type { Proposal } from './item.ts';
import { type KeyProposal, keysFor, keysThatFit } from './keys.ts';
import {
  fillable,
  fillableAt,
  hasFills,
  laidOut,
  type Piece,
  plainText,
  snippetText,
} from './pieces.ts';
import { valuesAt } from './values.ts';
import { below, shapeOf, type Where, whereIs } from './where.ts';

const NOTHING: Completions = { items: [], incomplete: false };

export function completionsAt(context: Context, file: FileId, position: Position): Completions {
  const text = context.store.text(file);
  const caret = text && caretAt(text, position);
  const where = caret ? whereIs(context, file, caret.path) : null;
  if (!text || !caret || !where) return NOTHING;
  const eol = lineEndOf(text.chunks.find(({ breaks }) => breaks > 0));
  const { line, from, to, path } = caret;
  const range = { start: { line, character: from }, end: { line, character: to } };
  const former =
    caret.slot === 'value' || caret.slot === 'open' ? context.former.at(file, range, path) : null;
  const site: Site = { caret, where, eol, former };
  return caret.slot === 'key'
    ? keyItems(site, shapeOf(where))
    : caret.slot === 'item'
      ? itemItems(site, shapeOf(where))
      : valueItems(site, shapeOf(where));
}

interface Site {
  readonly caret: Caret;
  readonly where: Where;
  readonly eol: string;
  /** What stood there before it was taken out. */
  readonly former: FormerValue | null;
}

function keyItems(site: Site, shape: Shape): Completions {
  const { caret, where } = site;
  if (shape.kind === 'record' || shape.kind === 'word-or-record')
    return complete([
      ...(isNewFile(site) ? [wholePlan(site)] : []),
      ...recordKeys(site, shape.of).map((each, order) => keyItem(site, each, order + 1)),
      ...newEntries(site),
    ]);
  if (shape.kind !== 'map') return NOTHING;
  const names = namesFor(where, shape, caret.beside, caret.flow);
  const fitting = caret.pair === 'value' ? (shape.names ? names : []) : names;
  return complete(sorted(fitting).map((each, order) => keyItem(site, each, order)));
}

/** Nothing stands in the file but what is being typed. */
const isNewFile = ({ caret, where }: Site): boolean =>
  where.meaning === null && caret.beside.length === 0 && caret.pair === 'word';

/** What a plan is begun with; everything else stands until somebody needs it otherwise. */
const ASKED_FIRST = [
  'title',
  'about',
  'rate',
  'duration',
  'sensor',
  'focal-length',
  'depth',
  'field',
];

/** A plan of one shot that checks cleanly as it stands. */
const wholePlan = (site: Site): Completion => ({
  ...framed(site, message`new plan`, fillableAt(planTemplate().trimEnd(), ASKED_FIRST), 0),
  detail: message`one body, lens, light, subject and shot`,
  kind: 'entry',
  about: { kind: 'kind', of: 'plan' },
});

/** Left of its entries: one more of what the section above has, behind the keys of the place. */
function newEntries(site: Site): readonly Completion[] {
  const { caret, where } = site;
  if (caret.pair !== 'word' || caret.flow) return [];
  const found = newEntryAtMargin(where, caret.line);
  if (!found || found.indent <= caret.column) return [];
  const { label, indent, proposal } = found;
  const before = ' '.repeat(indent - caret.from);
  const inSection = { ...site, caret: { ...caret, column: indent, before } };
  return [
    {
      ...framed(inSection, label, proposal.pieces, LAST),
      detail: proposal.key,
      kind: 'entry',
      about: proposal.about,
    },
  ];
}

/** More than a plan has keys. */
const LAST = 1000;

function recordKeys({ caret, where }: Site, of: DefName): readonly KeyProposal[] {
  if (caret.pair !== 'value') return sorted(keysFor(where, of, caret.beside, caret.flow));
  return sorted(keysThatFit(where, of, caret.word, nodeUnder(where, caret.word), caret.beside));
}

/** The value under a key that may not be one of the language. */
function nodeUnder({ context, file, place }: Where, key: string): Node | null {
  const { entries } = context.analysis;
  const steps = [...keysOf(place.entry), ...place.path, key];
  for (let length = 1; length <= steps.length; length++) {
    const chunk = entryAt(...steps.slice(0, length).map(String));
    const { tree } = entries.parsed(file, chunk);
    const pair = tree && pairAt(tree, steps.slice(length - 1));
    if (pair) return pair.value;
  }
  return null;
}

function valueItems(site: Site, shape: Shape): Completions {
  const { caret, where, former } = site;
  const isOpen = caret.slot === 'open';
  switch (shape.kind) {
    case 'record':
    case 'word-or-record': {
      const words = shape.kind === 'word-or-record' ? valuesAt(where) : [];
      if (isOpen) {
        const keys = sorted(keysFor(where, shape.of, caret.beside, caret.flow));
        return complete(keys.map((each, order) => keyItem(site, each, order)));
      }
      const values = valuesOf(site, withFormer(where, former, words));
      return complete([...values, ...wholeItem(site, values.length)]);
    }
    case 'map':
      if (!isOpen) return complete([...formerItem(site), ...wholeItem(site, 1)]);
      return complete(
        sorted(namesFor(where, shape, caret.beside, caret.flow)).map((each, order) =>
          keyItem(site, each, order),
        ),
      );
    case 'list':
      return isOpen ? itemItems(site, shape) : listItems(site, shape.item);
    default:
      return scalarItems(site, shape);
  }
}

/** Items of a list that has its brackets yet to come. */
function listItems(site: Site, item: Shape): Completions {
  const { where, former } = site;
  const first = below(where, 0);
  if (!first || site.caret.word !== '') return NOTHING;
  if (item.kind === 'record' || where.meaning?.key === 'parts')
    return complete([...formerItem(site), ...wholeItem(site, 1)]);
  const wrapped = valuesAt(first).map((one) => ({ ...one, text: `[${one.text}]` }));
  return complete(valuesOf(site, withFormer(where, former, wrapped)));
}

/** Items of a list on lines of their own, each with its dash. */
function itemItems(site: Site, shape: Shape): Completions {
  const { caret, where } = site;
  const item = shape.kind === 'list' ? below(where, caret.beside.length) : null;
  if (!item || shape.kind !== 'list') return NOTHING;
  if (shape.item.kind === 'record') {
    const value = defaultAt(item);
    return value === null
      ? NOTHING
      : complete([pieceItem(site, value, fillable(`- ${inlineText(value)}`))]);
  }
  const found = valuesAt(item, caret).filter(({ text }) => !caret.beside.includes(text));
  return complete(
    valuesOf(
      site,
      found.map((one) => ({ ...one, text: `- ${one.text}` })),
    ),
  );
}

function scalarItems(site: Site, shape: Shape): Completions {
  const { caret, where, former } = site;
  const proposed = valuesAt(where, { ...caret, former: former?.text });
  const free = proposed.filter(({ text }) => !caret.beside.includes(text));
  const found = withFormer(where, former, free);
  const isNumber = shape.kind === 'quantity' && /[0-9]/.test(caret.typed);
  // Also from the blank behind it: a whole value is not half of another.
  const whole = caret.word.trimEnd();
  const byValue = shape.kind === 'quantity' ? placesByValue(shape.of, found) : null;
  const here = caret.typed === caret.word && found.find(({ text }) => text === whole);
  if (!here) {
    const items = valuesOf(site, found);
    // What is being typed is found by its letters, what works best first.
    const isOpen = caret.typed === '';
    return { items: isOpen ? placed(items, byValue) : items, incomplete: isNumber };
  }
  // What is whole hides nothing: all that could stand in its place is shown, behind it.
  const others = found.filter((one) => one !== here);
  const items = valuesOf(site, [here, ...others]).map((item) => ({ ...item, filter: caret.word }));
  return { items: placed(items, byValue), incomplete: true };
}

const placed = (items: readonly Completion[], places: ReadonlyMap<string, number> | null) =>
  items.map((item): Completion => {
    const byValue = places?.get(item.label);
    return byValue === undefined ? item : { ...item, byValue };
  });

const complete = (items: readonly Completion[]): Completions => ({ items, incomplete: false });

const sorted = (proposals: readonly KeyProposal[]): KeyProposal[] =>
  [...proposals].sort((a, b) => a.rank - b.rank);

const valuesOf = (site: Site, found: readonly Proposal[]): Completion[] =>
  found.map(({ text, source, detail, kind, about }, order) => ({
    ...framed(site, text, [source ?? text], order),
    detail,
    kind,
    about,
    preselect: order === 0,
  }));

/** A mapping or list that was taken out. */
const formerItem = (site: Site): Completion[] =>
  valuesOf(site, withFormer(site.where, site.former, []));

/** The whole of a mapping or list on one line. */
function wholeItem(site: Site, order: number): Completion[] {
  const value = defaultAt(site.where);
  if (value === null) return [];
  const text = inlineText(value);
  return [{ ...pieceItem(site, text, fillable(`: ${text}`)), order }];
}

function pieceItem(site: Site, label: string, pieces: readonly Piece[]): Completion {
  const [first, ...rest] = pieces;
  const own = typeof first === 'string' ? [first.replace(/^: /, ''), ...rest] : pieces;
  const { key = '', of = 'plan' } = site.where.meaning ?? {};
  return {
    ...framed(site, label, own, 0),
    detail: inLanguage(site.where.meaning?.keyShape.title ?? ''),
    kind: 'value',
    about: { kind: 'key', of, key },
  };
}

function keyItem(site: Site, proposal: KeyProposal, order: number): Completion {
  const { caret } = site;
  const { key, detail, kind, pieces, choice, about } = proposal;
  const isRenamed = caret.pair === 'value';
  const base = framed(site, key, isRenamed ? [key] : pieces, order);
  const to = caret.pair === 'colon' ? caret.colonEnd : caret.to;
  const range = { ...base.range, end: { line: caret.line, character: to } };
  return { ...base, detail, kind, choice: choice && !isRenamed, about, range };
}

/** An item with all that follows from where it is written. */
function framed(
  { caret, eol }: Site,
  label: string,
  pieces: readonly Piece[],
  order: number,
): Omit<Completion, 'kind' | 'about'> {
  const { line, from, to, before, after, column } = caret;
  const all = [before, ...laidOut(pieces, column, eol), after].filter((piece) => piece !== '');
  const quote = /^['"]/.exec(caret.word)?.[0] ?? '';
  return {
    label,
    detail: '',
    order,
    filter: quote + label,
    preselect: false,
    range: { start: { line, character: from }, end: { line, character: to } },
    text: plainText(all),
    ...(hasFills(all) && { snippet: snippetText(all) }),
    choice: false,
  };
}
