/** Writes what is generated, or with --check says what is stale and ends with 1. */
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { GRAMMAR_PATH, outputs, SCHEMA_PATH } from './outputs.ts';

const read = (file: string): Promise<string> => readFile(file, 'utf8').catch(() => '');

export async function generate(root: string, check: boolean): Promise<number> {
  const stale: string[] = [];
  const [schema, grammar] = await Promise.all(
    [SCHEMA_PATH, GRAMMAR_PATH].map((name) => read(path.join(root, name))),
  );
  for (const [name, text] of outputs(schema ?? '', grammar ?? '')) {
    const file = path.join(root, name);
    if ((await read(file)) === text) continue;
    stale.push(name);
    if (check) continue;
    await mkdir(path.dirname(file), { recursive: true });
    await writeFile(file, text);
  }
  for (const name of stale) console.log(`${check ? 'stale' : 'written'}: ${name}`);
  return check && stale.length > 0 ? 1 : 0;
}
