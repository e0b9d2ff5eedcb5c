/** Ids of entries and keys of the graph are made and taken apart in one place each. */
import { expect, it } from 'vitest';
import { read, sharedSources, withoutComments } from './support/project.ts';

const MAKERS = ['shared/plan/entry-id.ts', 'shared/workspace/keys.ts'];

/** What makes a string an id by force, puts a NUL into one, or cuts one at a slash. */
const BY_HAND =
  /\bas (?:EntryId|Key)\b|\\u0000'|\b(?:id|entry|chunk|\w+Id)\.(?:split|startsWith|indexOf|lastIndexOf|includes)\(\s*['`]|`\$\{(?:id|entry|chunk|home|section)\}\//;

it('no id is made or taken apart by hand', () => {
  const found = sharedSources
    .filter((file) => !MAKERS.includes(file))
    .flatMap((file) =>
      withoutComments(read(file))
        .split('\n')
        .flatMap((line, index) =>
          BY_HAND.test(line) ? [`${file}:${index + 1} ${line.trim()}`] : [],
        ),
    );
  expect(found).toEqual([]);
});

it.each([
  "const id = 'shots/drift' as EntryId;",
  "id.includes('\\u0001')",
  "place.entry.split('/')",
  "entry.startsWith('lights/')",
  `const inner = \`${'$'}{id}/${'$'}{key}\`;`,
])('%s would be seen', (line) => {
  expect(line).toMatch(BY_HAND);
});
