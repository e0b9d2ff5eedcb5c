import fc from 'fast-check';
import { expect, it } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { createCore } from '../../shared/core/core.ts';
import { connect, PLAN, type TestClient } from './support/client.ts';

const text = fc
  .array(
    fc.oneof(
      { weight: 4, arbitrary: fc.constantFrom('a', ': ', '\n', '\r\n', '\r', '  ', '- ', 'drift') },
      { weight: 1, arbitrary: fc.constantFrom('\u{1f41a}', 'e\u0301', '\u2028', '\ufeff', '水') },
    ),
    { maxLength: 30 },
  )
  .map((pieces) => pieces.join(''));

const position = fc.record({ line: fc.nat(12), character: fc.nat(20) });

const change = fc.oneof(
  { weight: 1, arbitrary: fc.record({ text }) },
  {
    weight: 6,
    arbitrary: fc.record({ text, range: fc.record({ start: position, end: position }) }),
  },
);

interface Place {
  readonly line: number;
  readonly character: number;
}

interface Change {
  readonly text: string;
  readonly range?: { readonly start: Place; readonly end: Place };
}

/** Positions past the end of a line or text are allowed and clamped; an end before its start isn't. */
const ordered = (each: Change): Change => {
  if (!each.range) return each;
  const { start, end } = each.range;
  const swap =
    end.line < start.line || (end.line === start.line && end.character < start.character);
  return { text: each.text, range: swap ? { start: end, end: start } : { start, end } };
};

/** One edit by the protocol's own library; anew each time, as it loses count past the last line. */
const edited = (before: string, one: Change): string =>
  TextDocument.update(TextDocument.create(PLAN, 'shootplan', 1, before), [one], 2).getText();

const edits = fc.array(fc.array(change, { maxLength: 3 }));

/** Plays edits to a server and to the reference; `compare` looks at what both come to. */
async function play(
  client: Pick<TestClient, 'open' | 'change' | 'close' | 'connection'>,
  first: string,
  sequence: readonly (readonly Change[])[],
  compare: (reference: string) => void,
): Promise<void> {
  let reference = first;
  let version = 1;
  client.open(PLAN, first, version);
  for (const each of sequence) {
    const changes = each.map(ordered);
    client.change(PLAN, ++version, changes);
    for (const one of changes) reference = edited(reference, one);
  }
  await client.connection.sendRequest('textDocument/documentSymbol', {
    textDocument: { uri: PLAN },
  });
  compare(reference);
  client.close(PLAN);
}

it('hands edits on as the client sent them, whatever they are', async () => {
  const client = await connect();
  await fc.assert(
    fc.asyncProperty(text, edits, (first, sequence) =>
      play(client, first, sequence, (reference) => expect(client.core.text(PLAN)).toBe(reference)),
    ),
    { numRuns: 200 },
  );
});

it('keeps the text that the client has in the core itself', async () => {
  const client = await connect({ createCore });
  await fc.assert(
    fc.asyncProperty(text, edits, (first, sequence) =>
      play(client, first, sequence, (reference) => {
        const lines = reference.split(/\r\n|\r|\n/);
        expect(lines.map((_, index) => client.core.line(PLAN, index))).toEqual(lines);
        expect(client.core.line(PLAN, lines.length)).toBe('');
      }),
    ),
    { numRuns: 200 },
  );
});
