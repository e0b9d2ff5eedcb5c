/** The page of the language lists what the schema holds. */
import { expect, it } from 'vitest';
import { languagePage, languagePageOf, MARK } from '../../client/build/language-page.ts';
import type { SchemaDocument } from '../../schemas/schema-document.ts';
import type { Assumption } from '../../shared/assumptions/assumption.ts';
import { BENCH_ASSUMPTIONS } from '../../shared/assumptions/bench-table.ts';
import { ASSUMPTIONS } from '../../shared/assumptions/table.ts';
import { each } from '../support/each.ts';
import { ROOT, read } from './support/project.ts';

const schema = JSON.parse(read('schemas/shootplan.schema.json')) as SchemaDocument;

it('the page is what the schema says', () => {
  const { is, shouldBe } = languagePageOf(ROOT);
  expect(is === shouldBe, 'stale: run node client/build/language-page.mjs').toBe(true);
});

it('what is written by hand stays, and a page without the mark is refused', () => {
  const page = languagePage(`by hand\n\n${MARK}\n\nold`, schema);
  expect(page.startsWith(`by hand\n\n${MARK}\n\n## All keys\n`)).toBe(true);
  expect(page).not.toContain('\nold');
  expect(() => languagePage('by hand', schema)).toThrow('lost the mark');
});

it('every key of every kind of entry has its row, with what the schema says of it', () => {
  // A page made of nothing but the schema, with Markdown's escapes taken back.
  const page = languagePage(MARK, schema).replaceAll(/\\(?=[\\*<>[\]|])/g, '');
  each(
    Object.entries(schema.$defs).filter(([, { properties }]) => properties),
    ([, { title = '', properties = {} }]) => {
      const heading = `### ${title.charAt(0).toUpperCase()}${title.slice(1)}`;
      const sections = page.split('\n### ').filter((text) => `### ${text}`.startsWith(heading));
      for (const [key, { description = '' }] of Object.entries(properties))
        expect(
          sections.some((text) =>
            text.split('\n').some((row) => row.includes(`\`${key}\``) && row.includes(description)),
          ),
          key,
        ).toBe(true);
    },
    ([name]) => name,
  );
});

it('a change of the schema makes the page stale', () => {
  const changed = structuredClone(schema) as unknown as {
    $defs: { shot: { properties: Record<string, { description: string }> } };
  };
  changed.$defs.shot.properties.tilt!.description = 'Otherwise.';
  const page = read('schemas/LANGUAGE.md');
  expect(languagePage(page, changed as unknown as SchemaDocument)).not.toBe(page);
});

it('every assumption has its row, with its ends and its source', () => {
  const rows = read('schemas/LANGUAGE.md').split('## All assumptions')[1]!.split('\n');
  const all = [...Object.values(ASSUMPTIONS), ...Object.values(BENCH_ASSUMPTIONS)];
  expect(rows.filter((row) => row.startsWith('| '))).toHaveLength(all.length + 2);
  const plain = rows.map((row) => row.replaceAll('\\', ''));
  each<Assumption>(
    all,
    ({ key, of, source, note }) => {
      const named = key === null ? of : `\`${key}\` of ${of}`;
      expect(plain.find((row) => row.startsWith(`| ${named} |`) && row.includes(note))).toContain(
        `| ${source} |`,
      );
    },
    ({ of, note }) => `${of}: ${note}`,
  );
  expect(plain.find((row) => row.startsWith('| `loss` of a lens |'))).toContain(
    '| 0.3 stops | 0.1 stops to 0.5 stops |',
  );
});
