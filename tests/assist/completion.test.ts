/** What is offered, in which order, with which words, and what the text is with it. */
import { describe, expect, test } from 'vitest';
import type { Completion } from '../../shared/api/completions.ts';
import { planTemplate } from '../../shared/assist/template.ts';
import { applied, coreWith, PLAN } from '../support/plans.ts';
import { atMark, offeredAt, sample, written } from './support/completing.ts';

const TEMPLATE = planTemplate();
const TIDE = sample('tide-panes.shootplan.yaml');

/** The template with `found` in its shot exchanged for `by`, which holds the caret's mark. */
const inShot = (found: string, by: string): string => exchanged(TEMPLATE, found, by);
const inFilm = (found: string, by: string): string => exchanged(TIDE, found, by);

function exchanged(text: string, found: string, by: string): string {
  const at = text.indexOf(found, text.indexOf('\nshots:'));
  if (at < 0) throw new Error(`${found} is not there.`);
  return text.slice(0, at) + by + text.slice(at + found.length);
}

const labels = (marked: string): string[] => offeredAt(marked).items.map(({ label }) => label);

const detail = (marked: string, label: string): string | undefined =>
  offeredAt(marked).items.find((item) => item.label === label)?.detail;

describe('keys', () => {
  test('are those that are not there yet, each once', () => {
    const keys = labels(inShot('iso: 3200', '|'));
    expect(keys).toContain('iso');
    expect(keys).toContain('tilt');
    expect(keys).not.toContain('subject');
    expect(new Set(keys).size).toBe(keys.length);
  });

  test('one of field, magnification and ring is enough', () => {
    expect(labels(inShot('iso: 3200', '|'))).not.toContain('magnification');
    expect(labels(inShot('field: 48 mm', '|'))).toEqual(
      expect.arrayContaining(['field', 'magnification', 'ring']),
    );
  });

  test('required ones come first', () => {
    const [first] = labels(inShot('subject: crystal', '|'));
    expect(first).toBe('subject');
  });

  test('come with a value that works, to be written over', () => {
    const { items } = offeredAt(inShot('iso: 3200', '|'));
    const iso = items.find(({ label }) => label === 'iso');
    expect(iso).toMatchObject({ text: 'iso: 2500', snippet: 'iso: $' + '{1:2500}', choice: true });
  });

  test('a misspelt one is exchanged, and its value kept', () => {
    expect(written(inShot('aperture: f/8', 'apert|ur: f/8'), 'aperture')).toBe(TEMPLATE);
    expect(labels(inShot('aperture: f/8', 'apert|ur: f/8'))).not.toContain('tilt');
  });

  test('in braces stand on the line, with commas where they are needed', () => {
    const marked = inShot('{ duration: 20 s, count: 3, settle: 5 s }', '{ | settle: 5 s }');
    expect(written(marked, 'count')).toContain('take: { count: 3, settle: 5 s }');
  });

  test('of a mapping that is being begun are indented below it', () => {
    const marked = inShot('take: { duration: 20 s, count: 3, settle: 5 s }', 'take:\n      |');
    expect(written(marked, 'count')).toContain('take:\n      count: 3\n');
  });

  test('are where the line ends are the file’s own', () => {
    const marked = `${'title: x\r\n'}|`;
    expect(written(marked, 'subjects')).toContain('subjects:\r\n  crystal:');
  });
});

describe('the settings of a shot', () => {
  test('apertures tell what they work as, the depth there and needed, the exposure, the contrast', () => {
    expect(detail(inShot('f/8', '|'), 'f/8')).toMatch(
      /^f\/14 · DOF 1\.4 mm, needs 1 mm · .+ · contrast 0\.87$/,
    );
  });

  test('apertures are the third stops of this very lens', () => {
    const found = labels(inShot('f/8', '|'));
    expect(found).toHaveLength(22);
    expect(found).toEqual(expect.arrayContaining(['f/2.8', 'f/9', 'f/10', 'f/32']));
    expect(found).not.toContain('f/2');
    expect(found).not.toContain('f/36');
  });

  test('the ISO that balances the light is first and chosen', () => {
    const { items } = offeredAt(inShot('3200', '|'));
    expect(items[0]).toMatchObject({ label: '2500', preselect: true });
    expect(items.filter(({ preselect }) => preselect)).toHaveLength(1);
    const errors = items.flatMap((item) => Number.parseFloat(item.detail.replace('−', '')) || []);
    expect(errors.slice(0, 6)).toEqual([...errors.slice(0, 6)].sort((a, b) => a - b));
  });

  test('ISO beyond what is clean says so and stands behind', () => {
    const { items } = offeredAt(inShot('3200', '|'));
    expect(items.find(({ label }) => label === '25600')?.detail).toContain('above usable 3200');
  });

  test('shutter times tell angle, exposure and flicker, none is longer than the frame', () => {
    const marked = inShot('1/100 s', '|');
    expect(detail(marked, '1/100 s')).toMatch(/^180° · /);
    expect(labels(marked)).not.toContain('1/40 s');
    const lamp = marked.replace('modulation: none', 'modulation: 100 Hz');
    expect(detail(lamp, '1/100 s')).toContain('no flicker');
    expect(detail(lamp, '1/80 s')).toMatch(/\d+% flicker/);
    const order = labels(lamp);
    expect(order.indexOf('1/100 s')).toBeLessThan(order.indexOf('1/80 s'));
  });

  test('recording settings tell size, rate and how slow they may run; the larger come first', () => {
    const found = offeredAt(inFilm('full-50', '|')).items;
    expect(found.map(({ label }) => label)).toEqual(['full-50', 'full-25', 'small-50']);
    expect(found[0]?.detail).toContain('1920 × 1080 · 50 fps · 60 Mb/s · slows to 50%');
    expect(found[2]?.detail).toContain('below the delivery resolution');
  });

  test('rigs that reach the field come first; one that does not says so', () => {
    const marked = inFilm('rig: long-stack', 'rig: |').replace('field: 72 mm', 'field: 40 mm');
    const found = offeredAt(marked).items;
    expect(found.map(({ label }) => label)).toEqual(['doubled', 'long-stack']);
    expect(found[0]?.detail).toMatch(/^f\/\S+ · 0\.9x · DOF/);
    expect(found[1]?.detail).toMatch(/^out of reach/);
  });

  test('tilts lie past the lens and within the depth', () => {
    const found = labels(inFilm('6 deg', '|')).map((label) => Number.parseFloat(label));
    expect(Math.min(...found)).toBeCloseTo(4.6, 5);
    expect(Math.max(...found)).toBeLessThanOrEqual(10.2);
    expect(detail(inFilm('6 deg', '|'), '5 deg')).toMatch(
      /clear of the lens · DOF 7\.3 mm, needs 3\.5 mm/,
    );
  });

  test('fields are round numbers in reach', () => {
    const found = labels(inFilm('72 mm', '|')).map((label) => Number.parseFloat(label));
    expect(Math.min(...found)).toBeGreaterThanOrEqual(48);
    expect(Math.max(...found)).toBeLessThanOrEqual(106);
  });

  test('the white balance of the lights comes first, automatic last', () => {
    const found = labels(inShot('5600 K', '|'));
    expect(found[0]).toBe('5600 K');
    expect(found.at(-1)).toBe('auto');
  });

  test('a number that is typed is offered with its units', () => {
    const typed = offeredAt(inFilm('72 mm', '7|'));
    expect(typed.incomplete).toBe(true);
    expect(typed.items[0]).toMatchObject({ label: '7 cm', preselect: true });
    expect(typed.items.map(({ label }) => label)).toEqual(expect.arrayContaining(['7 mm', '7 in']));
    expect(labels(inShot('f/8', '8|'))).toContain('f/8');
  });

  test('a range that is typed is offered with its units, and an upper end before there is one', () => {
    const lens = (by: string): string =>
      planTemplate().replace('focal-length: 100 mm', `focal-length: ${by}`);
    const open = labels(lens('8 to|'));
    expect(open).toEqual(expect.arrayContaining(['8 to 10 mm', '8 to 10 in']));
    const closed = labels(lens('8 to 11|'));
    expect(closed).toEqual(expect.arrayContaining(['8 to 11 mm', '8 to 11 cm']));
    // An aperture is set, and never a range.
    expect(labels(inShot('f/8', 'f/8 to 11|'))).not.toContain('f/8 to 11');
  });

  test('where a whole value stands all others are shown too', () => {
    const { items, incomplete } = offeredAt(inShot('f/8', 'f/8|'));
    expect(incomplete).toBe(true);
    expect(new Set(items.map(({ filter }) => filter))).toEqual(new Set(['f/8']));
    expect(items.length).toBeGreaterThan(10);
  });

  test('in the blank before a comment they are those of the value’s end', () => {
    const value = 'aperture: f/8';
    const atEnd = labels(inShot(value, `${value}|   # as marked`));
    for (const blank of [' |  ', '  | ', '   |']) {
      const marked = inShot(value, `${value}${blank}# as marked`);
      expect(labels(marked)).toEqual(atEnd);
      // Nor is any of them taken away by what is to be replaced.
      const replaced = `f/8${blank.slice(0, blank.indexOf('|'))}`;
      expect(new Set(offeredAt(marked).items.map(({ filter }) => filter))).toEqual(
        new Set([replaced]),
      );
      expect(written(marked, 'f/11')).toMatch(/^ {4}aperture: f\/11 +# as marked$/m);
    }
    // One that is half written goes on.
    const [half] = offeredAt(inShot('field: 48 mm', 'field: 48 | # measured')).items;
    expect(half).toMatchObject({ label: '48 mm', filter: '48 mm' });
    expect(written(inShot('field: 48 mm', 'field: 48 |# measured'), '48 mm')).toContain(
      'field: 48 mm # measured',
    );
  });
});

describe('names', () => {
  test('in scope are offered with their data, also from files that are used', () => {
    expect(detail(inFilm('bright-panel', '|'), 'bright-panel')).toBe(
      'led, 5600 K · 0.3 stops over',
    );
    expect(labels(inFilm('subject: pane', 'subject: |'))).toEqual(['pane']);
  });

  test('a list has its brackets from the first on, and no name twice', () => {
    expect(written(inShot('light: [panel]', 'light: |'), '[panel]')).toBe(TEMPLATE);
    expect(labels(inShot('light: [panel]', 'light: [panel, |]'))).toEqual([]);
  });

  test('parts of a rig are those that make a chain there, with what it then reaches', () => {
    const tubes = '  tubes: { tube-20: { length: 20 mm } }\n  heads:';
    const kit = TEMPLATE.replace('  heads:', tubes).replace('iso: 3200', 'iso: 3200');
    const marked = kit.replace('[body-a, close-100]', '[body-a, |, close-100]');
    expect(labels(marked)).toEqual(['tube-20']);
    expect(detail(marked, 'tube-20')).toMatch(/20 mm · rig covers \S+x to \S+x/);
  });

  test('checks that the shots call for come first and say so', () => {
    const marked = TEMPLATE.replace('    - exposure-confirmed\n', '    - |\n');
    const { items } = offeredAt(marked);
    expect(items[0]).toMatchObject({ label: 'exposure-confirmed' });
    expect(items[0]?.detail).toContain('1 shot needs it');
    expect(labels(marked)).not.toContain('focus-at-full-size');
    expect(written(marked, 'exposure-confirmed')).toBe(TEMPLATE);
  });

  test('of rules: those that find something here come first', () => {
    const marked = inShot('iso: 3200', 'iso: 200\n    allow:\n      |');
    expect(labels(marked)[0]).toBe('exposure-off');
    expect(written(marked, 'exposure-off')).toContain(
      '      exposure-off: { because: it is wanted }',
    );
  });

  test('of files that are known and bring no name that is there', () => {
    const other = 'subjects:\n  salt: { kind: solid }\n';
    const marked = `shootplan: 1\nuse: [|]\n`;
    const { text, position } = atMark(marked);
    const core = coreWith(text, { 'more.shootplan.yaml': other, 'kits/own.shootplan.yaml': other });
    const { items } = core.completions(PLAN, position);
    expect(items.map(({ label }) => label)).toEqual([
      'more.shootplan.yaml',
      'kits/own.shootplan.yaml',
    ]);
    expect(items[0]?.detail).toBe('1 subjects');
    const clash = coreWith(`${text}${other}`, { 'more.shootplan.yaml': other });
    expect(clash.completions(PLAN, position).items).toEqual([]);
  });
});

describe('new entries', () => {
  test.each([
    ['shots:\n  first:', 'shots:\n  |\n  first:', 'new shot'],
    ['rigs:\n', 'rigs:\n  |\n', 'new rig'],
    ['  lenses:\n', '  lenses:\n    |\n', 'new lens'],
    ['lights:\n', 'lights:\n  |\n', 'new light'],
    ['subjects:\n', 'subjects:\n  |\n', 'new subject'],
  ])('%j: filled in, under a name that is free', (found, by, words) => {
    const marked = TEMPLATE.replace(found, by);
    const { items } = offeredAt(marked);
    expect(items).toHaveLength(1);
    const [item] = items as [Completion];
    expect(item.detail).toBe(words);
    expect(item.snippet).toMatch(/^\$\{1:[a-z0-9-]+\}:/);
    const after = coreWith(applied(atMark(marked).text, [item]));
    const found2 = after.findings(PLAN).filter(({ severity }) => severity !== 'hint');
    expect(found2.map(({ what }) => what)).toEqual([]);
  });

  test('a cut of the shot that there is', () => {
    const marked = `${TEMPLATE}edit:\n  cuts:\n    |`;
    expect(written(marked, 'opening')).toMatch(
      /opening: \{ shot: first, from: 0 s, duration: .*\}$/,
    );
  });

  test('a cut runs in real time, or as slow as its shot was recorded for', () => {
    const marked = `${TEMPLATE}edit:\n  cuts:\n    opening: { shot: first, speed: | }\n`;
    const { items } = offeredAt(marked);
    expect(items.slice(0, 3).map(({ label }) => label)).toEqual(['100 %', '50 %', '100 to 50 %']);
    expect(items[1]?.detail).toBe('slowest without repeats, by first');
  });

  test('a section that needs what is not there yet is left empty', () => {
    expect(written('|', 'shots')).toBe('shots: {}');
    expect(written('|', 'rigs')).toBe('rigs: {}');
  });
});

describe('documentation', () => {
  const docs = (marked: string, label: string): string => {
    const { text, position } = atMark(marked);
    const core = coreWith(text);
    const item = core.completions(PLAN, position).items.find((each) => each.label === label);
    return core.explain(PLAN, item!.about) ?? '';
  };

  test('of a key is the schema’s own', () => {
    expect(docs(inShot('iso: 3200', '|'), 'tilt')).toContain('away from facing the lens');
  });

  test('of a value is what the shot comes to with it, and what would be found', () => {
    const told = docs(inShot('f/8', '|'), 'f/2.8');
    expect(told).toContain('**f/2.8**');
    expect(told).toContain('With it:');
    expect(told).toMatch(/- warning: Depth of field is .*; crystal needs 1 mm/);
  });

  test('of a name is its data', () => {
    expect(docs(inShot('rig: near', 'rig: |'), 'near')).toContain('**near** · rig');
  });

  test('of a rule is when it finds something', () => {
    expect(docs(inShot('iso: 3200', 'allow:\n      |'), 'motion-blur')).toContain(
      '**motion-blur**',
    );
  });
});

describe('values that follow from what stands elsewhere', () => {
  test('an entry is named by its number', () => {
    const tubes = 'shootplan: 1\nkit:\n  tubes:\n    tube-36: { length: | }\n';
    expect(offeredAt(tubes).items[0]).toMatchObject({ label: '36 mm', detail: 'by its name' });
  });

  test('a recorded area is as wide as the sensor, in the shape of the frame', () => {
    const body = `shootplan: 1
kit:
  bodies:
    small:
      sensor: 23.5 x 15.6 mm
      recording-modes:
        fine: { resolution: 1920 x 1080, rate: 25 fps, area: | }
        whole: { resolution: 3000 x 2000, rate: 25 fps }
`;
    expect(labels(body)[0]).toBe('23.5 x 13.22 mm');
    // Taller than the sensor: all of its height.
    expect(labels(body.replace('1920 x 1080', '2000 x 2000'))[0]).toBe('15.6 x 15.6 mm');
  });

  test('what is delivered is as long as the edit', () => {
    const garden = sample('salt-garden.shootplan.yaml').replace('duration: 24 s', 'duration: |');
    expect(offeredAt(garden).items[0]).toMatchObject({
      label: '24 s',
      detail: 'as long as the edit',
    });
  });
});
