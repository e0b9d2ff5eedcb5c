/** Motors of the kit: named, found, outlined and told about like any other kind of entry. */
import { expect, it } from 'vitest';
import { coreWith, PLAN } from '../support/plans.ts';

const TEXT = `shootplan: 1
use: [kit.shootplan.yaml]
kit:
  motors:
    turntable: { turn: 3 deg/s, payload: 2 kg, about: borrowed }
`;
const KIT = `shootplan: 1
kit:
  motors:
    turntable: { turn: 6 deg/s }
    slider: { slide: 20 mm/s, payload: 700 g }
`;

const core = coreWith(TEXT, { 'kit.shootplan.yaml': KIT });
const NAME = { line: 4, character: 6 };

it('are told apart across files', () => {
  const found = core.findings(PLAN).map(({ rule, what }) => [rule, what]);
  expect(found).toEqual([['duplicate-name', expect.stringContaining('turntable')]]);
});

it('are outlined by what tells them apart', () => {
  const [, , kit] = core.symbols(PLAN);
  const [motors] = kit!.children;
  expect(motors!.children[0]).toMatchObject({ name: 'turntable', detail: '3 deg/s, 2 kg' });
});

it('are told about under the caret', () => {
  const { markdown } = core.hover(PLAN, NAME)!;
  expect(markdown).toMatch(/speed of turning \| 3°\/s/);
  expect(markdown).toContain('payload | 2 kg');
  expect(markdown).toContain('Not given: `slide`, `mass`.');
});

it('are found by name, renamed, and offered', () => {
  expect(core.findEntries('slid')).toMatchObject([{ name: 'slider', noun: 'motor' }]);
  expect(core.rename(PLAN, NAME, 'slider')).toMatchObject({ ok: false });
  expect(core.rename(PLAN, NAME, 'turner')).toMatchObject({
    ok: true,
    edits: [{ text: 'turner' }],
  });
  const written = coreWith('shootplan: 1\nkit:\n  mo');
  const { items } = written.completions(PLAN, { line: 2, character: 4 });
  expect(items.find(({ label }) => label === 'motors')?.text).toContain('turntable');
});
