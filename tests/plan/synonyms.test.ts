/** Every other word for a key, a value, a rule or a check, tried in its place in a plan's text. */

import { describe, expect, it } from 'vitest';
import type { DefName } from '../../shared/plan/generated/names.ts';
import { SHAPES } from '../../shared/plan/generated/shapes.ts';
import { INSTEAD } from '../../shared/plan/instead.ts';
import { lowerEntry } from '../../shared/plan/lower.ts';
import type { PlanFix } from '../../shared/plan/problem.ts';
import { each } from '../support/each.ts';
import { entryId } from '../support/entry-id.ts';
import { applied, coreWith, findingsOf, PLAN } from '../support/plans.ts';
import { mapOf, nodeOf } from './support/node-of.ts';

const from = { file: 'file:///plan', entry: entryId('shots/drift') };
const defs = Object.keys(SHAPES) as DefName[];

const synonyms = defs.flatMap((def) =>
  Object.entries(SHAPES[def].keys).flatMap(([key, shape]) =>
    (shape.also ?? []).map((word) => ({ def, key, word, shape })),
  ),
);

/** What the table of names promises: the words that people bring from elsewhere. */
const PROMISED: Readonly<Record<string, string>> = {
  'body weight': 'mass',
  'lens weight': 'mass',
  'body megapixels': 'pixels',
  'body photosites': 'pixels',
  'kit camera': 'bodies',
  'light support': 'stand',
  'relight dimmer': 'dimmed',
  'relight dim': 'dimmed',
  'relight power': 'dimmed',
  'recording fps': 'rate',
  'deliver fps': 'rate',
  'shot f': 'aperture',
  'shot f-stop': 'aperture',
  'lens f-stop': 'aperture',
  'shot ss': 'shutter',
  'shot speed': 'shutter',
  'reading speed': 'shutter',
  'shot gain': 'iso',
  'shot wb': 'white-balance',
  'light lux': 'illuminance',
  'light cct': 'colour-temperature',
  'light kelvin': 'colour-temperature',
  'lens min-focus': 'closest',
  'lens mfd': 'closest',
  'kit ext': 'tubes',
  'kit spacer': 'tubes',
  'kit extender': 'converters',
  'kit tc': 'converters',
  'lens focal': 'focal-length',
  'body flange': 'flange-distance',
  'lens rim': 'front-diameter',
  'lens grows': 'extends',
  'body shows': 'displayed-aperture',
  'iso-limits clean-to': 'usable-to',
  'body record': 'recording-modes',
  'recording size': 'resolution',
  'deliver size': 'resolution',
  'kit close-ups': 'close-up-lenses',
  'subject stands': 'orientation',
  'subject bow': 'sag',
  'subject lasts': 'lifetime',
  'subject index': 'refractive-index',
  'shot flow': 'subject-speed',
  'subject background': 'background-luminance',
  'shot background': 'background-luminance',
  'light source': 'emitting-size',
  'light colour': 'colour-temperature',
  'placement up': 'elevation',
  'placement across': 'azimuth',
  'shot tilt-about': 'tilt-axis',
  'move rail': 'rail-angle',
  'cut join': 'transition',
};

const problemsOf = <D extends DefName>(def: D, pairs: readonly (readonly [string, unknown])[]) =>
  lowerEntry<D>(def, mapOf(pairs), from);

const renamed = (fix: PlanFix | undefined): string | undefined => {
  const edit = fix?.edits.find(({ op }) => op === 'rename-key');
  return edit?.op === 'rename-key' ? edit.text : undefined;
};

describe('another word for a key', () => {
  it('is one that its record has no key by, and means one key of it', () => {
    each(synonyms, ({ def, word }) => {
      expect(Object.hasOwn(SHAPES[def].keys, word)).toBe(false);
      expect(word).toMatch(/^[a-z][a-z0-9-]*$/);
      expect(synonyms.filter((other) => other.def === def && other.word === word).length).toBe(1);
      expect(Object.hasOwn(INSTEAD[def] ?? {}, word)).toBe(false);
    });
  });

  it('is there for every word that was promised', () => {
    each(Object.entries(PROMISED), ([place, key]) => {
      const [def, word] = place.split(' ') as [DefName, string];
      expect(SHAPES[def].keys[key]?.also).toContain(word);
    });
  });

  it('is answered with the key, its fix lacks nothing, and what stands there counts', () => {
    each(synonyms, ({ def, key, word, shape }) => {
      if (def === 'check-state') return;
      const value = shape.examples[0];
      const isText = !['record', 'map', 'list', 'word-or-record'].includes(shape.shape.kind);
      const { problems, fields } = problemsOf(def, [[word, isText ? value : null]]);
      const problem = problems.find(({ rule }) => rule === 'unknown-key');
      expect(problem).toMatchObject({
        code: 'synonym',
        at: { path: [word], part: 'key' },
        args: { key: word, right: key },
      });
      const [fix] = problem!.fixes;
      expect(fix?.title).toBe(`Call it \`${key}\``);
      expect(fix?.sideEffects).toBeUndefined();
      expect(renamed(fix)).toBe(key);
      const field = (fields as unknown as Record<string, { state: string }>)[key];
      expect(field?.state).toBe(isText ? 'known' : 'invalid');
      const missing = problems.find(({ rule }) => rule === 'missing-key');
      expect(missing?.args.keys?.split(', ') ?? []).not.toContain(key);
      const after = problemsOf(def, [[key, isText ? value : null]]).problems;
      expect(after.map(({ rule }) => rule)).not.toContain('unknown-key');
    });
  });

  it('is read in any case, with spaces or underscores', () => {
    each(['Focal', 'FL', 'fl'], (word) => {
      expect(problemsOf('lens', [[word, '200 mm']]).problems[0]?.args.right).toBe('focal-length');
    });
    each(['Frame Rate', 'frame_rate'], (word) => {
      expect(problemsOf('recording', [[word, '50 fps']]).problems[0]?.args.right).toBe('rate');
    });
  });

  it('makes no key twice: beside the key itself, or a second word for it', () => {
    const beside = problemsOf('tube', [
      ['weight', '60 g'],
      ['mass', '80 g'],
      ['length', '12 mm'],
    ]);
    expect(beside.problems.map(({ code, fixes }) => [code, fixes.map(renamed)])).toEqual([
      ['synonym-twice', [undefined]],
    ]);
    expect(beside.fields.mass).toMatchObject({ value: 0.08 });
    const two = problemsOf('shot', [
      ['subject', 'a'],
      ['rig', 'b'],
      ['f', 'f/8'],
      ['f-stop', 'f/11'],
    ]);
    expect(two.problems.map(({ code }) => code)).toEqual(['synonym', 'synonym-twice']);
    expect(two.fields.aperture).toMatchObject({ state: 'known', value: 8 });
  });

  it('keeps a value of the wrong kind an error beside it', () => {
    const { problems, fields } = problemsOf('body', [['megapixels', '24']]);
    expect(problems.map(({ rule }) => rule)).toContain('wrong-value');
    expect(fields.pixels.state).toBe('invalid');
  });
});

describe('where it belongs elsewhere, or has no key', () => {
  it.each<[DefName, string, string, string]>([
    ['shot', 'lux', 'illuminance', 'a light'],
    ['light', 'dimmer', 'dimmed', 'a change of a light'],
    ['shot', 'fps', 'rate', 'a delivery'],
    ['subject', 'flow', 'subject-speed', 'a shot'],
    ['shot', 'extender', 'converters', 'a kit'],
    ['shot', 'mfd', 'closest', 'a lens'],
  ])('%s: %s', (def, word, right, home) => {
    const { problems } = problemsOf(def, [[word, '1']]);
    const found = problems.find(({ rule }) => rule === 'unknown-key');
    expect(found).toMatchObject({ code: 'synonym-elsewhere', args: { key: word, right } });
    expect(found?.args.belongs).toContain(home);
    expect(found?.fixes.every(({ sideEffects }) => sideEffects !== undefined)).toBe(true);
  });

  it('says in words what to write instead, and changes nothing unasked', () => {
    each(Object.entries(INSTEAD), ([def, words]) => {
      each(Object.entries(words), ([word, text]) => {
        const { problems } = problemsOf(def as DefName, [[word, '1']]);
        const found = problems.find(({ rule }) => rule === 'unknown-key');
        expect(found).toMatchObject({ code: 'no-such-key', args: { key: word, instead: text } });
        expect(found?.fixes.every(({ sideEffects }) => sideEffects !== undefined)).toBe(true);
        // Every key that it names is one of the record.
        const named = [...text.matchAll(/`([a-z-]+)`/g)].map(([, key]) => key!);
        expect(named.length).toBeGreaterThan(0);
        for (const key of named) expect(Object.keys(SHAPES[def as DefName].keys)).toContain(key);
      });
    });
    expect(INSTEAD.lens).toHaveProperty('filter');
    expect(Object.keys(INSTEAD.light ?? {})).toEqual(expect.arrayContaining(['cto', 'ctb']));
  });
});

describe('another word for a value', () => {
  const words = defs.flatMap((def) =>
    Object.entries(SHAPES[def].keys).flatMap(([key, { shape }]) =>
      shape.kind === 'enum'
        ? Object.entries(shape.also ?? {}).map(([word, meant]) => ({ def, key, word, meant }))
        : [],
    ),
  );

  it('is answered with the value, and counts as it', () => {
    const promised = ['push', 'pull', 'turn'];
    expect(words.map(({ word }) => word)).toEqual(expect.arrayContaining(promised));
    each(words, ({ def, key, word, meant }) => {
      const { problems, fields } = problemsOf(def, [[key, word]]);
      const found = problems.find(({ rule }) => rule === 'wrong-value');
      expect(found).toMatchObject({ code: 'not-one-of', args: { text: word, nearest: meant } });
      expect(found?.fixes[0]?.edits).toMatchObject([{ op: 'set', text: meant }]);
      expect((fields as unknown as Record<string, unknown>)[key]).toMatchObject({ value: meant });
    });
  });

  it.each<[DefName, string, string, string]>([
    ['reading', 'through', 'bare lens', 'bare-lens'],
    ['reading', 'through', 'this rig', 'this-rig'],
    ['subject', 'holder', 'wire frame', 'wire-frame'],
    ['subject', 'holder', 'smooth container', 'smooth-container'],
    ['subject', 'holder', 'open dish', 'open-dish'],
    ['subject', 'holder', 'enclosed holder', 'enclosed-holder'],
  ])('%s.%s: %s, with a space where a hyphen belongs', (def, key, word, meant) => {
    const { problems } = lowerEntry(def, nodeOf({ [key]: word }), from);
    const found = problems.find(({ rule }) => rule === 'wrong-value');
    expect(found?.fixes[0]).toMatchObject({ edits: [{ op: 'set', text: meant }] });
    expect(found?.fixes[0]?.sideEffects).toBeUndefined();
  });
});

/** A plan with one thing written in other words, and what its first fix makes of it. */
const fixedOf = (text: string, rule: string, what: RegExp) => {
  const core = coreWith(text);
  const found = core.findings(PLAN).find((one) => one.rule === rule && what.test(one.what));
  expect(found, `${rule} ${what}`).toBeDefined();
  const [fix] = core.fixesOf(found!);
  return { title: fix?.title, text: applied(text, fix!.edits) };
};

describe('in a plan', () => {
  const HEAD = 'shootplan: 1\n';
  it.each([
    ['a key', 'kit:\n  tubes:\n    t: { length: 12 mm, weight: 60 g }\n', 'weight', 'mass'],
    ['a section', 'kit:\n  cameras:\n    a: { sensor: 36 x 24 mm }\n', 'cameras', 'bodies'],
    ['a block', 'deliver:\n  size: 1920 x 1080\n', 'size', 'resolution'],
  ])('%s is called by its name, and the finding is gone', (_, body, word, right) => {
    const { title, text } = fixedOf(HEAD + body, 'unknown-key', new RegExp(`\`${word}\``));
    expect(title).toBe(`Call it \`${right}\``);
    expect(text).toBe((HEAD + body).replace(`${word}:`, `${right}:`));
    expect(findingsOf(text).map(({ rule }) => rule)).not.toContain('unknown-key');
  });

  it('takes a single value one level deeper where the key needs a mapping', () => {
    const body = `${HEAD}kit:\n  lenses:\n    l: { focal-length: 100 mm, aperture: f/4 to 32, mfd: 0.3 m }\n`;
    const { title, text } = fixedOf(body, 'unknown-key', /`mfd`/);
    expect(title).toBe('Call it `closest`');
    expect(text).toContain('closest: { from-sensor: 0.3 m }');
    const rules = findingsOf(text).map(({ rule }) => rule);
    expect(rules).not.toContain('unknown-key');
    expect(rules).not.toContain('wrong-value');
  });

  it.each([
    ['smear', 'motion-blur'],
    ['aperture-behind-converter', 'effective-aperture'],
    ['lens-in-the-mirror', 'lens-reflected'],
    ['outlasts-the-film', 'take-exceeds-lifetime'],
    ['better-setting-idle', 'better-recording-mode'],
    ['order-matters', 'rig-order'],
  ])('a rule: %s', (word, right) => {
    each([`allow:\n  ${word}: { because: so }\n`, `severity:\n  ${word}: hint\n`], (body) => {
      const { title, text } = fixedOf(HEAD + body, 'unknown-name', new RegExp(word));
      expect(title).toBe(`Call it \`${right}\``);
      expect(text).toBe((HEAD + body).replace(word, right));
      expect(findingsOf(text).map(({ rule }) => rule)).not.toContain('unknown-name');
    });
  });

  it('a check', () => {
    each(
      [
        'preflight:\n  every-shot: [lamps-safe]\n',
        'preflight:\n  once: { lamps-safe: open }\n',
        'shots:\n  a: { preflight: { lamps-safe: open } }\n',
      ],
      (body) => {
        const { title, text } = fixedOf(HEAD + body, 'usual-spelling', /lamps-safe/);
        expect(title).toBe('Call it `flicker-checked`');
        expect(text).toBe((HEAD + body).replace('lamps-safe', 'flicker-checked'));
      },
    );
  });
});
