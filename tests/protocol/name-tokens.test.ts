/** Names as semantic tokens: alike where they are defined and used, told apart by kind. */
import { describe, expect, it } from 'vitest';
import type { SemanticTokens } from 'vscode-languageserver';
import { createCore } from '../../shared/core/core.ts';
import { ENTRIES } from '../../shared/plan/generated/entries.ts';
import { at, connect, PLAN } from './support/client.ts';

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
});
