/** Line ends of every kind: what a fix does to them, and that trying one out changes nothing. */
import { expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { fixAll } from '../../server/handlers/fix-all.ts';
import { applied, coreWith, PLAN } from '../support/plans.ts';
import { SOUND } from './support/broken-plans.ts';

/** Bare carriage returns throughout, and with line feeds in between, so that edits bring both together. */
const TEXTS = [
  SOUND.replaceAll('\n', '\r'),
  SOUND.replaceAll('\n\n', '\r\r'),
  SOUND.replaceAll('\n    ', '\r    '),
];

test('trying fixes out leaves the text as it was', () => {
  for (const text of TEXTS) {
    const core = coreWith(text);
    const before = core.findings(PLAN);
    for (const finding of before) {
      core.fixesOf(finding);
      expect(core.text(PLAN)).toBe(text);
    }
    expect(core.findings(PLAN)).toEqual(before);
  }
});

test('fixing bare carriage returns gives the sound plan', () => {
  for (const text of TEXTS) {
    const edits = fixAll(coreWith(text), PLAN);
    // The editor applies all at once, each at its place in the text as it was.
    const document = TextDocument.create(PLAN, 'shootplan', 1, text);
    const mended = TextDocument.applyEdits(
      document,
      edits.map((edit) => ({ range: edit.range, newText: edit.text })),
    );
    expect(applied(text, edits)).toBe(mended);
    const lines = (written: string) => written.split(/\r\n|\r|\n/);
    expect(lines(mended)).toEqual(lines(SOUND));
    expect(
      coreWith(mended)
        .findings(PLAN)
        .filter(({ severity }) => severity === 'error'),
    ).toEqual([]);
  }
});
