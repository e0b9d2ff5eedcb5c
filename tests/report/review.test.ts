/** Comments of a review in the plan: typed with completion, noted until answered, on the sheet. */
import { JSDOM } from 'jsdom';
import { describe, expect, it } from 'vitest';
import { markdownText } from '../../shared/report/document/markdown.ts';
import { sheetDocument } from '../../shared/report/sheet/document.ts';
import { sheetPage } from '../../shared/report/sheet/html.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { Say } from '../../shared/say/say.ts';
import { offeredAt } from '../assist/support/completing.ts';
import { changed, coreWith, findingsOf, PLAN } from '../support/plans.ts';

const REVIEW = `
      - { by: rv, time: 2027-03-02T10:41:07Z, says: "Could <b>this</b> be wider?", answer: No room. }
      - by: rv
        says: |
          The edge is soft.
          Stop down?
      - { says: Nearer }   # on paper
`;
const REVIEWED = EXAMPLE_PLAN.replace(/^ {2}frost:\n/m, `  frost:\n    review:${REVIEW}`);

/** Planted: each comment that waits, on its own line and on no other. */
describe('a comment', () => {
  const found = findingsOf(REVIEWED).filter(({ rule }) => rule === 'comment-unanswered');

  it('is a note where it stands until it has an answer', () => {
    const lines = REVIEWED.split('\n');
    expect(
      found.map(({ severity, shot, what, range }) => [
        ...[severity, shot, what, lines[range.start.line]?.trim()],
      ]),
    ).toEqual([
      ['note', 'frost', 'rv comments: The edge is soft. Stop down?', 'says: |'],
      ['note', 'frost', 'A reviewer comments: Nearer.', '- { says: Nearer }   # on paper'],
    ]);
  });

  it('changes nothing else: no other finding, no figure, no state of a shot', () => {
    const others = findingsOf(REVIEWED).filter(({ rule }) => rule !== 'comment-unanswered');
    const before = findingsOf(EXAMPLE_PLAN);
    expect(others.map(({ rule, what }) => [rule, what])).toEqual(
      before.map(({ rule, what }) => [rule, what]),
    );
    const [with_, without] = [coreWith(REVIEWED), coreWith(EXAMPLE_PLAN)];
    expect(with_.figures(PLAN).get('frost')).toEqual(without.figures(PLAN).get('frost'));
    const states = (core: typeof with_) => core.sheet(PLAN).shots.map(({ state }) => state);
    expect(states(with_)).toEqual(states(without));
  });

  it('can be accepted like any other note', () => {
    const accepted = changed(REVIEWED, {
      'shots/frost/allow': '{ comment-unanswered: { because: asked on the day } }',
    });
    const rules = findingsOf(accepted).map(({ rule }) => rule);
    expect(rules).not.toContain('comment-unanswered');
    expect(rules).not.toContain('allow-unused');
  });

  it('is no note where its answer can not be read: that is said instead', () => {
    const text = changed(EXAMPLE_PLAN, { 'shots/frost/review': '[{ says: a, answer: [b] }]' });
    expect(findingsOf(text).map(({ rule }) => rule)).not.toContain('comment-unanswered');
    expect(findingsOf(text).filter(({ severity }) => severity === 'error')).toHaveLength(1);
  });
});

describe('the sheet', () => {
  const sheet = coreWith(REVIEWED).sheet(PLAN);

  it('has comments under their shot, with answers, and not once more as findings', () => {
    const html = sheetPage(sheet, { say: new Say() }, 'sha256-x');
    const { document } = new JSDOM(html).window;
    const blocks = [...document.querySelectorAll('.shot .block')].filter(
      (block) => block.querySelector('h3')?.textContent === 'Comments',
    );
    expect(blocks).toHaveLength(1);
    const items = [...blocks[0]!.querySelectorAll('.limits > li')];
    expect(items.map(({ textContent }) => textContent?.replace(/\s+/g, ' '))).toEqual([
      'rv, 2027-03-02: Could <b>this</b> be wider?Answer: No room.',
      'rv: The edge is soft. Stop down? No answer yet.',
      'NearerNo answer yet.',
    ]);
    expect(document.querySelectorAll('b')).toHaveLength(0);
    expect(document.body.textContent).not.toContain('comments:');
  });

  it('has them in Markdown too', () => {
    const markdown = markdownText(sheetDocument(sheet, new Say()));
    expect(markdown).toContain('### Comments');
    expect(markdown).toContain('No room.');
    expect(markdown.replaceAll('\\<', '')).not.toContain('<b>');
  });

  it('has an answer as soon as it is written', () => {
    const core = coreWith(REVIEWED);
    core.sheet(PLAN);
    core.give(PLAN, REVIEWED.replace('says: Nearer }', 'says: Nearer, answer: Yes. }'));
    const [frost] = core.sheet(PLAN).shots;
    expect(frost!.review.map(({ answer }) => answer)).toEqual(['No room.', null, 'Yes.']);
  });
});

describe('completion', () => {
  const labels = (marked: string): string[] => offeredAt(marked).items.map(({ label }) => label);

  it('offers the key and what a comment has', () => {
    const inShot = (text: string) => EXAMPLE_PLAN.replace(/^ {2}frost:\n/m, `  frost:\n${text}`);
    expect(labels(inShot('    |\n'))).toContain('review');
    expect(labels(inShot('    review:\n      - { by: rv, | }\n'))).toEqual(
      expect.arrayContaining(['says', 'time', 'answer']),
    );
  });
});
