/** The language that a client brings along: findings, hovers and fixes in its words. */
import { describe, expect, it } from 'vitest';
import type { Hover } from 'vscode-languageserver';
import { createCore } from '../../shared/core/core.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed } from '../support/plans.ts';
import { connect, PLAN, PULLS, until } from './support/client.ts';

const SHALLOW = changed(EXAMPLE_PLAN, { 'shots/frost/aperture': 'f/4', 'shots/frost/iso': '320' });
const DEPTH = 'Depth of field is {0}; {1} needs {2}.';
const line = SHALLOW.split('\n').indexOf('    aperture: f/4');

async function told(initializationOptions: unknown, locale = 'de') {
  const client = await connect({ createCore, capabilities: PULLS, initializationOptions, locale });
  client.open(PLAN, SHALLOW);
  const found = (await client.pull(PLAN)).map(({ message }) => message);
  const hover = await client.connection.sendRequest<Hover>('textDocument/hover', {
    textDocument: { uri: PLAN },
    position: { line, character: 5 },
  });
  return { client, found: found.join('\n'), hover: JSON.stringify(hover.contents) };
}

describe('a translation that the client brings', () => {
  it('is what findings and hovers are told in', async () => {
    const { found, hover } = await told({
      translation: {
        [DEPTH]: 'Für {1} sind {2} Tiefe nötig, da sind {0}.',
        'Marked f-number, whatever the body displays.': 'Die Blende am Ring.',
      },
    });
    expect(found).toMatch(/^Für frost-plate sind 1\.5 mm Tiefe nötig, da sind [\d.]+ mm\./m);
    expect(found).toMatch(/Effective aperture f\//);
    expect(hover).toContain('Die Blende am Ring.');
  });

  it('counts as its language does', async () => {
    const forms = { one: '{0} Schritt', other: '{0} Schritte' };
    const { found } = await told({ translation: { '{0} stops': forms } });
    expect(found).toMatch(/[\d.]+ Schritte/);
    // 0 and 1 are one in French, as CLDR has it.
    const french = await told(
      { translation: { '{0} stops': { one: '{0} cran', other: '{0} crans' } } },
      'fr',
    );
    expect(french.found).toMatch(/1\.\d crans?/);
  });

  it('is refused where it would lose a value, and that is logged', async () => {
    const { client, found } = await told({ translation: { [DEPTH]: 'Zu wenig Tiefe: {0}.' } });
    expect(found).toMatch(/^Depth of field is [\d.]+ mm; frost-plate needs 1\.5 mm\./m);
    await until(() => client.logged.length > 0);
    expect(client.logged.join('\n')).toContain(`The translation of “${DEPTH}” lacks {1}, {2}.`);
  });

  it.each([
    [{ translation: { [DEPTH]: 'Tiefe {0}, {1} braucht {2}.' } }, 'de'],
    [undefined, 'en'],
  ])('is what the live sheet says it is written in: %j, %s', async (options, language) => {
    const { client } = await told(options);
    const sheet = () =>
      client.connection.sendRequest('lamella/sheet', { textDocument: { uri: PLAN } });
    expect(await sheet()).toMatchObject({ language });
  });

  it.each([undefined, null, {}, { translation: null }])('is left out: %j', async (options) => {
    const { found } = await told(options);
    expect(found).toMatch(/^Depth of field is [\d.]+ mm; frost-plate needs 1\.5 mm\./m);
  });
});
