/**
 * A review brought into plans. What the plan says is read by the package `yaml`, which knows nothing of
 * this project.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { readBack } from '../../shared/bring-back/read-back.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, findingsOf } from '../support/plans.ts';
import { manyRuns } from '../support/runs.ts';

const NAME = 'low-water.shootplan.yaml';
const AT = '2027-03-02T10:41:07.123Z';
const COMMENT = { shot: 'drift', time: AT, by: 'rv', says: 'Could this be wider?' };

const textOf = (...comments: readonly object[]): string =>
  `lamella review 1\n${JSON.stringify({ plan: NAME, saved: AT, comments })}\n`;

function brought(given: string, plan: string) {
  const read = readBack(given);
  if (!read.ok) throw new Error(read.whys.join());
  const made = read.lay(plan, NAME);
  if (!made) throw new Error('the plan is not whole');
  return made;
}

const PLAN = `shootplan: 1
shots:
  # the quick one
  drift:
    aperture: f/16   # sharp
  still: { aperture: f/8 }   # short
  wide:
    review:   # so far
      - { by: ab, says: Nearer }   # on paper
    aperture: f/11
`;

describe('a review', () => {
  it('stands with its shots, comments and layout as they were', () => {
    const { text, done, left } = brought(
      textOf(
        COMMENT,
        { ...COMMENT, shot: 'still', by: undefined, says: 'two\nlines: # and "marks"' },
        { ...COMMENT, shot: 'wide' },
      ),
      PLAN,
    );
    expect(text).toBe(`shootplan: 1
shots:
  # the quick one
  drift:
    aperture: f/16   # sharp
    review:
      - { by: rv, time: ${AT}, says: 'Could this be wider?' }
  still: { aperture: f/8, review: [{ time: ${AT}, says: "two\\nlines: # and \\"marks\\"" }] }   # short
  wide:
    review:   # so far
      - { by: ab, says: Nearer }   # on paper
      - { by: rv, time: ${AT}, says: 'Could this be wider?' }
    aperture: f/11
`);
    expect(done).toEqual([
      'A comment by rv on drift: added.',
      'A comment on still: added.',
      'A comment by rv on wide: added.',
    ]);
    expect(left).toEqual([]);
  });

  it('is brought once, whatever became of it in the plan', () => {
    const given = textOf(COMMENT, { ...COMMENT, shot: 'wide', by: 'ab', says: 'Nearer' });
    const first = brought(given, PLAN);
    expect(first.done).toHaveLength(1);
    const answered = first.text.replace("wider?' }", "wider?', answer: 'No.' }");
    expect(brought(given, answered)).toEqual({ text: answered, done: [], kept: [], left: [] });
    const changedThere = first.text.replace('Could this be', 'Can it be');
    expect(brought(given, changedThere)).toEqual({
      text: changedThere,
      done: [],
      kept: [],
      left: [
        'A comment by rv on drift says something else in the plan. The plan is left as it is.',
      ],
    });
  });

  it('says what it leaves', () => {
    const { text, left } = brought(
      `lamella review 1\n${JSON.stringify({
        ...{ plan: 'other.shootplan.yaml', saved: AT, colour: 1 },
        comments: [{ ...COMMENT, shot: 'gone', mood: 'good' }],
      })}`,
      PLAN,
    );
    expect(text).toBe(PLAN);
    expect(left).toEqual([
      'comments[1].mood is not known here; it is left out.',
      'colour is not known here; it is left out.',
      `The review is of other.shootplan.yaml; the plan is ${NAME}. Check that they belong together.`,
      'A comment by rv on gone: the plan has no such shot.',
    ]);
    const noList = PLAN.replace('aperture: f/16 ', 'review: later ');
    expect(brought(textOf(COMMENT), noList).left).toEqual([
      'A comment by rv on drift: `review` of drift is no list. It is left as it is.',
    ]);
  });

  it('gives a sound plan a note on the line of each comment, until it has an answer', () => {
    const given = textOf({ ...COMMENT, shot: 'frost' }, { ...COMMENT, shot: 'skin', says: 'b' });
    const { text } = brought(given, EXAMPLE_PLAN);
    const before = new Set(findingsOf(EXAMPLE_PLAN).map(({ what }) => what));
    const found = findingsOf(text).filter(({ what }) => !before.has(what));
    const lines = text.split('\n');
    expect(
      found.map(({ rule, severity, what, shot, range }) => [
        ...[rule, severity, shot, what],
        lines[range.start.line]!.includes(`time: ${AT}`),
      ]),
    ).toEqual([
      ['comment-unanswered', 'note', 'frost', 'rv comments: Could this be wider?', true],
      ['comment-unanswered', 'note', 'skin', 'rv comments: b.', true],
    ]);
    const answered = text.replaceAll(/(says: .*) \}/g, '$1, answer: yes }');
    expect(findingsOf(answered).filter(({ what }) => !before.has(what))).toEqual([]);
  });

  it('can be answered in the words of the language, and by no other', () => {
    const review = (value: string) =>
      findingsOf(changed(EXAMPLE_PLAN, { 'shots/frost/review': value }))
        .filter(({ severity, rule }) => severity === 'error' || rule === 'comment-unanswered')
        .map(({ rule, what }) => `${rule}: ${what}`);
    expect(review('[{ says: "a `b` c" }]')).toEqual([
      'comment-unanswered: A reviewer comments: a `b` c.',
    ]);
    expect(review('[{ by: rv }]')).toEqual([expect.stringMatching(/^missing-key: .*says/)]);
    expect(review('[{ says: a, answred: b }]')).toContainEqual(
      expect.stringMatching(/^unknown-key: .*answred/),
    );
    const [long] = review(`[{ by: rv, says: "${'word '.repeat(80)}" }]`);
    expect(long!.length).toBeLessThan(110);
    expect(long).toMatch(/word…$/);
  });
});

describe('a review that can not be read', () => {
  it('says where and why', () => {
    const why = (text: string): string | null => {
      const read = readBack(text);
      return read.ok ? null : read.whys.join('; ');
    };
    for (const [text, words] of [
      ['lamella review 2\n{}', 'it is of version 2; only version 1 can be read'],
      ['lamella review 1\n{', 'what follows its first line is not JSON, or it is cut off'],
      ['lamella reviews 1\n{}', 'its first line is not "lamella day 1"'],
      ['lamella review 1\n{"plan":"a"}', 'saved needs text, not nothing'],
      [textOf({ ...COMMENT, says: ' ' }), 'comments[1].says needs text, not " "'],
      [textOf({ ...COMMENT, says: 7 }), 'comments[1].says needs text, not 7'],
      [
        textOf(COMMENT, { ...COMMENT, shot: '__proto__' }),
        'comments[2].shot needs a name of the plan, not "__proto__"',
      ],
      [
        textOf({ ...COMMENT, says: 'a\u001b[2J' }),
        'comments[1].says has a control character; remove it',
      ],
      [textOf({ ...COMMENT, by: 'a\u202eb' }), 'comments[1].by has a control character; remove it'],
      [
        textOf({ ...COMMENT, says: 'a'.repeat(2001) }),
        'comments[1].says has 2001 characters; at most 2000 are read',
      ],
      [
        textOf({ ...COMMENT, time: 'now' }),
        'comments[1].time needs a date and time like 2027-03-02T10:41:07Z, not "now"',
      ],
      [textOf(...Array(1001).fill(COMMENT)), 'comments has 1001 entries; at most 1000 are read'],
    ] as const)
      expect(why(text)).toBe(words);
  });
});

/** Free text with everything that YAML takes for marks of its own. */
const prose = fc
  .string({
    unit: fc.constantFrom(...`ab 1:#-'"\\{}[],&*!|>%@\`?~=é\n\t`),
    minLength: 1,
    maxLength: 14,
  })
  .filter((text) => text.trim() !== '');

const comments = fc.uniqueArray(
  fc.record({
    shot: fc.constantFrom('drift', 'still', 'wide', 'none'),
    time: fc.integer({ min: 10, max: 15 }).map((minute) => `2027-03-02T10:${minute}:00Z`),
    by: fc.option(fc.constantFrom('rv', 'on', '1'), { nil: undefined }),
    says: prose,
  }),
  // Two by one person on one shot at one moment are one.
  { maxLength: 6, selector: ({ shot, time }) => `${shot} ${time}` },
);

const EDITS: readonly ((text: string) => string)[] = [
  (text) => text.replace('f/16', 'f/13'),
  (text) => `# on top\n${text}`,
  (text) => text.replace(/^( +- \{ .*says: .*) \}(?=\r?$)/m, '$1, answer: so be it }'),
  (text) => text.replace('  still:', '  extra: { aperture: f/8 }\n  still:'),
];

const saidIn = (text: string): readonly string[] =>
  Object.entries(parse(text).shots).flatMap(([shot, value]) =>
    ((value as { review?: { says: string; by?: string }[] }).review ?? []).map(
      ({ says, by }) => `${shot} ${by ?? ''} ${says}`,
    ),
  );

describe('random reviews in random plans that are edited meanwhile', () => {
  it('lose nothing, double nothing and keep every remark', () => {
    fc.assert(
      fc.property(
        ...[comments, fc.constantFrom('\n', '\r\n')],
        fc.subarray([...EDITS]),
        (given, eol, edits) => {
          const plan = PLAN.replaceAll('\n', eol);
          const text = textOf(...given);
          const first = brought(text, plan).text;
          const known = given.filter(({ shot }) => shot !== 'none');
          const expected = known.map(({ shot, by, says }) => `${shot} ${by ?? ''} ${says.trim()}`);
          expect([...saidIn(first)].sort()).toEqual([...expected, 'wide ab Nearer'].sort());
          const edited = edits.reduce((now, edit) => edit(now), first);
          const second = brought(text, edited);
          expect(second.text).toBe(edited);
          expect(second.done).toEqual([]);
          for (const remark of ['# the quick one', '# sharp', '# short', '# so far', '# on paper'])
            expect(first.split(remark)).toHaveLength(2);
        },
      ),
      { numRuns: manyRuns(60) },
    );
  });
});

describe('any text', () => {
  it('is a review or refused with a reason, and leaves no trace', () => {
    const piece = fc.oneof(
      fc.constantFrom('__proto__', 'constructor', 'plan', 'saved', 'comments', AT, 'drift'),
      fc.string(),
      fc.integer(),
      fc.constant(null),
    );
    const { tree } = fc.letrec<{ tree: unknown }>((tie) => ({
      tree: fc.oneof(
        { maxDepth: 3 },
        piece,
        fc.array(tie('tree'), { maxLength: 3 }),
        fc
          .array(fc.tuple(piece.map(String), tie('tree')), { maxLength: 4 })
          .map((pairs) => Object.fromEntries(pairs)),
      ),
    }));
    const text = fc.oneof(
      fc.string().map((more) => `lamella review 1\n${more}`),
      tree.map((more) => `lamella review 1\n${JSON.stringify(more)}`),
      tree.map((more) => textOf({ ...COMMENT, says: more, by: more }, more as object)),
      fc.string().map((says) => textOf({ ...COMMENT, says })),
    );
    fc.assert(
      fc.property(text, (given) => {
        const read = readBack(given);
        if (!read.ok) expect(read.whys.join()).not.toBe('');
        else {
          const made = read.lay(PLAN, NAME)!;
          parse(made.text);
          expect(brought(given, made.text).text).toBe(made.text);
        }
        expect(({} as Record<string, unknown>).polluted).toBeUndefined();
      }),
      { numRuns: manyRuns(200) },
    );
  });
});
