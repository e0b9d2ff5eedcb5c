/** Paths in a plan as links. */
import { expect, it } from 'vitest';
import type { DocumentLink } from 'vscode-languageserver';
import { createCore } from '../../shared/core/core.ts';
import { at, connect, KIT, PLAN, ROOT, until } from './support/client.ts';

const TEXT = `use: [kit.shootplan.yaml, ../other.shootplan.yaml, none.shootplan.yaml]
clips:
  drift:
    - { file: media/take 1.mp4 }
    - { file: ../away.mp4 }
    - { file: /root.mp4 }
    - { number: 2 }
`;

it('lead to used plans and to clips inside the workspace, and nowhere else', async () => {
  const disk = new Map([[KIT, 'shootplan: 1\n']]);
  const client = await connect({ createCore, disk });
  client.open(PLAN, TEXT);
  // The file that isn't there was asked for and refused.
  await until(
    () => client.last(PLAN)?.diagnostics.some(({ code }) => code === 'use-not-found') === true,
  );
  const links = await client.connection.sendRequest<DocumentLink[]>('textDocument/documentLink', {
    textDocument: { uri: PLAN },
  });
  expect(links).toEqual([
    { range: at(0, 6, 24), target: KIT },
    { range: at(3, 14, 30), target: `${ROOT}/media/take%201.mp4` },
  ]);
});
