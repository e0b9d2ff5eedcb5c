/** The check of a folder that the editor's task asks for, against the command line's. */
import { expect, it } from 'vitest';
import type { CheckedFolder } from '../../server/handlers/check-folder.ts';
import { createCore } from '../../shared/core/core.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { folderWith, lamella } from '../cli/support.ts';
import { changed } from '../support/plans.ts';
import { connect, ROOT } from './support/client.ts';

const [FROM, TO] = [EXAMPLE_PLAN.indexOf('kit:\n'), EXAMPLE_PLAN.indexOf('rigs:\n')];

/** A plan with a finding, one whose kit is in another file, and one that can't be read as YAML. */
const FILES = {
  'a.shootplan.yaml': changed(EXAMPLE_PLAN, { 'shots/frost/iso': '200' }),
  'sub folder/b.shootplan.yaml': `${EXAMPLE_PLAN.slice(0, FROM)}use: [kit.shootplan.yaml]\n${EXAMPLE_PLAN.slice(TO)}`,
  'sub folder/kit.shootplan.yaml': `shootplan: 1\n${EXAMPLE_PLAN.slice(FROM, TO)}`,
  'torn.shootplan.yaml': 'shootplan: 1\nshots: { a: [\n',
};

async function served(files: Readonly<Record<string, string>>, gone: readonly string[] = []) {
  const uri = (name: string) => `${ROOT}/${name.replaceAll(' ', '%20')}`;
  const client = await connect({
    createCore,
    disk: new Map(Object.entries(files).map(([name, text]) => [uri(name), text])),
    initializationOptions: { listsPlans: true },
    planFiles: () => [
      ...[...Object.keys(files), ...gone].map(uri),
      'file:///elsewhere/c.shootplan.yaml',
    ],
  });
  return client.connection.sendRequest<CheckedFolder>('lamella/check', { folder: `${ROOT}/` });
}

it('is what the command line says, and exits as it does', async () => {
  const folder = folderWith(FILES);
  const cli = await lamella(folder, ['check', '.'], { colour: true, createCore });
  expect(await served(FILES)).toEqual({ text: cli.out, status: cli.status });
  expect(cli.status).toBe(1);
  const { 'torn.shootplan.yaml': _, ...whole } = FILES;
  expect((await served(whole)).status).toBe(0);
});

it('says what it could not read', async () => {
  const { text, status } = await served(FILES, ['gone.shootplan.yaml']);
  expect(text).toMatch(/gone\.shootplan\.yaml can't be read\.\n$/);
  expect(status).toBe(2);
  expect(await served({})).toEqual({ text: 'There are no plans in the folder.\n', status: 2 });
});
