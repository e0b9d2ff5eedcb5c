/** A comparison as one page that needs nothing else: for reviewers who have no editor. */

import type { ComparedFinding, ComparedPlan, Comparison, ShotChange } from '../../api/compared.ts';
import { type Block, isEmpty, list, paragraph, section } from '../../api/document.ts';
import type { Child, Element } from '../../api/drawing.ts';
import type { PageFrame } from '../../api/frame.ts';
import type { Say } from '../../say/say.ts';
import { inLanguage, languageInForce, message } from '../../words/message.ts';
import { asciiJson } from '../ascii-json.ts';
import { blockHtml } from '../document/html.ts';
import { el, markup } from '../markup.ts';
import { commentList, REVIEW_RULE } from '../review.ts';
import { FILL_STYLE } from '../sheet/fill-style.ts';
import { idOf } from '../sheet/html.ts';
import { SHEET_STYLE } from '../sheet/style.ts';
import { isSame } from './compare.ts';
import { findingsSaid, otherSections, shotBlocks } from './document.ts';
import { bothFrames, FRAMES_STYLE } from './frames.ts';
import { REVIEW_STYLE, reviewData } from './review.ts';
import {
  changedName,
  NOTHING_DIFFERENT,
  readsTheSame,
  sameShotsWords,
  toldShots,
} from './words.ts';

/** Each plan as somebody named it: 'old.shootplan.yaml', 'HEAD:plans/tide.shootplan.yaml'. */
interface ComparedPage {
  /** The file of the plan after, without its folder: comments go there. */
  readonly file: string;
  readonly before: string;
  readonly after: string;
  readonly comparison: Comparison;
  /** Of the plan after, in its order. */
  readonly shots: ComparedPlan['shots'];
  readonly frames: Record<'before' | 'after', (shot: string) => PageFrame | string | null>;
}

/** The style of the page, as one text so that its hash can stand in the page's policy. */
export const comparePageStyle = (): string =>
  SHEET_STYLE + FILL_STYLE + FRAMES_STYLE + REVIEW_STYLE;

/**
 * The whole page, with nothing from outside and no script but the one that takes comments.
 *
 * @param hashes `sha256-…` of `comparePageStyle` and of the script in base64, as the policy names them
 */
export function comparePage(
  page: ComparedPage,
  say: Say,
  script: string,
  hashes: { readonly style: string; readonly script: string },
): string {
  const policy = `default-src 'none'; style-src '${hashes.style}'; script-src '${hashes.script}'; img-src data:; base-uri 'none'; form-action 'none'`;
  const head = [
    // By it the command line knows what it may replace: `server/files/own-output.ts`.
    el('meta', { name: 'generator', content: 'Lamella' }),
    el('meta', { charset: 'utf-8' }),
    el('meta', { 'http-equiv': 'Content-Security-Policy', content: policy }),
    el('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
    el('meta', { name: 'color-scheme', content: 'light dark' }),
    el('title', {}, message`${page.after}: changes`),
  ];
  return [
    `<!doctype html>\n<html lang="${languageInForce()}"><head>`,
    ...head.map(markup),
    // Our own text, and in `style` nothing is to be escaped.
    `<style>${comparePageStyle()}</style></head><body>`,
    markup(mainOf(page, say)),
    // Ours too; its bundler writes no end tag into it.
    `<script>${script}</script></body></html>\n`,
  ].join('');
}

function mainOf(page: ComparedPage, say: Say): Element {
  const { before, after, file, comparison } = page;
  const { told, rest } = toldShots(comparison, say);
  const { entries, edit, findings } = otherSections(comparison, 'page', 2);
  const others = [...entries, ...edit, ...findings].map((one) => blockHtml(one));
  const data = reviewData(file, [before, after, comparison]);
  return el(
    'main',
    { class: 'compared', 'data-review': asciiJson(data) },
    told.length > 1 && shotList(told),
    el(
      'header',
      { class: 'plan' },
      el('h1', {}, message`Changes`),
      blockHtml({
        kind: 'pairs',
        rows: [
          [message`before`, before],
          [message`after`, after],
        ],
      }),
      isSame(comparison) && blockHtml(paragraph(inLanguage(NOTHING_DIFFERENT))),
    ),
    ...told.map((shot, index) => shotHtml(shot, idOf(shot.shot, index), page, say)),
    others.length > 0 && el('div', { class: 'beside' }, ...others),
    rest > 0 && sameShots(page, new Set(told.map(({ shot }) => shot)), rest),
  );
}

/** They can be commented too. */
const sameShots = ({ shots }: ComparedPage, told: ReadonlySet<string>, rest: number): Element =>
  el(
    'section',
    { class: 'beside' },
    el('h2', {}, sameShotsWords(rest)),
    ...[...shots].flatMap(([name, { review }]) =>
      told.has(name)
        ? []
        : [
            el(
              'section',
              { class: 'same', 'data-shot': name },
              el('h3', {}, name),
              blockHtml(commentList(review)),
            ),
          ],
    ),
  );

const shotList = (told: readonly ShotChange[]): Element =>
  el(
    'nav',
    { class: 'shots', 'aria-label': message`Shots` },
    ...told.map(({ shot }, index) => el('a', { href: `#${idOf(shot, index)}` }, shot)),
  );

function shotHtml(
  shot: ShotChange,
  id: string,
  { frames, shots }: ComparedPage,
  say: Say,
): Element {
  const before = shot.state === 'new' ? null : frames.before(shot.before ?? shot.shot);
  const after = shot.state === 'gone' ? null : frames.after(shot.shot);
  return el(
    'section',
    {
      class: 'shot',
      id,
      'aria-labelledby': `${id}.name`,
      'data-shot': shot.state === 'gone' ? undefined : shot.shot,
    },
    el('header', {}, el('h2', { id: `${id}.name` }, changedName(shot)), stateOf(shot)),
    ...bothFrames(before, after),
    ...[
      ...shotBlocks(shownOf(shot), say, 'page'),
      keptList(shot, shots.get(shot.shot)?.findings ?? []),
    ]
      .filter((block) => !isEmpty(block))
      .map((block) => el('div', { class: 'block' }, blockHtml(block))),
    ...section(3, message`Comments`, [commentList(shots.get(shot.shot)?.review ?? [])]).map((one) =>
      blockHtml(one),
    ),
  );
}

/** Without the comments of the plan after, which are listed under a heading of their own. */
function shownOf(shot: ShotChange): ShotChange {
  const { fields, findings } = shot;
  const isOther = ({ rule }: ComparedFinding): boolean => rule !== REVIEW_RULE;
  return {
    ...shot,
    fields: fields.filter(({ path, after }) => after === null || !path.startsWith('review.')),
    findings: {
      new: findings.new.filter(isOther),
      gone: findings.gone.filter(isOther),
      changed: findings.changed.filter(({ after }) => isOther(after)),
    },
  };
}

/** What was found before and is found still, in the same words. */
function keptList({ findings }: ShotChange, now: readonly ComparedFinding[]): Block {
  const told = [
    ...findings.new,
    ...findings.changed.filter((one) => !readsTheSame(one)).map(({ after }) => after),
  ];
  const kept = now.filter(({ rule, severity, what }) => {
    if (rule === REVIEW_RULE) return false;
    const at = told.findIndex(
      (one) => one.rule === rule && one.severity === severity && one.what === what,
    );
    if (at >= 0) told.splice(at, 1);
    return at < 0;
  });
  return list(findingsSaid(message`unchanged`, kept, 'page'));
}

/** What a reviewer looks for first: what is found that was not found before. */
function stateOf({ findings: { new: come, gone } }: ShotChange): Child {
  const count = (severity: string): number =>
    come.filter((each) => each.severity === severity).length;
  const [errors, warnings] = [count('error'), count('warning')];
  const words = [
    errors > 0 && message`New errors: ${errors}`,
    warnings > 0 && message`New warnings: ${warnings}`,
    gone.length > 0 && message`Resolved: ${gone.length}`,
  ].filter((one) => one !== false);
  if (words.length === 0) return null;
  const state = errors > 0 ? 'not-ready' : warnings > 0 ? 'look' : 'ready';
  return el('p', { class: `state ${state}` }, words.join(' · '));
}
