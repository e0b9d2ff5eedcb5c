import { describe, expect, it } from 'vitest';
import type { DefName } from '../../shared/plan/generated/names.ts';
import { lowerClips, lowerEntry, lowerKey } from '../../shared/plan/lower.ts';
import { entryId } from '../support/entry-id.ts';
import { mapOf, nodeOf } from './support/node-of.ts';

const from = { file: 'file:///plan', entry: entryId('shots/drift') };
const shot = (value: unknown) => lowerEntry('shot', nodeOf(value), from);
const right = { subject: 'harbour-film', rig: 'far-off' };
/** What is wrong, where, with the first way out. */
const said = (def: DefName, value: unknown) =>
  lowerEntry(def, nodeOf(value), from).problems.map(({ rule, code, at, fixes }) => ({
    rule,
    code,
    path: at.path.join('/'),
    ...(at.part ? { part: at.part } : {}),
    ...(fixes[0] ? { fix: fixes[0].title } : {}),
  }));

describe('what is in order', () => {
  it('is known, with its place; what is left out is missing', () => {
    const { fields, problems } = shot({
      ...right,
      field: '24 mm',
      'tilt-axis': 'upright',
      light: ['wall'],
      take: { duration: '60 s', count: 3 },
      preflight: { focus: 'open', size: { done: '2027-03-02', by: 'op' } },
      allow: { 'motion-blur': { because: 'it shall flow', 'up-to': '3 px' } },
    });
    expect(problems).toEqual([]);
    const at = (...path: (string | number)[]) => ({ ...from, path });
    expect(fields.field).toEqual({ state: 'known', value: 24, at: at('field') });
    expect(fields.ring).toEqual({ state: 'missing', at: at('ring') });
    expect(fields['tilt-axis']).toMatchObject({ value: 'upright' });
    expect(fields.light).toMatchObject({ value: [{ value: 'wall', at: at('light', 0) }] });
    expect(fields.take).toMatchObject({
      value: { count: { value: 3, at: at('take', 'count') }, settle: { state: 'missing' } },
    });
    const checks = fields.preflight.state === 'known' ? fields.preflight.value : new Map();
    expect(checks.get('focus')).toMatchObject({ value: 'open' });
    expect(checks.get('size')).toMatchObject({ value: { by: { value: 'op' } } });
    const accepted =
      fields.allow.state === 'known' ? fields.allow.value.get('motion-blur') : undefined;
    expect(accepted).toMatchObject({
      value: { 'up-to': { value: { kind: 'pixels', value: 3 } } },
    });
  });

  it('may be named like the furniture of JavaScript', () => {
    const { problems, fields } = lowerEntry(
      'body',
      mapOf([['recording-modes', { constructor: { resolution: '1920 x 1080' } }]]),
      from,
    );
    expect(problems).toEqual([]);
    expect(
      fields['recording-modes'].state === 'known' && [...fields['recording-modes'].value.keys()],
    ).toEqual(['constructor']);
  });
});

describe('one problem each, where it stands, with a way out', () => {
  it.each<[string, DefName, unknown, ReturnType<typeof said>]>([
    [
      'no unit',
      'tube',
      { length: '12' },
      [{ rule: 'unit', code: 'no-unit', path: 'length', fix: 'Write 12 mm' }],
    ],
    [
      'decimal comma',
      'tube',
      { mass: '1,5 kg' },
      [{ rule: 'misread-scalar', code: 'decimal-comma', path: 'mass', fix: 'Write 1.5 kg' }],
    ],
    [
      'other spelling',
      'tube',
      { length: '12mm' },
      [{ rule: 'usual-spelling', code: 'usual-spelling', path: 'length', fix: 'Write 12 mm' }],
    ],
    [
      'misspelt key',
      'tube',
      { lenght: '12 mm' },
      [
        {
          rule: 'unknown-key',
          code: 'unknown-key',
          path: 'lenght',
          part: 'key',
          fix: 'Write length',
        },
      ],
    ],
    [
      'misspelt required key is not missing as well',
      'shot',
      { subjekt: 'lantern', rig: 'far-off' },
      [
        {
          rule: 'unknown-key',
          code: 'unknown-key',
          path: 'subjekt',
          part: 'key',
          fix: 'Write subject',
        },
      ],
    ],
    [
      'key of another level',
      'rig',
      { parts: ['body-a'], tilt: '4 deg' },
      [
        {
          rule: 'unknown-key',
          code: 'belongs-elsewhere',
          path: 'tilt',
          part: 'key',
          fix: 'Remove tilt',
        },
      ],
    ],
    [
      'all that is missing, once',
      'shot',
      {},
      [{ rule: 'missing-key', code: 'missing-key', path: 'subject' }],
    ],
    [
      'misspelt word',
      'light',
      { kind: 'Led' },
      [{ rule: 'wrong-value', code: 'not-one-of', path: 'kind', fix: 'Write led' }],
    ],
    [
      'no name',
      'shot',
      { ...right, rig: 'Far Off' },
      [{ rule: 'wrong-value', code: 'not-a-name', path: 'rig', fix: 'Write far-off' }],
    ],
    [
      'one item for a list',
      'shot',
      { ...right, light: 'wall' },
      [{ rule: 'wrong-value', code: 'not-a-list', path: 'light', fix: 'Write [wall]' }],
    ],
    [
      'list for a value',
      'shot',
      { ...right, rig: ['far-off'] },
      [{ rule: 'wrong-value', code: 'not-a-value', path: 'rig' }],
    ],
    [
      'value for a mapping',
      'shot',
      { ...right, take: '60 s' },
      [{ rule: 'wrong-value', code: 'not-a-mapping', path: 'take' }],
    ],
    [
      'nothing yet',
      'shot',
      { ...right, aperture: null },
      [{ rule: 'wrong-value', code: 'empty-value', path: 'aperture' }],
    ],
    [
      'nothing yet in a list',
      'shot',
      { ...right, light: ['wall', null] },
      [{ rule: 'wrong-value', code: 'empty-value', path: 'light/1' }],
    ],
    [
      'word or record',
      'shot',
      { ...right, preflight: { focus: 'opne' } },
      [{ rule: 'wrong-value', code: 'not-one-of', path: 'preflight/focus', fix: 'Write open' }],
    ],
    [
      'name of an acceptance',
      'shot',
      { ...right, allow: { 'Depth short': { because: 'so' } } },
      [
        {
          rule: 'wrong-value',
          code: 'not-a-name',
          path: 'allow/Depth short',
          part: 'key',
          fix: 'Write depth-short',
        },
      ],
    ],
    [
      'acceptance without a reason',
      'shot',
      { ...right, allow: { 'motion-blur': {} } },
      [{ rule: 'missing-key', code: 'missing-key', path: 'allow/motion-blur/because' }],
    ],
    ['empty entry', 'shot', null, [{ rule: 'wrong-value', code: 'empty-value', path: '' }]],
    [
      'entry that is no mapping',
      'shot',
      'drift',
      [{ rule: 'wrong-value', code: 'not-a-mapping', path: '' }],
    ],
  ])('%s', (_, def, value, problems) => {
    expect(said(def, value)).toEqual(problems);
  });

  it('silences nothing else: the broken field is invalid, its neighbours are known', () => {
    const { fields } = shot({ ...right, aperture: '16', shutter: '1/50 s', tilt: null });
    expect(fields.aperture.state).toBe('invalid');
    expect(fields.tilt.state).toBe('invalid');
    expect(fields.shutter).toMatchObject({ state: 'known', value: { seconds: 0.02 } });
  });

  it('leaves every field of an entry that cannot be read invalid', () => {
    const { fields } = shot(null);
    expect(new Set(Object.values(fields).map(({ state }) => state))).toEqual(new Set(['invalid']));
    expect(fields.rig.at.path).toEqual(['rig']);
  });

  it('tells where a key belongs', () => {
    const [problem] = lowerEntry('rig', nodeOf({ parts: [], tilt: '4 deg' }), from).problems;
    expect(problem?.args).toMatchObject({ key: 'tilt', of: 'rig', belongs: 'a shot' });
  });

  it('marks a guess as one, so that it is not applied unasked', () => {
    const [problem] = lowerEntry('tube', nodeOf({ length: '12' }), from).problems;
    expect(problem?.fixes.map(({ title }) => title)).toEqual(['Write 12 mm', 'Write 12 cm']);
    expect(problem?.fixes.every(({ sideEffects }) => sideEffects !== undefined)).toBe(true);
  });

  it('reads the first of two equal keys', () => {
    const twice = mapOf([
      ['length', '12 mm'],
      ['length', 'broken'],
    ]);
    const { fields, problems } = lowerEntry('tube', twice, from);
    expect(problems).toEqual([]);
    expect(fields.length).toMatchObject({ value: 12 });
  });
});

describe('keys that stand on their own', () => {
  it('are lowered as fields of the plan', () => {
    const at = { file: 'file:///plan', entry: entryId('mains') };
    expect(lowerKey('plan', 'mains', nodeOf('50 Hz'), at)).toEqual({
      field: { state: 'known', value: 50, at: { ...at, path: [] } },
      problems: [],
    });
    const { field, problems } = lowerKey('plan', 'shootplan', nodeOf('99'), at);
    expect(field.state).toBe('invalid');
    expect(problems).toMatchObject([{ code: 'not-one-of', args: { key: 'shootplan' } }]);
    expect(lowerKey('plan', 'title', nodeOf(' '), at).problems).toMatchObject([
      { code: 'empty-text' },
    ]);
  });

  it('are lowered as the clips of a shot', () => {
    const { field, problems } = lowerClips(nodeOf([{ file: 'a.mp4', verdict: 'keeep' }, {}]), {
      file: 'file:///plan',
      entry: entryId('clips/drift'),
    });
    expect(field).toMatchObject({
      state: 'known',
      value: [{ value: { file: { value: 'a.mp4' } } }, {}],
    });
    expect(problems).toMatchObject([
      { code: 'not-one-of', at: { path: [0, 'verdict'] }, args: { nearest: 'keep' } },
    ]);
  });

  it('reads below an entry whose section is written on one line', () => {
    const { fields } = lowerEntry('tube', nodeOf({ length: '12 mm' }), {
      file: 'file:///plan',
      entry: entryId('kit'),
      path: ['tubes', 'tube-12'],
    });
    expect(fields.length.at).toEqual({
      file: 'file:///plan',
      entry: entryId('kit'),
      path: ['tubes', 'tube-12', 'length'],
    });
  });
});
