/** The licences of the packages whose code ends up in the bundles, as they ask to be kept. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { ROOT } from './ensure.mjs';

const PACKAGE = /^(?:.*\/)?node_modules\/(?:@[^/]+\/)?[^/]+/;

/** @param {string[]} inputs files that were bundled, relative to the project's root */
export const notices = (inputs) => {
  const folders = new Set(inputs.map((input) => PACKAGE.exec(input)?.[0]).filter(Boolean));
  const parts = [...folders].sort().map((folder) => {
    const at = path.join(ROOT, folder);
    const { name, version, license } = JSON.parse(
      readFileSync(path.join(at, 'package.json'), 'utf8'),
    );
    const file = readdirSync(at).find((entry) => /^licen[cs]e/i.test(entry));
    const text = file ? readFileSync(path.join(at, file), 'utf8').trim() : `Licence: ${license}`;
    return `${name} ${version}\n\n${text}\n`;
  });
  return `Lamella contains code of these packages.\n\n${parts.join(`\n${'-'.repeat(72)}\n\n`)}`;
};
