/** Hovers on what a shot decides about its bench: kit, movement, load, measurements, apertures. */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed } from '../support/plans.ts';
import { hoverWords } from './support/bench.ts';

const withChange = (change: Readonly<Record<string, string | null>>) =>
  changed(EXAMPLE_PLAN, change);

describe('the field', () => {
  it('out of reach shows the rigs of the kit that reach it', () => {
    const words = hoverWords(withChange({ 'shots/frost/field': '22 mm' }), '22 mm');
    expect(words).toContain(
      '| from the sensor | effective | working distance | depth of field | light lost |',
    );
    // Next to what is wrong: what stands further down is scrolled to by nobody.
    const [verdict, result, rigs] = words.split('\n\n');
    expect(verdict).toBe('**Fails: field in reach**');
    expect(result).toMatch(/^Planned: \*\*[0-9.]+x\*\*/);
    expect(rigs).toMatch(/^\| from the sensor \|/);
    expect(words).toMatch(/\| body-a, twice, macro-100 \| f\/[0-9.]+ \| [0-9.]+ mm \|/);
  });

  it('that nothing reaches says so', () => {
    const words = hoverWords(withChange({ 'shots/frost/field': '2 mm' }), '2 mm\n    aperture');
    expect(words).toContain('No rig from the kit reaches it with this body and lens.');
  });

  it('that was measured is said to be', () => {
    const text = withChange({ 'shots/frost/measured': '{ field: 58 mm }' });
    const words = hoverWords(text, '60 mm\n    aperture');
    expect(words).toContain('**58 × 32.6 mm** (measured)');
    expect(words).toContain('The magnification was measured');
  });
});

describe('the aperture', () => {
  it('shows contrast in focus and at the ends over the full stops, its own in bold', () => {
    const words = hoverWords(EXAMPLE_PLAN, 'f/8\n    shutter: 1/50 s\n    iso: 1250');
    expect(words).toContain(
      'Contrast of fine detail, in focus and at the ends of the depth needed: ',
    );
    expect(words).toMatch(/ · \*\*f\/8\*\* [0-9]+%, [0-9.]+% · /);
    expect(words).toMatch(/ · f\/22 [0-9]+%, [0-9.]+% · /);
  });
});

describe('what moves', () => {
  it('by its flow shows the smear', () => {
    const words = hoverWords(withChange({ 'shots/skin/subject-speed': '2 mm/s' }), '2 mm/s');
    // 2 mm/s · 0.75 · 0.02 s over pixels of 18.75 µm.
    expect(words).toContain('**1.6 pixels** per frame');
  });
});

describe('the rig of a shot', () => {
  it('shows what it weighs and where it balances', () => {
    const words = hoverWords(EXAMPLE_PLAN, 'rig: bench', 'rig: ‸bench');
    expect(words).toContain('**1.5 kg**');
    expect(words).toContain('ahead of the sensor plane');
  });
});

describe('kit with a bench', () => {
  it('says what is known of it now, from what', () => {
    const light = withChange({
      'lights/panel/bench':
        '[{ distance: 500 mm, illuminance: 3500 lx }, { distance: 1 m, illuminance: 925 lx }]',
    });
    expect(hoverWords(light, 'light: [panel]', 'light: [‸panel]')).toMatch(
      /By its data and 2 rows of its bench: 52[0-9]{2} lx \(\d+ to \d+\) at 400 mm; a face 300 mm \(29\d to 30\d\) wide\./,
    );
    const body = withChange({
      'kit/bodies/body-a/bench': '[{ set: 400, found: 0.3 stops under }]',
    });
    expect(hoverWords(body, 'parts: [body-a, macro-100]', 'parts: [‸body-a, macro-100]')).toMatch(
      /By its data and 1 row of its bench: exposure 0\.3 stops under \(0\.09 to 0\.5\)\./,
    );
    const twice = withChange({
      'kit/converters/twice/bench': '[{ field: 38 mm, field-without: 74.5 mm }]',
    });
    expect(
      hoverWords(twice, 'parts: [body-a, twice, tube-20', 'parts: [body-a, ‸twice, tube-20'),
    ).toMatch(/By its data and 1 row of its bench: factor 1\.9[67]x \(1\.9\d to 1\.9\dx?\)\./);
  });
});
