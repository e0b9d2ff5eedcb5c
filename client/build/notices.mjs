/**
 * The licences of the packages whose code ends up in the bundles, as they ask to be kept, and where
 * their source is: MPL-2.0, 3.2, asks that whoever gets the program is told.
 */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { ROOT } from './ensure.mjs';

const PACKAGE = /^(?:.*\/)?node_modules\/(?:@[^/]+\/)?[^/]+/;

/** Licences, what they name (`NOTICE` of Apache-2.0), and what the package holds of others. */
const TEXTS = /^(?:licen[cs]e|copying|notice|thirdpartynotices)/i;

/** @param {string[]} inputs files that were bundled, relative to the project's root */
export const notices = (inputs) => {
  const folders = new Set(inputs.map((input) => PACKAGE.exec(input)?.[0]).filter(Boolean));
  const parts = [...folders].sort().map((folder) => {
    const at = path.join(ROOT, folder);
    const { name, version, license, repository } = JSON.parse(
      readFileSync(path.join(at, 'package.json'), 'utf8'),
    );
    const files = readdirSync(at).filter((entry) => TEXTS.test(entry));
    if (!files.some((entry) => /^licen[cs]e|^copying/i.test(entry)))
      throw new Error(`${name} is bundled, but has no file with its licence.`);
    const source = sourceOf(repository);
    if (license === undefined || source === null)
      throw new Error(`${name} is bundled, but its package doesn't say its licence or source.`);
    const about = [
      `Licence: ${license}`,
      `Source code: ${source}`,
      `and in the package ${name} ${version} of the npm registry.`,
      'It was bundled and shortened by a program; nothing else was changed.',
    ].join('\n');
    const texts = files.map((file) => readFileSync(path.join(at, file), 'utf8').trim());
    return `${[`${name} ${version}`, about, ...texts].join('\n\n')}\n`;
  });
  return `Lamella contains code of these packages.\n\n${parts.join(`\n${'-'.repeat(72)}\n\n`)}`;
};

/** As a browser opens it; packages write it in several short ways. */
function sourceOf(repository) {
  const written = typeof repository === 'string' ? repository : repository?.url;
  const found = /github(?:\.com[/:]|:)([^/]+\/[^/#]+?)(?:\.git)?$/i.exec(written ?? '');
  return found ? `https://github.com/${found[1]}` : null;
}
