import fc from 'fast-check';
import { expect, it } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { connect, PLAN } from './support/client.ts';

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

/** Positions past the end of a line or text are allowed and clamped; an end before its start isn't. */
const ordered = (each: { text: string; range?: { start: P; end: P } }) => {
  if (!each.range) return each;
  const { start, end } = each.range;
  const swap =
    end.line < start.line || (end.line === start.line && end.character < start.character);
  return { text: each.text, range: swap ? { start: end, end: start } : { start, end } };
};
type P = { line: number; character: number };

/** One edit by the protocol's own library; anew each time, as it loses count past the last line. */
const edited = (before: string, one: ReturnType<typeof ordered>): string =>
  TextDocument.update(TextDocument.create(PLAN, 'shootplan', 1, before), [one], 2).getText();

it('keeps the text that the client has, whatever the edits', async () => {
  const client = await connect();
  await fc.assert(
    fc.asyncProperty(text, fc.array(fc.array(change, { maxLength: 3 })), async (first, edits) => {
      let reference = first;
      client.open(PLAN, first, 1);
      let version = 1;
      for (const each of edits) {
        const changes = each.map(ordered);
        client.change(PLAN, ++version, changes);
        for (const one of changes) reference = edited(reference, one);
      }
      await client.connection.sendRequest('textDocument/documentSymbol', {
        textDocument: { uri: PLAN },
      });
      expect(client.core.text(PLAN)).toBe(reference);
      client.close(PLAN);
    }),
    { numRuns: 200 },
  );
});
