/**
 * One name for one thing. Keys, rules, commands and words were renamed before the first release;
 * nothing that people read may still use a former name. Where the former word is good English as
 * well, the pattern holds the context in which it is the name.
 */
import { expect, it } from 'vitest';
import { each } from '../support/each.ts';
import {
  contributed,
  described,
  editorMessages,
  goldens,
  helps,
  messages,
  pages,
  samples,
  type Text,
} from './support/read-by-people.ts';

/** A word as a key of a plan, where a key can begin, or alone in backticks. */
const asName = (word: string): RegExp =>
  new RegExp(`(?:^[ \\t]*|[{,]\\s*|[/\`])${word}:(?=\\s|$)|\`${word}\``, 'm');

/** A word anywhere. */
const anywhere = (word: string): RegExp => new RegExp(`(?<![\\w-])${word}(?![\\w-])`, 'i');

interface Renamed {
  readonly was: string;
  readonly is: string;
  readonly found: RegExp;
  /** A text in which the former name has to be found. */
  readonly bad: string;
  /** A text with the same letters in another meaning, or with the name in force. */
  readonly good: string;
}

const KEYS: readonly Renamed[] = [
  {
    was: 'focal',
    is: 'focal-length',
    found: /\bfocal\b(?![- ](?:length|range|plane))/,
    bad: 'a lens with `focal` and aperture',
    good: 'focal-length: 100 mm, the focal length at infinity',
  },
  {
    was: 'flange',
    is: 'flange-distance',
    found: /\bflange\b(?!-distance| distance| focal)/,
    bad: '| flange | distance from the mount to the sensor |',
    good: 'flange-distance: 44 mm',
  },
  {
    was: 'photosites',
    is: 'pixels',
    found: anywhere('photosites?'),
    bad: 'photosites: 6048 x 4024',
    good: 'pixels: 6048 x 4024',
  },
  {
    was: 'rim',
    is: 'front-diameter',
    found: anywhere('rims?'),
    bad: 'from the subject to the front rim',
    good: 'trim the edge',
  },
  {
    was: 'grows',
    is: 'extends',
    found: asName('grows'),
    bad: 'grows: 20 mm',
    good: 'The Airy disk grows with the effective f-number.',
  },
  {
    was: 'shows',
    is: 'displayed-aperture',
    found: asName('shows'),
    bad: 'shows: marked',
    good: 'Lamella shows the effective one beside it.',
  },
  {
    was: 'clean-to',
    is: 'usable-to',
    found: anywhere('clean-to'),
    bad: 'clean-to: 3200',
    good: 'usable-to: 3200',
  },
  {
    was: 'record (on a body)',
    is: 'recording-modes',
    found: /\brecord:\s*(?:\{|\n\s+[\w-]+:\s*\{)/,
    bad: 'record: { full-25: { rate: 25 fps } }',
    good: 'record: full-25\n    light: [panel]',
  },
  {
    was: 'size (in pixels)',
    is: 'resolution',
    found: /\bsize: *\d+ ?x ?\d+ *(?:[,}]|$)/m,
    bad: 'deliver: { size: 1920 x 1080, rate: 25 fps }',
    good: 'size: 40 x 30 mm, resolution: 1920 x 1080',
  },
  {
    was: 'close-ups',
    is: 'close-up-lenses',
    found: asName('close-ups'),
    bad: 'close-ups:\n    plus-2: { power: 2 dpt }',
    good: 'a film of close-ups',
  },
  {
    was: 'stands (of a film)',
    is: 'orientation',
    found: /\bstands: (?:upright|level)\b/,
    bad: 'stands: upright',
    good: 'stands: { column: { payload: 8 kg } }',
  },
  { was: 'bow', is: 'sag', found: anywhere('bow'), bad: 'bow: 1 mm', good: 'elbow' },
  {
    was: 'lasts',
    is: 'lifetime',
    found: asName('lasts'),
    bad: 'lasts: 40 s',
    good: 'longer than the film lasts: 55 s',
  },
  {
    was: 'index',
    is: 'refractive-index',
    found: asName('index'),
    bad: 'index: 1.33',
    good: 'refractive-index: 1.33; the index of its frames',
  },
  {
    was: 'flow',
    is: 'subject-speed',
    found: asName('flow'),
    bad: 'without `flow`',
    good: 'the flow shall read as flow',
  },
  {
    was: 'background',
    is: 'background-luminance',
    found: asName('background'),
    bad: 'background: 0.3 cd/m2',
    good: 'background-luminance: 0.3 cd/m2 keeps the background dark',
  },
  {
    was: 'source (of a light)',
    is: 'emitting-size',
    found: /(?<![\w-])source: *\d|`source`/,
    bad: 'source: 300 x 200 mm',
    good: 'Source: Hecht, Optics. A larger source helps.',
  },
  {
    was: 'colour (of a light)',
    is: 'colour-temperature',
    found: /(?<![\w-])colour: *(?:\d|auto)/,
    bad: 'colour: 5600 K',
    good: 'kind: colour',
  },
  {
    was: 'up, across (of a light)',
    is: 'elevation, azimuth',
    found: /[{,]\s*(?:up|across): *-?\d|^\s+(?:up|across): *-?\d|`(?:up|across)`/m,
    bad: 'at: { distance: 400 mm, up: 40 deg }',
    good: 'elevation: 40 deg; pixels across and down',
  },
  {
    was: 'tilt-about',
    is: 'tilt-axis',
    found: anywhere('tilt-about'),
    bad: 'tilt-about: upright',
    good: 'tilt-axis: upright',
  },
  {
    was: 'push, pull, turn (kinds of a move)',
    is: 'push-in, focus-pull, turntable',
    found: /\bkind: (?:push|pull|turn)(?![\w-])|`(?:push|pull|turn)`/,
    bad: 'move: { kind: pull, from: 0.4 m }',
    good: 'move: { kind: push-in }, `turntable`',
  },
  {
    was: 'pan along upright',
    is: 'tilt (a move)',
    found: /\bkind: pan\b[^}\n]*\balong: upright\b/,
    bad: '{ kind: pan, along: upright }',
    good: '{ kind: slide, along: upright }',
  },
  {
    was: 'rail',
    is: 'rail-angle',
    // As a number, and not as the name of a focusing rail.
    found: /(?:^[ \t]*|[{,]\s*)rail: ?-?\d/m,
    bad: 'rail: 4 deg',
    good: 'rail-angle: 4 deg along the rail',
  },
  {
    was: 'join',
    is: 'transition',
    // The rule `join-without-handles` keeps its name: plans name it.
    found: anywhere('joins?'),
    bad: 'join: dissolve 1 beat',
    good: '`join-without-handles` looks at a transition',
  },
  {
    was: 'values of two words',
    is: 'values with a hyphen',
    found: /\b(?:through|holder): [a-z]+ [a-z]+|`(?:bare lens|this rig|wire frame)`/,
    bad: 'through: bare lens',
    good: 'holder: wire-frame; a reading through the bare lens',
  },
  {
    was: 'lamps-safe',
    is: 'flicker-checked',
    found: anywhere('lamps-safe'),
    bad: 'lamps-safe: open',
    good: 'flicker-checked: open',
  },
];

const renamed = (was: string, is: string): Renamed => ({
  was,
  is,
  found: anywhere(was),
  bad: `the rule ${was}.`,
  good: `the rule ${is}.`,
});

const RULES: readonly Renamed[] = [
  renamed('aperture-behind-converter', 'effective-aperture'),
  renamed('smear', 'motion-blur'),
  renamed('lens-in-the-mirror', 'lens-reflected'),
  renamed('outlasts-the-film', 'take-exceeds-lifetime'),
  renamed('better-setting-idle', 'better-recording-mode'),
  renamed('order-matters', 'rig-order'),
];

const COMMANDS: readonly Renamed[] = [
  {
    was: 'settle (a command)',
    is: 'solve',
    found: /\blamella settle\b|`settle FILE/,
    bad: 'lamella settle day.shootplan.yaml',
    good: 'take: { duration: 20 s, settle: 5 s }',
  },
  {
    was: 'verify',
    is: 'clips',
    found: anywhere('verif(?:y|ies|ied)'),
    bad: '<!-- keys of verify -->',
    good: '<!-- keys of clips -->',
  },
  {
    was: 'report (a command)',
    is: 'bug-report',
    found: /\blamella report\b|`report (?:FILE|PLAN)/,
    bad: 'lamella report FILE',
    good: 'lamella bug-report FILE; report it with the plan',
  },
  renamed('lamella.lenses', 'lamella.codeLens'),
];

const JSON_KEYS: readonly Renamed[] = [
  {
    was: '…Nm (newton metres)',
    is: '…NewtonMetres',
    found: /\bmoment\w*Nm\b/,
    bad: 'momentAtFootNm',
    good: 'momentAtFootNewtonMetres, thicknessNm',
  },
  renamed('tippingFactor', 'stabilityFactor'),
  renamed('prices?', 'sideEffects'),
  renamed('isHonest', 'repeatsFrames'),
  renamed('judgedDepthMm', 'usableDepthMm'),
].map((one) => (one.was === 'prices?' ? { ...one, was: 'price', bad: 'the price of a fix' } : one));

const WORDS: readonly Renamed[] = [
  {
    was: 'film (of the edit)',
    is: 'edit, piece or video',
    found:
      /\b(?:school|short|feature|finished|documentary|corporate|stock|minute|second) films?\b|\bfilm (?:clips?|edit|festival|music|crew|set|school)\b|\b(?:edit|cut|title|end|length|running time) of the film\b/i,
    bad: 'half a minute between two chapters of a school film',
    good: 'the liquid film; the edge of the film; ten films; cut before it is filmed',
  },
  {
    was: 'works as',
    is: 'effective',
    found: /\bworks? as\b/i,
    bad: 'f/8 works as f/25',
    good: 'f/25 effective',
  },
  {
    was: 'too dark, too bright',
    is: 'underexposed, overexposed',
    found: /\btoo (?:dark|bright)\b/i,
    bad: 'The shot is too dark.',
    good: 'The shot is underexposed.',
  },
  {
    was: 'an information',
    is: 'a note',
    found: /\b(?:an information|informations)\b/i,
    bad: 'an information above 70%',
    good: 'a note above 70%',
  },
  {
    was: 'ready (with checks open)',
    is: 'no errors; 7 checks open',
    found: /\bready\b[^.\n]*\bchecks? open\b|\bchecks? open\b[^.\n]*\bready\b/i,
    bad: 'Ready, 7 checks open',
    good: 'No errors; 7 checks open',
  },
];

const ALL = [...KEYS, ...RULES, ...COMMANDS, ...JSON_KEYS, ...WORDS];

it('a former name is found where it is one, and nowhere else', () => {
  each(
    ALL,
    ({ found, bad, good }) => {
      expect(bad).toMatch(found);
      expect(good).not.toMatch(found);
    },
    ({ was }) => was,
  );
});

/** The line of a text that a pattern is found in. */
function lineWith(text: string, found: RegExp): string {
  const at = text.search(found);
  const line = text.slice(0, at).split('\n').length;
  return `${line}: ${text.split('\n')[line - 1]?.trim().slice(0, 160)}`;
}

const offenders = (texts: readonly Text[]): readonly string[] =>
  texts.flatMap(({ at, text }) =>
    ALL.filter(({ found }) => found.test(text)).map(
      ({ was, is, found }) => `${at}:${lineWith(text, found)} (${was} is ${is})`,
    ),
  );

it.each<[string, readonly Text[]]>([
  ['pages', pages],
  ['messages', [...messages, ...editorMessages]],
  ['the schema', described],
  ['the manifest', contributed],
  ['samples', samples],
  ['goldens', goldens],
])('no former name in %s', (_, texts) => {
  expect(texts.length).toBeGreaterThan(0);
  expect(offenders(texts)).toEqual([]);
});

it('no former name in the help of any command', async () => {
  const said = await helps();
  expect(said.length).toBeGreaterThan(8);
  for (const { text } of said) expect(text).toMatch(/^lamella/);
  expect(offenders(said)).toEqual([]);
});
