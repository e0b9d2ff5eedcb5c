/** Pages for people: what they point at is there. */
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { exists, read, tracked } from './support/project.ts';

const pages = tracked.filter((file) => file.endsWith('.md'));

const withoutBlocks = (text: string): string => text.replace(/```[\s\S]*?```/g, '');

/** Headings as the anchors that a host of repositories makes of them. */
const anchors = (file: string): readonly string[] =>
  [...withoutBlocks(read(file)).matchAll(/^#+ (.+)$/gm)].map(([, heading = '']) =>
    heading
      .toLowerCase()
      .replace(/[^\w\- ]/g, '')
      .replaceAll(' ', '-'),
  );

describe.each(pages)('%s', (page) => {
  const text = withoutBlocks(read(page));

  it('links to files and headings that are there', () => {
    for (const [, target = ''] of text.matchAll(/\]\(([^)\s]+)\)/g)) {
      if (/^https:\/\//.test(target)) continue;
      const [file = '', anchor] = target.split('#');
      const at = file === '' ? page : path.posix.join(path.posix.dirname(page), file);
      expect(exists(at), target).toBe(true);
      if (anchor !== undefined) expect(anchors(at), target).toContain(anchor);
    }
  });

  it('has no two headings that a link could mean', () => {
    const all = anchors(page);
    expect(all.filter((anchor, index) => all.indexOf(anchor) !== index)).toEqual([]);
  });

  it('names paths of the project that are there', () => {
    for (const [, named = ''] of text.matchAll(
      /`((?:shared|server|client|schemas|samples|tests)\/[\w./-]*)`/g,
    ))
      expect(exists(named), named).toBe(true);
  });
});

it.each([
  ...['README.md', 'DEVELOPERS.md', 'CHANGELOG.md', 'LICENSE', 'SECURITY.md', 'client/PAGE.md'],
  ...['schemas/LANGUAGE.md', 'shared/rules/RULES.md', 'shared/report/JSON.md', 'server/CLI.md'],
  ...['server/EDITORS.md', 'tests/published/ACCURACY.md', 'tests/bench/PERFORMANCE.md'],
])('%s is there', (page) => {
  expect(exists(page)).toBe(true);
});
