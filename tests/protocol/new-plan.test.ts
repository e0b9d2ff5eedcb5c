/** A new plan by the protocol: from names, beside whatever is open. */
import { expect, it } from 'vitest';
import { BODIES, LENSES, SUBJECT_KINDS } from '../../shared/assist/new-plan/kit.ts';
import { newPlan } from '../../shared/assist/new-plan/new-plan.ts';
import { createCore } from '../../shared/core/core.ts';
import { connect, PLAN } from './support/client.ts';

it('is made of the pieces that are named, and of no others', async () => {
  const client = await connect({ createCore });
  client.open(PLAN, 'shootplan: 1\n');
  const ask = (params: unknown) =>
    client.connection.sendRequest<string | null>('lamella/newPlan', params);
  const [body, lens, subject] = [BODIES[1]!, LENSES[2]!, SUBJECT_KINDS[1]!];
  const names = { body: body.name, lens: lens.name, subject: subject.name };
  expect(await ask(names)).toBe(newPlan(createCore, { body, lens, subject }));
  for (const other of [{ ...names, lens: 'nobody' }, { ...names, body: 7 }, {}])
    expect(await ask(other)).toBeNull();
  const sheet = { 'focal-length': '90 mm', magnification: '1:1' };
  const text = await ask({ ...names, lens: sheet, light: { lux: '900 lx @ 1 m' } });
  expect(text).toContain('focal-length: 90 mm');
  expect(text).toContain('illuminance-distance: 1 m');
  for (const other of [{ lens: { 'focal-length': 'long' } }, { light: { lux: 7 } }, { light: [] }])
    expect(await ask({ ...names, ...other })).toBeNull();
  expect(client.core.text(PLAN)).toBe('shootplan: 1\n');
});

it('answers whether what was typed can be read', async () => {
  const client = await connect({ createCore });
  const canRead = (sheet: string, key: string, text: unknown) =>
    client.connection.sendRequest<boolean>('lamella/sheetAnswer', { sheet, key, text });
  expect(await canRead('lens', 'filter-thread', 'M67')).toBe(true);
  expect(await canRead('lens', 'filter-thread', ' ')).toBe(true);
  for (const [sheet, key, text] of [
    ['lens', 'filter-thread', 'wide'],
    ['lens', 'filter-thread', 67],
    ['lens', 'sensor', '36 x 24 mm'],
    ['constructor', 'sensor', '36 x 24 mm'],
  ] as const)
    expect(await canRead(sheet, key, text)).toBe(false);
});
