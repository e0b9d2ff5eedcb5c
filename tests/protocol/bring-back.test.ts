/** A day brought into the open plan: the page that shows it, and the edit. */
import { describe, expect, it } from 'vitest';
import type { WorkspaceEdit } from 'vscode-languageserver';
import type { BringBackAnswer } from '../../server/handlers/bring-back.ts';
import { bringBack } from '../../shared/bring-back/bring.ts';
import { readDay } from '../../shared/bring-back/read.ts';
import { createCore } from '../../shared/core/core.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { applied } from '../support/plans.ts';
import { connect, PLAN } from './support/client.ts';

const AT = '2027-03-02T10:41:07Z';
const name = PLAN.slice(PLAN.lastIndexOf('/') + 1);
const DAY = `lamella day 1\n${JSON.stringify({
  plan: name,
  saved: AT,
  checks: [{ shot: 'skin', check: 'solution-ready', done: true, at: AT }],
  takes: [
    { shot: 'frost', take: 1, at: AT, clip: 'a.mp4', keep: true, note: '````\n# heading <b>' },
    { shot: 'skin', take: 1, at: AT, keep: false },
  ],
})}`;

async function asked(
  plan: string,
  day: string,
  propose?: unknown,
): Promise<BringBackAnswer | null> {
  const client = await connect({ createCore });
  client.open(PLAN, plan);
  const params = { textDocument: { uri: PLAN }, day, propose };
  return client.connection.sendRequest('lamella/bringBack', params);
}

const editsIn = ({ changes = {} }: WorkspaceEdit) =>
  (changes[PLAN] ?? []).map(({ range, newText }) => ({ range, text: newText }));

describe('a day for the open plan', () => {
  it('is one edit with the text that the command line would write', async () => {
    for (const plan of [
      EXAMPLE_PLAN,
      EXAMPLE_PLAN.replaceAll('\n', '\r\n'),
      EXAMPLE_PLAN.trimEnd(),
    ]) {
      const answer = await asked(plan, DAY);
      const read = readDay(DAY);
      const text = read.ok && bringBack(read.day, plan, name)?.text;
      const edit = answer && 'edit' in answer ? answer.edit : undefined;
      expect(edit && applied(plan, editsIn(edit))).toBe(text);
    }
  });

  it('is shown as it is, whatever a remark holds', async () => {
    const answer = await asked(EXAMPLE_PLAN, DAY);
    const markdown = answer && 'markdown' in answer ? answer.markdown : '';
    expect(markdown).toMatch(/^```text\nCheck solution-ready of skin: done\.\n/);
    // CommonMark 0.31, 4.5: only a fence of at least as many backticks ends the block.
    expect(markdown).toMatch(/\n`````diff\n[\s\S]*\n`````\n$/);
  });

  it('proposes what it shows of a subject only when it is asked to', async () => {
    const lifetimes = [70, 95].map((seconds) => ({
      ...{ shot: 'skin', at: AT, seconds, subject: 'soap' },
      before: [{ lifetime: '40 s' }],
    }));
    const day = `lamella day 1\n${JSON.stringify({ plan: name, saved: AT, lifetimes })}`;
    const edited = async (propose: unknown) => {
      const answer = await asked(EXAMPLE_PLAN, day, propose);
      const edit = answer && 'edit' in answer ? answer.edit : undefined;
      const could = answer && 'couldPropose' in answer ? answer.couldPropose : undefined;
      return [could, edit ? applied(EXAMPLE_PLAN, editsIn(edit)) : null];
    };
    expect(await edited('yes')).toEqual([true, null]);
    const range = EXAMPLE_PLAN.replace('lifetime: 40 s', 'lifetime: 70 to 95 s');
    expect(await edited(true)).toEqual([undefined, range]);
  });

  it('is refused with the reason', async () => {
    expect(await asked(EXAMPLE_PLAN, 'lamella day 2\n{}')).toEqual({
      refused: "The text can't be read: it is of version 2; only version 1 can be read.",
    });
    expect(await asked(`${EXAMPLE_PLAN}\nedit: [`, DAY)).toEqual({
      refused: `${name} has errors in its text. Fix them first.`,
    });
  });
});
