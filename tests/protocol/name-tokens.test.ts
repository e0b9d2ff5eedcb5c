/** Names as semantic tokens: alike where they are defined and used, told apart by kind. */
import { describe, expect, it } from 'vitest';
import type { SemanticTokens } from 'vscode-languageserver';
import { createCore } from '../../shared/core/core.ts';
import { ENTRIES } from '../../shared/plan/generated/entries.ts';
import { at, connect, KIT, PLAN, quiet, until } from './support/client.ts';

const TEXT = `shootplan: 1
kit:
  bodies:
    body-a:
      recording-modes:
        full-25: { rate: 25 fps }
  lenses: { long: { focal-length: 100 mm } }
rigs:
  plain: { parts: [body-a, long, none] }
shots:
  drift:
    rig: plain
    record: full-25
edit:
  cuts:
    opening: { shot: drift }
clips:
  drift:
    - file: drift.mp4
`;

async function named(method: string, extra = {}) {
  const client = await connect({ createCore });
  client.open(PLAN, TEXT);
  const answer = await client.connection.sendRequest<SemanticTokens>(method, {
    textDocument: { uri: PLAN },
    ...extra,
  });
  const { legend } = client.result.capabilities.semanticTokensProvider!;
  const lines = TEXT.split('\n');
  const found: string[] = [];
  let [line, from] = [0, 0];
  for (let index = 0; index < answer.data.length; index += 5) {
    const [down, right, length, type, bits] = answer.data.slice(index, index + 5) as number[];
    from = down === 0 ? from + right! : right!;
    line += down!;
    const modifiers = legend.tokenModifiers.filter((_, bit) => bits! & (1 << bit));
    expect(legend.tokenTypes[type!]).toBe('struct');
    found.push(`${line}: ${lines[line]!.slice(from, from + length!)} ${modifiers.join('+')}`);
  }
  return { found, legend };
}

describe('names', () => {
  it('are tokens of their kind, and unknown ones are none', async () => {
    const { found, legend } = await named('textDocument/semanticTokens/full');
    expect(found).toEqual([
      '3: body-a declaration+body',
      '5: full-25 declaration+recording',
      '6: long declaration+lens',
      '8: plain declaration+rig',
      '8: body-a body',
      '8: long lens',
      '10: drift declaration+shot',
      '11: plain rig',
      '12: full-25 recording',
      '15: opening declaration+cut',
      '15: drift shot',
      '17: drift shot',
    ]);
    const kinds = new Set(Object.values(ENTRIES).map(({ def }) => def));
    expect(new Set(legend.tokenModifiers)).toEqual(new Set(['declaration', ...kinds]));
    // A modifier is a bit of a number of 32.
    expect(legend.tokenModifiers.length).toBeLessThan(32);
  });

  it('are those of a range where one is asked for', async () => {
    const { found } = await named('textDocument/semanticTokens/range', { range: at(9, 0, 0, 12) });
    expect(found).toEqual(['10: drift declaration+shot', '11: plain rig', '12: full-25 recording']);
  });

  it('are asked for anew when a used file brings another name, and only then', async () => {
    const client = await connect({
      createCore,
      capabilities: { workspace: { semanticTokens: { refreshSupport: true } } },
    });
    const plan = TEXT.replace('kit:', 'use: [kit.shootplan.yaml]\nkit:');
    const kit = 'shootplan: 1\nkit:\n  tubes:\n    other: { length: 20 mm }\n';
    client.open(KIT, kit);
    client.open(PLAN, plan);
    const count = async () => {
      const { data } = await client.connection.sendRequest<SemanticTokens>(
        'textDocument/semanticTokens/full',
        { textDocument: { uri: PLAN } },
      );
      return data.length / 5;
    };
    const known = await count();
    await quiet(client);
    const before = client.refreshed.tokens;
    client.change(PLAN, 2, [{ range: at(0, 12), text: ' ' }]);
    await quiet(client);
    expect(client.refreshed.tokens).toBe(before);
    // `plain` names a part that there was none of.
    client.change(KIT, 2, [{ text: kit.replace('other:', 'none:') }]);
    await until(() => client.refreshed.tokens > before);
    expect(await count()).toBe(known + 1);
  });
});
