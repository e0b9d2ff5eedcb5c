/** Files that are renamed or moved, and the paths of the plans that name them. */
import { describe, expect, it } from 'vitest';
import type { WorkspaceEdit } from 'vscode-languageserver';
import { createCore } from '../../shared/core/core.ts';
import { applied } from '../support/plans.ts';
import { connect, PLAN, ROOT, until } from './support/client.ts';

const capabilities = { workspace: { fileOperations: { willRename: true, didRename: true } } };
const file = (name: string): string => `${ROOT}/${name}`;

/** Plans on a disk, the first of them open. */
async function opened(texts: Readonly<Record<string, string>>) {
  const disk = new Map(Object.entries(texts).map(([name, text]) => [file(name), text]));
  const listed = { uris: [...disk.keys()] };
  const client = await connect({
    createCore,
    disk,
    capabilities,
    initializationOptions: { listsPlans: true },
    planFiles: () => listed.uris,
  });
  const [first = ''] = Object.keys(texts);
  client.open(file(first), texts[first]!);
  const ask = (...moves: (readonly [from: string, to: string])[]) =>
    client.connection.sendRequest<WorkspaceEdit | null>('workspace/willRenameFiles', {
      files: moves.map(([from, to]) => ({ oldUri: file(from), newUri: file(to) })),
    });
  /** Each text that changes, as it is then. */
  const textsAfter = async (...moves: (readonly [from: string, to: string])[]) => {
    const edit = await ask(...moves);
    return Object.fromEntries(
      Object.entries(edit?.changes ?? {}).map(([uri, edits]) => [
        uri.slice(ROOT.length + 1),
        applied(
          disk.get(uri)!,
          edits.map(({ range, newText }) => ({ range, text: newText })),
        ),
      ]),
    );
  };
  return { client, disk, ask, textsAfter };
}

describe('a file that is moved', () => {
  it('is offered to be followed by clients that say so, and by no others', async () => {
    const { client } = await opened({ 'a.shootplan.yaml': '' });
    const { fileOperations } = client.result.capabilities.workspace!;
    expect(fileOperations?.willRename?.filters.map(({ pattern }) => pattern.matches)).toEqual([
      'file',
      'file',
      'folder',
    ]);
    expect(fileOperations?.didRename).toEqual(fileOperations?.willRename);
    const plain = await connect({ createCore });
    expect(plain.result.capabilities.workspace?.fileOperations).toBeUndefined();
  });

  it('has its new path in every plan that uses it, open or not, from that plan’s folder', async () => {
    const { ask, textsAfter } = await opened({
      'a.shootplan.yaml': '# ours\nuse: [kit.shootplan.yaml, other.shootplan.yaml] # both\n',
      'kit.shootplan.yaml': 'kit: {}\n',
      'other.shootplan.yaml': 'use: [./kit.shootplan.yaml]\n',
      'winter/b.shootplan.yaml': 'use:\n  - \'../kit.shootplan.yaml\'\n  - "c.shootplan.yaml"\n',
      'winter/c.shootplan.yaml': 'shots: {}\n',
    });
    expect(await textsAfter(['kit.shootplan.yaml', 'winter/our kit.shootplan.yaml'])).toEqual({
      'a.shootplan.yaml':
        '# ours\nuse: [winter/our kit.shootplan.yaml, other.shootplan.yaml] # both\n',
      'other.shootplan.yaml': "use: ['./winter/our kit.shootplan.yaml']\n",
      'winter/b.shootplan.yaml': 'use:\n  - our kit.shootplan.yaml\n  - "c.shootplan.yaml"\n',
    });
    expect(await ask(['winter/none.shootplan.yaml', 'x.shootplan.yaml'])).toBeNull();
  });

  it('keeps its own paths right, and those of a folder that moves as a whole', async () => {
    const { textsAfter } = await opened({
      'day/a.shootplan.yaml': 'use: [../kit.shootplan.yaml, lights/l.shootplan.yaml]\n',
      'day/lights/l.shootplan.yaml': 'use: [../../kit.shootplan.yaml]\n',
      'kit.shootplan.yaml': 'kit: {}\n',
      'b.shootplan.yaml': 'use: [day/lights/l.shootplan.yaml]\n',
    });
    expect(await textsAfter(['day/a.shootplan.yaml', 'a.shootplan.yaml'])).toEqual({
      'day/a.shootplan.yaml': 'use: [kit.shootplan.yaml, day/lights/l.shootplan.yaml]\n',
    });
    expect(await textsAfter(['day', 'days/first'])).toEqual({
      'day/a.shootplan.yaml': 'use: [../../kit.shootplan.yaml, lights/l.shootplan.yaml]\n',
      'day/lights/l.shootplan.yaml': 'use: [../../../kit.shootplan.yaml]\n',
      'b.shootplan.yaml': 'use: [days/first/lights/l.shootplan.yaml]\n',
    });
    // The folder, and what it needs, at once.
    expect(
      await textsAfter(['day', 'in/day'], ['kit.shootplan.yaml', 'in/kit.shootplan.yaml']),
    ).toEqual({
      'b.shootplan.yaml': 'use: [in/day/lights/l.shootplan.yaml]\n',
    });
  });

  it('is followed where it is a clip that the plan lists, and left alone outside the workspace', async () => {
    const { textsAfter } = await opened({
      'a.shootplan.yaml':
        'use: [../away.shootplan.yaml]\nclips:\n  drift:\n    - { file: media/0007.mp4 }\n    - { file: 0008.mp4 }\n',
    });
    expect(await textsAfter(['media', 'card'], ['0008.mp4', 'card/12: b.mp4'])).toEqual({
      'a.shootplan.yaml':
        "use: [../away.shootplan.yaml]\nclips:\n  drift:\n    - { file: card/0007.mp4 }\n    - { file: 'card/12: b.mp4' }\n",
    });
    // Whether clips lie beside the plan or in a folder of their own isn't known.
    expect(await textsAfter(['a.shootplan.yaml', 'b/a.shootplan.yaml'])).toEqual({});
  });

  it('is read at its new place, once it is there', async () => {
    const { client, disk } = await opened({ 'a.shootplan.yaml': 'use: [kit.shootplan.yaml]\n' });
    const codes = () => client.last(PLAN)?.diagnostics.map(({ code }) => code) ?? [];
    await until(() => codes().includes('use-not-found'));
    disk.set(file('kit.shootplan.yaml'), 'shootplan: 1\n');
    void client.connection.sendNotification('workspace/didRenameFiles', {
      files: [{ oldUri: file('old'), newUri: ROOT }],
    });
    await until(() => !codes().includes('use-not-found'));
  });
});
