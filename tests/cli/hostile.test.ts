/** A plan that wants to act on whatever shows it: nothing in any output of any command does. */
import MarkdownIt from 'markdown-it';
import { expect, test } from 'vitest';
import { createCore } from '../../shared/core/core.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { folderWith, lamella } from './support.ts';

/** Escapes of a terminal (ECMA-48), NUL, and marks that turn text (Unicode, UAX 9), in YAML's own way. */
const ACTS = String.raw`\e[31m\e]8;;http://h.example\a\0\x9b2J\u202e\u2066\b\r\n`;
const SAYS = `=1+1 @hostile http://www.h.example www.h.example ![i](http://h.example/i.png) [l](javascript:x) <img src=x> #12;=cmd() ;@SUM(1); ＝1+1;\uff20SUM(1)`;
const RAW = '\u202e\u2066\u200f';
const NAME = `${RAW}@hostile\u001b[31m=1;=2.shootplan.yaml`;
const PLAN = `${EXAMPLE_PLAN.replace(/^title:.*$/m, `title: "${ACTS} ${SAYS}"`)}
edit:
  rate: 25 fps
  cuts:
    one: { shot: skin, duration: 1 s, about: "${SAYS}${ACTS}", grade: "${SAYS}", clip: "x${ACTS}.mov" }
    two: { shot: skin, duration: 1 s, about: "=2${ACTS}", grade: "\\t=3" }
clips:
  skin:
    - { file: "x${ACTS}.mov", take: 1, note: "${SAYS}${ACTS}" }
nonsense${RAW}: "${ACTS}"
${RAW}: ${SAYS}
`;
const OTHER = PLAN.replace('f/8', 'f/11')
  .replace(`title: "${ACTS}`, `title: "${ACTS}x`)
  .replace('about: "', 'about: "y');
const DAY = `lamella day 1\n${JSON.stringify({
  plan: NAME,
  saved: '2027-03-02T10:41:07Z',
  takes: [
    {
      shot: 'skin',
      take: 7,
      at: '2027-03-02T10:41:07Z',
      clip: `c\u001b[31m${RAW}.mp4`,
      keep: true,
      note: `${SAYS}\u001b]0;x\u0007\u0000`,
    },
    { shot: `s\u001b[31m${RAW}`, take: 1, at: '2027-03-02T10:41:07Z', keep: true },
  ],
})}`;

const RUNS: readonly (readonly string[])[] = [
  ['check', NAME],
  ['check', NAME, '--format', 'json'],
  ['check', NAME, '--format', 'sarif'],
  ['check', NAME, '--format', 'github'],
  ['check', NAME, '--fix', '--dry-run'],
  ['figures', NAME],
  ['figures', NAME, '--format', 'json'],
  ['figures', NAME, '--shot', NAME],
  ['sheet', NAME, '--format', 'md'],
  ['sheet', NAME],
  ['timeline', NAME, '-o', `no\u001b[31m/${NAME}.html`],
  ['timeline', NAME, '-o', `${NAME}.html`],
  ['frame', NAME, '--shot', NAME],
  ['frame', NAME, '--shot', 'skin', '--width', NAME],
  ['timeline', NAME],
  ['timeline', NAME, '--format', 'csv'],
  ['compare', NAME, `b${NAME}`],
  ['compare', NAME, `b${NAME}`, '--format', 'md'],
  ['compare', NAME, `b${NAME}`, '--format', 'json'],
  ['compare', NAME, `b${NAME}`, '--format', 'html'],
  ['compare', NAME, '--git', `HEAD${NAME}`],
  ['clips', NAME],
  ['clips', NAME, '--format', 'json'],
  ['clips', NAME, '--test-clip', NAME, '--shot', 'skin'],
  ['clips', NAME, '--test-clip', `gone${NAME}`, '--shot', 'skin'],
  ['solve', NAME, '--shot', 'skin'],
  ['solve', NAME, '--shot', 'skin', '--format', 'json'],
  ['measure', NAME],
  ['measure', NAME, '--lens', NAME],
  ['bring-back', 'day.txt', NAME],
  ['bring-back', `none${NAME}`, NAME],
  ['bug-report', NAME],
  ['explain', NAME],
  ['new', '-o', NAME],
  ['new', '--lens', NAME, '-o', 'n.shootplan.yaml'],
  ['check', `gone${NAME}`],
  ['check', '--root', NAME, NAME],
  ['check', `--${NAME}`],
  ['check', 'gone\n::error::x.shootplan.yaml'],
  ['check', `${'x'.repeat(300)}.shootplan.yaml`],
  ['check', 'a\0.shootplan.yaml'],
  ['figures', 'gone\n::error::x.shootplan.yaml'],
  ['figures', NAME, '--shot', 'x\n::error::x'],
  [NAME],
];

/** What may be in an output: all but controls and marks of direction (Unicode, UAX 9, table 4). */
const ACTIVE = /(?![\t\n])[\p{Cc}\p{Bidi_Control}\u2028\u2029]/u;

test.each(RUNS)('%j %j %j %j', async (...args) => {
  const cwd = folderWith({ [NAME]: PLAN, [`b${NAME}`]: OTHER, 'day.txt': DAY });
  const { status, out, err } = await lamella(cwd, args.filter(Boolean), { createCore });
  expect([0, 1, 2]).toContain(status);
  expect(out + err).not.toBe('');
  const isCsv = args.includes('csv');
  for (const said of [out, err]) {
    const found = ACTIVE.exec(isCsv ? said.replaceAll('\r\n', '\n') : said);
    expect(found && said.slice(Math.max(0, found.index - 80), found.index + 20)).toBe(null);
  }
  // A name with a break in it doesn't begin a line: pipelines run commands that begin one.
  expect(err).not.toMatch(/^::/m);
  // The system's own words are for programmers.
  expect(out + err).not.toMatch(/null bytes|ENAMETOOLONG/);
  // The whole plan is in it, however it is broken.
  if (args.includes('json') || args.includes('sarif')) expect(JSON.parse(out)).toBeTypeOf('object');
});

test('Markdown names nobody, links nowhere and shows no picture', async () => {
  const cwd = folderWith({ [NAME]: PLAN, [`b${NAME}`]: OTHER });
  const markdown = new MarkdownIt({ html: true, linkify: true });
  for (const args of [
    ['sheet', NAME, '--format', 'md'],
    ['compare', NAME, `b${NAME}`, '--format', 'md'],
    ['bug-report', NAME],
  ]) {
    const { out } = await lamella(cwd, args, { createCore });
    const html = markdown.render(out);
    expect(html).not.toMatch(/<(a|img|script)\b/);
    // Of GitHub's flavour: whom `@` names is told, and `#` with a number or `www.` is a link.
    const outside = html.replace(/<(code|pre)>[\s\S]*?<\/\1>/g, '').replace(/&#?\w+;/g, '');
    expect(/(?<![\w\u200b])(@\w+|#\d+|www\.\w+)/.exec(outside)?.[0]).toBe(undefined);
  }
});

test('no cell of a CSV begins a formula, whichever sign parts them', async () => {
  const cwd = folderWith({ [NAME]: PLAN });
  const { out } = await lamella(cwd, ['timeline', NAME, '--format', 'csv'], { createCore });
  expect(out).toContain('SUM(1)');
  // OWASP, CSV Injection: = + - @, their full-width signs, tab and carriage return (from memory).
  for (const separator of [/[,\r\n]/, /[;\r\n]/, /[\t\r\n]/])
    for (const cell of out.split(separator))
      expect(cell).not.toMatch(/^[\s"]*[=+@\uff1d\uff0b\uff0d\uff20]/);
});
