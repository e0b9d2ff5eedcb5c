/** How a shot is solved, offered in its text: shown first where the client can, else in one edit. */
import { describe, expect, it } from 'vitest';
import type { CodeAction, WorkspaceEdit } from 'vscode-languageserver';
import type { SolveAnswer } from '../../server/handlers/solve.ts';
import type { SolvedPartly } from '../../server/handlers/solve-partly.ts';
import { createCore } from '../../shared/core/core.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { applied, changed, findingsOf } from '../support/plans.ts';
import { at, connect, PLAN } from './support/client.ts';

const DARK = changed(EXAMPLE_PLAN, { 'shots/frost/iso': '200' });
const line = DARK.split('\n').indexOf('    iso: 200');
const textDocument = { uri: PLAN };
const capabilities = {
  textDocument: { codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: [] } } } },
};

async function opened(initializationOptions = {}) {
  const client = await connect({ createCore, capabilities, initializationOptions });
  client.open(PLAN, DARK);
  const actions = (triggerKind: 1 | 2, where = at(line, 9)) =>
    client.connection.sendRequest<CodeAction[]>('textDocument/codeAction', {
      textDocument,
      range: where,
      context: { diagnostics: [], only: ['refactor.rewrite'], triggerKind },
    });
  return { client, actions };
}

const editsIn = ({ changes = {} }: WorkspaceEdit) =>
  (changes[PLAN] ?? []).map(({ range, newText }) => ({ range, text: newText }));

describe('solution', () => {
  it('is named as a command to clients that have it, and only in a shot that needs it', async () => {
    const { actions } = await opened({ solving: true });
    const [action, ...others] = await actions(2);
    expect(others).toEqual([]);
    expect(action).toMatchObject({
      kind: 'refactor.rewrite',
      command: { command: 'lamella.solveShot', arguments: [{ uri: PLAN, shot: 'frost' }] },
    });
    expect(action!.edit).toBeUndefined();
    const skin = DARK.split('\n').indexOf('  skin:');
    expect(await actions(2, at(skin, 3))).toEqual([]);
    expect(await actions(2, at(0, 0))).toEqual([]);
  });

  it('is one edit to others, that says what it changes; not on every move of the cursor', async () => {
    const { actions } = await opened();
    expect(await actions(2)).toEqual([]);
    const [action] = await actions(1);
    expect(action!.title).toMatch(/^Solve frost by changing its settings: iso 200 to 1000$/);
    const after = applied(DARK, editsIn(action!.edit!));
    expect(findingsOf(after).filter(({ severity }) => severity === 'warning')).toEqual([]);
  });

  it('says what it would change and why, before it does', async () => {
    const { client } = await opened({ solving: true });
    const ask = (shot: string) =>
      client.connection.sendRequest<SolveAnswer | null>('lamella/solve', { textDocument, shot });
    const answer = await ask('frost');
    expect(answer!.title).toBe('1 change clears frost:');
    expect(answer!.lines[0]).toBe('iso: 200 \u2192 1000');
    expect(answer!.lines[1]).toMatch(
      /^ {2}needed because: The shot is \d\.\d+ stops underexposed\.$/,
    );
    expect(editsIn(answer!.edit!)).toHaveLength(1);
    const clear = await ask('skin');
    expect(clear).toMatchObject({ title: expect.stringMatching(/^Nothing in skin needs/) });
    expect(clear!.edit).toBeUndefined();
    expect(await ask('nobody')).toBeNull();
  });

  it('says what some of its changes would do alone, and nothing of another version', async () => {
    const client = await connect({ createCore, capabilities });
    // Two changes: the depth needs a smaller aperture, and that more light.
    const text = changed(EXAMPLE_PLAN, {
      'shots/frost/aperture': 'f/2.8',
      'shots/frost/iso': '50',
    });
    client.open(PLAN, text);
    const answer = await client.connection.sendRequest<SolveAnswer>('lamella/solve', {
      textDocument,
      shot: 'frost',
    });
    const changes = answer.changes!;
    expect(changes.length).toBeGreaterThan(1);
    const ask = (chosen: typeof changes, version = answer.version) =>
      client.connection.sendRequest<SolvedPartly | null>('lamella/solvePartly', {
        textDocument,
        shot: 'frost',
        version,
        edits: chosen.flatMap(({ edits }) => edits),
      });
    for (let set = 0; set < 1 << changes.length; set++) {
      const chosen = changes.filter((_, index) => (set >> index) & 1);
      const edits = chosen.flatMap((each) =>
        each.edits.map(({ range, newText }) => ({ range, text: newText })),
      );
      // The same text, checked from its beginning.
      const after = applied(text, edits);
      const partly = await ask(chosen);
      expect(partly!.text).toBe(after);
      const found = findingsOf(after).filter(
        ({ severity, shot }) =>
          shot === 'frost' && (severity === 'error' || severity === 'warning'),
      );
      expect(partly!.left).toEqual(found.map(({ rule, what }) => ({ rule, what })));
      expect(partly!.follows.length > 0).toBe(chosen.length > 0);
      if (chosen.length === changes.length) expect(partly!.left).toEqual([]);
    }
    expect(await ask(changes, answer.version! + 1)).toBeNull();
    // Nothing of it is kept: the plan is as it was.
    expect((await ask([]))!.text).toBe(text);
  });
});
