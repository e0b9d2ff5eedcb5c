/** What somebody reads who points at a key, a value or a name. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { keyHover } from '../../shared/assist/hover/key.ts';
import { laidOut } from '../../shared/assist/hover/layout.ts';
import { figureLine, table } from '../../shared/assist/hover/markdown.ts';
import { createCore } from '../../shared/core/core.ts';
import { known } from '../../shared/figures/figure.ts';
import type { DefName } from '../../shared/plan/generated/names.ts';
import { SHAPES } from '../../shared/plan/generated/shapes.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { each } from '../support/each.ts';
import { coreWith, PLAN, ROOT } from '../support/plans.ts';
import { BENCH, hoverIn, hoverWords, rowsOf } from './support/bench.ts';

describe('on a key', () => {
  it('says what it is for, what it takes, where it goes, and an example', () => {
    const words = hoverWords(BENCH, 'focal-length:');
    expect(words).toContain('**focal-length** · of a lens');
    expect(words).toContain('Focal length at infinity, as marked.');
    expect(words).toContain('Value: length, in mm');
    expect(words).toContain('Used for magnification range, ');
    expect(words).toContain('For example `200 mm`');
  });

  it('names the groups that a reference comes from', () => {
    const words = hoverWords(BENCH, 'parts: [body-a, long-200]');
    expect(words).toContain('`bodies`, `converters`, `tubes`, `lenses` or `close-up-lenses`');
  });

  it.each(['kit:', 'bodies:', 'shots:', 'deliver:'])('answers on the section %s', (section) => {
    expect(hoverWords(BENCH, section)).toContain(
      SHAPES.plan.keys[section.slice(0, -1)]?.title ?? '',
    );
    expect(hoverWords(BENCH, section)).toContain(`**${section.slice(0, -1)}**`);
  });

  const keys = Object.entries(SHAPES).flatMap(([of, { keys: shapes }]) =>
    Object.entries(shapes).map(([key, keyShape]) => ({ of: of as DefName, key, keyShape })),
  );
  it('has words for every key', () => {
    each(
      keys,
      ({ of, key, keyShape }) => {
        const words = keyHover({ of, key, keyShape, shape: keyShape.shape });
        expect(words).toContain(keyShape.description);
        for (const example of keyShape.examples) expect(words).toContain(`\`${example}\``);
        expect(words).not.toMatch(/undefined|, in f\/\.|\n\n\n/);
      },
      ({ of, key }) => `${key} of ${of}`,
    );
  });
});

describe('on a shot’s aperture', () => {
  // Common practice: behind a 2x converter f/16 works as f/32, two stops less light.
  it('says what it works as and which part takes the light', () => {
    const rows = rowsOf(hoverWords(BENCH, 'f/16\n    shutter: 1/50'));
    expect(rows).toMatchObject({
      marked: 'f/16',
      effective: 'f/32 at the sensor',
      'light lost': '2 stops; twice 2 stops',
      'glass and filters': '0.4 stops more',
      'body-a displays': 'f/32',
      'on the lens': 'f/4 to 32',
    });
  });

  it('says what a body shows that knows the marked number only', () => {
    const text = BENCH.replace('displayed-aperture: effective', 'displayed-aperture: marked');
    expect(rowsOf(hoverWords(text, 'f/16\n    shutter: 1/50'))['body-a displays']).toBe('f/16');
  });

  it('puts depth there beside depth needed, and the formula with its numbers and source', () => {
    const words = hoverWords(BENCH, 'f/16\n    shutter: 1/60');
    expect(rowsOf(words)['depth of field needed']).toMatch(/^\S+ mm$/);
    expect(words).toMatch(/N_eff = N·\(1 \+ m1\/p\)·M_c = 16·\(1 \+ 0\.25\/0\.8\)·2;.*Hecht/);
    // 16·(1 + 0.25/0.8)·2 by hand.
    expect(rowsOf(words).effective).toBe('f/42 (33 to 42) at the sensor');
  });

  it('says where the pupil ratio was taken as 1, and nothing where it is known', () => {
    const assumed = 'the pupil ratio of long-200, is not known and taken as 1';
    expect(hoverWords(BENCH, 'f/16\n    shutter: 1/60')).not.toContain(assumed);
    const without = BENCH.replace('      pupil-ratio: 0.8\n', '');
    expect(hoverWords(without, 'f/16\n    shutter: 1/60')).toContain(assumed);
  });

  it('says whence the circle of confusion is', () => {
    // 36 x 20.25 mm: diagonal 41.3 mm, / 1500 is 27.5 µm; one pixel of 1280 is 28.1 µm.
    const at = 'f/16\n    shutter: 1/60';
    expect(hoverWords(BENCH, at)).toContain('c 27.5 µm, the recorded diagonal / 1500');
    const small = BENCH.replace(
      'resolution: 1920 x 1080, rate: 25',
      'resolution: 1280 x 720, rate: 25',
    );
    expect(hoverWords(small, at)).toContain('c 28.1 µm, one delivered pixel');
    const given = BENCH.replace('mains:', 'circle-of-confusion: 0.02 mm\nmains:');
    expect(hoverWords(given, at)).toContain('c 20 µm as the plan gives it');
  });
});

describe('on the other settings of a shot', () => {
  it('tells magnification, reach and distances on the field', () => {
    const rows = rowsOf(hoverWords(BENCH, '72 mm'));
    // 36 mm recorded over 72 mm; twice 0.3x at the closest.
    expect(rows).toMatchObject({
      'magnification m': '0.5x',
      field: '72 × 40.5 mm',
      'magnification range of the rig': 'infinity to 0.6x',
      '· as field width': 'endless to 60 mm',
      'lens and parts behind it, m1': '0.25x, converter apart',
    });
    // 1:4 is a quarter of life size, by the definition of the ratio.
    expect(rows['focus ring']).toMatch(
      /^[\d.]+x \(about 1:\d+\), marked about [\d.]+ m+; closest focus 0\.3x$/,
    );
    expect(rows['working distance']).toMatch(/^\d+ mm$/);
  });

  it('tells what was asked for and what there is where the field is out of reach', () => {
    const words = hoverWords(BENCH, '72 mm', '‸24 mm');
    expect(rowsOf(words)).toMatchObject({
      planned: '1.5x',
      'magnification range of the rig': 'infinity to 0.6x',
    });
    expect(words).toContain("The rig can't frame the field of the shot.");
  });

  it('tells the error and the ISO needed, and with auto the ISO alone', () => {
    const set = rowsOf(hoverWords(BENCH, '800'));
    expect(set.exposure).toMatch(/^\d.* stops under \(/);
    const auto = rowsOf(hoverWords(BENCH, 'auto'));
    expect(auto.exposure).toBeUndefined();
    expect(auto).toMatchObject({ set: 'by the camera (auto)', lamp: 'from its illuminance' });
    expect(auto['body-a']).toBe('ISO 100 to 25600, usable to 3200');
  });

  it('finds the exposure right at the ISO that it says is needed', () => {
    const [needed] = rowsOf(hoverWords(BENCH, '800'))['ISO needed']!.split(' ');
    expect(rowsOf(hoverWords(BENCH, '800', `‸${needed}`)).exposure).toMatch(/^correct\b/);
  });

  it('tells the shutter’s angle and what flickers', () => {
    expect(rowsOf(hoverWords(BENCH, '1/50 s'))).toMatchObject({
      'shutter angle': '360°',
      'flicker left': '0%',
      lamp: 'pulses at 100 Hz',
      cycles: '2',
    });
    const rows = rowsOf(hoverWords(BENCH, '1/60 s'));
    expect(rows['flicker left']).toBe('17%');
    expect(rows.bands).toBe('stand still');
  });

  it('tells what the tilt asks for', () => {
    // 40.5 mm of the frame's height lean over 4°: 40.5·tan 4° is 2.83 mm; the relief adds 2 mm.
    expect(rowsOf(hoverWords(BENCH, '4 deg'))).toMatchObject({
      tilt: '4° about the level axis',
      'depth needed by the tilt': '2.8 mm',
      'depth of field needed': '4.8 mm',
    });
  });

  it('tells the recording, the pixel that counts, and how slow it may run', () => {
    const rows = rowsOf(
      hoverWords(
        BENCH,
        'record: full\n    light: [lamp]\n  near',
        'record: ‸full\n    light: [lamp]\n  near',
      ),
    );
    expect(rows).toMatchObject({
      resolution: '1920 × 1080',
      'frame rate': '50 fps',
      'effective pixel': '18.8 µm',
      'slowest without repeats': '50% at 25 fps delivered',
    });
  });

  it('tells what a move adds', () => {
    const move = 'move: { kind: push-in, speed: ‸2 mm/s, duration: 3 s }\n    tilt: 4 deg';
    expect(rowsOf(hoverWords(BENCH, 'tilt: 4 deg', move))['travel along the axis']).toBe('6 mm');
  });

  it('puts the white balance beside the colour of the lights', () => {
    const text = BENCH.replace('kind: tungsten', 'kind: tungsten\n    colour-temperature: 3200 K');
    const rows = rowsOf(hoverWords(text, 'tilt: 4 deg', 'white-balance: ‸5600 K'));
    expect(rows).toMatchObject({ 'white balance': '5600 K', lamp: '3200 K' });
  });
});

describe('every hover', () => {
  it('shows results first, at most six rows, and formulas last', () => {
    const core = coreWith(EXAMPLE_PLAN);
    const seen = new Set<string>();
    EXAMPLE_PLAN.split('\n').forEach((line, index) => {
      for (const match of line.matchAll(/\S+/g)) {
        const hover = core.hover(PLAN, { line: index, character: match.index });
        if (hover) seen.add(hover.markdown);
      }
    });
    expect(seen.size).toBeGreaterThan(100);
    each([...seen], (words) => {
      const blocks = words.split('\n\n');
      const rows = words.split('\n').filter((line) => /^\| /.test(line));
      expect(rows.length).toBeLessThanOrEqual(6);
      // No table but the one that compares rigs has a result in bold: results stand over it.
      expect(rows.filter((row) => row.startsWith('| **'))).toEqual([]);
      const formulas = blocks.map((block) => block.startsWith('Formula: '));
      if (formulas.includes(true))
        expect(formulas.lastIndexOf(false)).toBeLessThan(formulas.indexOf(true));
      expect(words).not.toMatch(/\p{Cc}(?<!\n)/u);
    });
  });

  it('has the figures on the key as on the value', () => {
    const onValue = hoverWords(BENCH, 'tilt: 4 deg', 'tilt: ‸4 deg').split('\n\n');
    const onKey = hoverWords(BENCH, 'tilt: 4 deg').split('\n\n');
    expect(onKey.slice(0, 2)).toEqual(onValue.slice(0, 2));
    expect(onKey.at(-1)).toBe(onValue.at(-1));
    expect(onKey).toContain('Angle of the subject away from facing the lens.');
  });

  it('loses no row: those beyond the sixth are words', () => {
    const rows = Array.from({ length: 8 }, (_, at) => `| label ${at} | ${at} mm |`);
    const table = [rows[0], '|:--|:--|', ...rows.slice(1)].join('\n');
    const [shown, folded, ...rest] = laidOut(`${table}\n\nWhy.`).split('\n\n');
    expect(shown!.split('\n')).toHaveLength(7);
    expect(folded).toBe('label 6: 6 mm · label 7: 7 mm');
    expect(rest).toEqual(['Why.']);
  });
});

describe('what is not known', () => {
  it('names the key that is missing and the entry it belongs to', () => {
    const words = hoverWords(BENCH.replace('      length: 165 mm\n', ''), '72 mm');
    expect(words).toContain('Unknown: working distance. Needs `length` of long-200.');
    expect(rowsOf(words)['magnification m']).toBe('0.5x');
  });

  it('never takes an LED for steady', () => {
    const words = hoverWords(BENCH.replace('kind: tungsten', 'kind: led'), '1/60 s');
    // 1/(2·f·t) of a lamp that pulses at 100 Hz, at 1/60 s: 60/200.
    expect(rowsOf(words)['flicker left']).toBe('30% at most (0 to 30)');
    expect(words).toContain('Assumed of `lamp`: its light swings at twice the mains frequency');
  });

  it('points at the finding where an input is broken', () => {
    const words = hoverWords(
      BENCH.replace('focal-length: 200 mm', 'focal-length: 200 nn'),
      '72 mm',
    );
    expect(words).toContain('It depends on an entry that has a finding of its own.');
    expect(words).not.toContain('focal');
  });

  it('says of a rig without a converter’s length what it waits for', () => {
    const text = BENCH.replace('factor: 2x, length: 53 mm', 'factor: 2x').replace(
      'parts: [body-a, twice',
      'parts: [body-a, tube, twice',
    );
    const withTube = text.replace(
      '  converters:',
      '  tubes:\n    tube: { length: 20 mm }\n  converters:',
    );
    expect(hoverWords(withTube, 'doubled: {')).toContain(
      'Unknown: magnification range. Needs `length` of twice.',
    );
  });

  it('calls measured what was measured', () => {
    const measured = { ...known(60), measured: true } as const;
    expect(table([figureLine('works as', measured, (n) => `f/${n}`)])).toContain('f/60 (measured)');
  });
});

describe('on a name', () => {
  it('tells the data of its entry, the same where it is defined and where it is named', () => {
    const defined = hoverWords(BENCH, 'long-200:');
    expect(rowsOf(defined)).toMatchObject({
      'long-200': 'lens',
      'focal length': '200 mm',
      'aperture range': 'f/4 to 32',
      'minimum focus': 'from-sensor 850 mm, magnification 0.3x',
    });
    expect(defined).toContain(
      'Not given: `t-stop`, `extends`, `front-diameter`, `filter-thread`, `has`, `mass`, `balance`.',
    );
    expect(hoverWords(BENCH, '[body-a, long-200]', '[body-a, ‸long-200]')).toBe(defined);
  });

  it('tells how far a rig reaches', () => {
    expect(rowsOf(hoverWords(BENCH, 'plain: {'))['magnification range']).toBe('infinity to 0.3x');
    expect(rowsOf(hoverWords(BENCH, 'doubled: {'))['magnification range']).toBe('infinity to 0.6x');
  });

  it('sums a shot up', () => {
    const rows = rowsOf(hoverWords(BENCH, 'near:'));
    expect(rows).toMatchObject({ near: 'shot', rig: 'doubled', field: '72 × 40.5 mm' });
    expect(rows.aperture).toBe('f/16, f/42 effective (33 to 42)');
  });

  it('tells a recording setting where its body defines it', () => {
    expect(rowsOf(hoverWords(BENCH, 'full: {'))).toMatchObject({
      full: 'recording mode',
      'frame rate': '50 fps',
    });
  });

  it('says which file an entry comes from', () => {
    const kit = 'shootplan: 1\nkit:\n  tubes:\n    tube-20: { length: 20 mm }\n';
    const text = BENCH.replace('title: Frost', 'use: [our-kit.shootplan.yaml]').replace(
      '[body-a, long-200]',
      '[body-a, tube-20, long-200]',
    );
    const core = coreWith(text, { 'our-kit.shootplan.yaml': kit });
    const line = text.split('\n').findIndex((one) => one.includes('tube-20'));
    const character = text.split('\n')[line]!.indexOf('tube-20');
    const words = core.hover(PLAN, { line, character })?.markdown ?? '';
    expect(rowsOf(words).length).toBe('20 mm');
    expect(words).toContain('Defined in our-kit.shootplan.yaml.');
    expect(core.hover(PLAN, { line: 1, character: 8 })?.markdown).toContain('brings in its kit');
  });

  it('says of a used file that it is not there', () => {
    const words = hoverWords(BENCH, 'title: Frost', 'use: [‸gone.shootplan.yaml]');
    expect(words).toBe('**gone.shootplan.yaml** was not found.');
  });

  it('explains a rule where it is accepted or set', () => {
    const accepted = 'tilt: 4 deg\n    allow: { ‸depth-short: { because: only the rim } }';
    expect(hoverWords(BENCH, 'tilt: 4 deg', accepted)).toMatch(
      /^\*\*depth-short\*\* · warning\n\nReported when /,
    );
    const set = 'severity: { depth-short: ‸error }\nmains:';
    expect(hoverWords(BENCH, 'mains:', set)).toMatch(
      /^\*\*depth-short\*\* · warning, here `error`/,
    );
  });

  it('says nothing of a name that nothing has', () => {
    expect(hoverIn(BENCH, 'rig: doubled\n    ring', 'rig: ‸dubled\n    ring')).toBeNull();
  });
});

describe('what a plan says', () => {
  it('is data, never markup', () => {
    const about = 'about: "[a](command:x) <img src=x> | `b` *c* \\u202e"';
    const words = hoverWords(
      BENCH.replace('focal-length: 200', `${about}\n      focal-length: 200`),
      'long-200:',
    );
    expect(words).toContain('\\[a\\](command:x) \\<img src=x> \\| \\`b\\` \\*c\\*');
    expect(words).not.toContain('\u202e');
  });

  it('is data in what figures wait for, too', () => {
    const text = BENCH.replaceAll('long-200', '"a|b"').replace('      length: 165 mm\n', '');
    const words = hoverWords(text, '72 mm');
    expect(words).not.toContain('a|b');
  });
});

describe('where', () => {
  it('covers the key or the value and nothing else', () => {
    const hover = hoverIn(BENCH, '72 mm', '72‸ mm');
    const line = BENCH.split('\n').indexOf('    field: 72 mm');
    expect(hover?.range).toEqual({
      start: { line, character: 11 },
      end: { line, character: 16 },
    });
  });

  it.each([
    ['a blank line', '\nrigs:', '‸\nrigs:'],
    ['a comment', 'title: Frost', 'title: Frost   # a ‸comment'],
    ['an unknown key', 'title: Frost', 'titel‸: Frost'],
    ['what stands below an unknown key', 'title: Frost', 'titel: { focal: ‸200 mm }'],
    ['a text', 'title: Frost', 'title: Fr‸ost'],
  ])('says nothing on %s', (_, from, marked) => {
    expect(hoverIn(BENCH, from, marked)).toBeNull();
  });

  it('works in a section that stands on one line', () => {
    const text = BENCH.slice(0, BENCH.indexOf('shots:'));
    const shots = 'shots: { one: { rig: plain, ring: infinity, aperture: ‸f/8, record: full } }\n';
    expect(rowsOf(hoverWords(`${text}#`, '#', shots)).effective).toBe('f/8 at the sensor');
  });

  it('tells apart two entries of the same name', () => {
    const again = '  twice: { factor: 1.4x, length: 30 mm }\nrigs:';
    expect(
      hoverWords(BENCH.replace('rigs:', `  ${again}`), 'factor: 1.4x', 'factor: ‸1.4x'),
    ).toContain('1.4x');
  });

  it('outside of the text answers nothing or the nearest', () => {
    const core = coreWith(BENCH);
    expect(core.hover(PLAN, { line: 9999, character: 9 })).toBeNull();
    expect(core.hover('file:///w/none.shootplan.yaml', { line: 0, character: 0 })).toBeNull();
    expect(coreWith('').hover(PLAN, { line: 0, character: 0 })).toBeNull();
  });
});

it('shows lengths in inches where that is preferred', () => {
  const core = createCore({ rootOf: () => ROOT, lengths: 'inches' });
  core.give(PLAN, BENCH);
  const line = BENCH.split('\n').findIndex((one) => one.includes('72 mm'));
  const words = core.hover(PLAN, { line, character: 12 })?.markdown ?? '';
  // 72 mm / 25.4.
  expect(rowsOf(words).field).toBe('2.8 × 1.6 in');
  expect(Object.values(rowsOf(words)).join()).not.toContain(' mm');
  // Common practice: focal lengths are in millimetres everywhere.
  expect(words).toMatch(/Focal length at this setting \d+ mm/);
});

const SAMPLES = new URL('../../samples/', import.meta.url);

describe('every place of a whole plan', () => {
  const samples = readdirSync(SAMPLES).filter((name) => name.endsWith('.yaml'));
  it('of every sample answers, and says no number that is none', () => {
    each(samples, (name) => {
      const text = readFileSync(new URL(name, SAMPLES), 'utf8');
      const core = coreWith(text);
      const seen = new Set<string>();
      text.split('\n').forEach((line, index) => {
        for (let character = 0; character <= line.length; character++) {
          const hover = core.hover(PLAN, { line: index, character });
          if (!hover) continue;
          expect(hover.markdown).not.toMatch(/NaN|undefined|Infinity|\[object/);
          expect(hover.range.start.line).toBe(index);
          seen.add(JSON.stringify(hover.range.start));
          // Asked where it begins and where it ends; between them it is the same.
          character = Math.max(character, hover.range.end.character - 1);
        }
      });
      expect(seen.size).toBeGreaterThan(text.split('\n').length);
    });
  });
});
