/** What the README and its pages show is what the program does: plans check, excerpts are printed, keys exist. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { COMMANDS as PROGRAM } from '../../server/command-line.ts';
import type { SolvedShot } from '../../shared/api/solved.ts';
import type { ClipFacts } from '../../shared/clips/facts.ts';
import { clipJson } from '../../shared/report/clips.ts';
import { comparePlans } from '../../shared/report/compare/compare.ts';
import { compareReport } from '../../shared/report/json.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { lamellaHere, lamellaIn } from '../support/command-line.ts';
import { withEdit } from '../support/edits.ts';
import { changed, coreWith, findingsOf, PLAN } from '../support/plans.ts';
import { ROOT, read, tracked } from './support/project.ts';

const README = read('README.md');
const JSON_PAGE = read('shared/report/JSON.md');
const COMMANDS = read('server/CLI.md');
/** Pages that the README itself is, and the one that takes its place in the packed extension. */
/** Shown by the editor only. */
const WALKTHROUGH = 'client/walkthrough/';
/** What is for those who work on Lamella is linked from DEVELOPERS.md. */
const NOT_LINKED = ['README.md', 'client/PAGE.md', 'tests/mutants/README.md'];

const LAMELLA = path.join(ROOT, 'dist/lamella.cjs');

const run = (...args: readonly string[]): string =>
  spawnSync(process.execPath, [LAMELLA, ...args], { cwd: ROOT, encoding: 'utf8' }).stdout;

/** Blocks of code behind a marking comment, with what the comment says. */
const marked = (mark: string): readonly (readonly [said: string, text: string])[] =>
  [
    ...README.matchAll(
      new RegExp(`<!-- ${mark}:? ?(.*?) -->\\n\`\`\`\\w*\\n([\\s\\S]*?)\`\`\``, 'g'),
    ),
  ].map(([, said = '', text = '']) => [said, text] as const);

describe('its beginning', () => {
  it('the page is short', () => {
    expect(README.trimEnd().split('\n').length).toBeLessThanOrEqual(200);
  });

  it('the first paragraph says the job: for what, from what, what comes of it', () => {
    const first =
      README.split(/^# Lamella$/m)[1]
        ?.trim()
        .split('\n\n')[0]
        ?.replaceAll('\n', ' ') ?? '';
    for (const part of [/plan shots/, /very small/, /YAML/, /depth of field/, /exposure/, /fixes/])
      expect(first).toMatch(part);
    // Nothing but what it does comes before anybody has read that.
    expect(first).not.toMatch(/npm|install|[<[\]|]/);
  });

  it('the first finding shown is one of optics', () => {
    const [[, printed = ''] = []] = marked('printed by');
    expect(printed.split('\n')[0]).toMatch(/ {2}depth-short$/);
  });

  it('every page of reference is one click away', () => {
    for (const page of tracked.filter(
      (file) => file.endsWith('.md') && !NOT_LINKED.includes(file) && !file.startsWith(WALKTHROUGH),
    ))
      expect(README, page).toMatch(new RegExp(`\\]\\(${page}[)#]`));
  });
});

describe('plans', () => {
  const plans = marked('checked');

  it('there is one, and every block of YAML is marked', () => {
    expect(plans.length).toBeGreaterThan(0);
    expect(README.match(/```ya?ml/g)).toHaveLength(plans.length);
  });

  it.each(plans)('%s', (_, text) => {
    const core = coreWith(text);
    const loud = core.findings(PLAN).filter(({ severity }) => severity !== 'hint');
    expect(loud.map(({ rule, what }) => `${rule}: ${what}`)).toEqual([]);
    // Nothing is left open either: the plan shows a shot that is ready.
    expect(core.state(PLAN)).toEqual({ ready: 1, shots: 1 });
  });

  it('and one that is wrong would be found', () => {
    const [[, text = ''] = []] = plans;
    expect(findingsOf(text.replace('rig: bench', 'rig: bensh')).map(({ rule }) => rule)).toContain(
      'unknown-name',
    );
  });
});

describe('excerpts', () => {
  const excerpts = marked('printed by').map(([command, text]) => [command, text] as const);

  it('there is one', () => {
    expect(excerpts.length).toBeGreaterThan(0);
  });

  it.each(excerpts)('%s prints each part of it', (command, text) => {
    const [program, ...args] = command.split(' ');
    expect(program).toBe('lamella');
    const printed = run(...args).split('\n\n');
    for (const part of text.trim().split('\n\n')) expect(printed).toContain(part);
  });
});

/** First cells of the table behind a comment, and the whole row of each. */
function rowsOf(mark: string): ReadonlyMap<string, string> {
  const table = JSON_PAGE.split(`<!-- ${mark} -->`)[1]?.trim().split('\n\n')[0] ?? '';
  const rows = table.split('\n').slice(2);
  return new Map(rows.map((row) => [/^\| `([^`]+)` \|/.exec(row)?.[1] ?? row, row]));
}

type Json = Readonly<Record<string, unknown>>;

const isRecord = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const plansToShow = (): readonly string[] => {
  const samples = readdirSync(path.join(ROOT, 'samples'));
  const bubble = EXAMPLE_PLAN.replace(
    /\n {2}soap: .*/,
    '\n  soap: { kind: bubble, diameter: 60 mm }',
  );
  const level = EXAMPLE_PLAN.replace('orientation: upright', 'orientation: level');
  const thick = EXAMPLE_PLAN.replace('lifetime: 40 s', 'lifetime: 40 s, thickness: 80 to 700 nm');
  const measured = EXAMPLE_PLAN.replace(
    '    field: 60 mm\n',
    '    field: 60 mm\n    measured: { field: 59 mm }\n',
  );
  return [
    EXAMPLE_PLAN,
    measured,
    bubble,
    level,
    thick,
    ...samples.filter((name) => name.endsWith('.yaml')).map((name) => read(`samples/${name}`)),
  ];
};

describe('keys of the JSON', () => {
  it('figures: every key is documented, and every documented one is there', () => {
    const documented = rowsOf('keys of figures');
    const found = new Set(['version', 'file', 'shots', 'recording', 'edit', 'day']);
    const inside = new Map<string, Set<string>>([
      ['recording', new Set()],
      ['edit', new Set()],
      ['day', new Set()],
    ]);
    for (const text of plansToShow())
      collectKeys(coreWith(text).dayFigures(PLAN), inside.get('day')!);
    for (const text of plansToShow())
      collectKeys(coreWith(text).recording(PLAN), inside.get('recording')!);
    collectKeys(
      coreWith(withEdit(['one: { shot: skin, duration: 4 s }'])).editFigures(PLAN),
      inside.get('edit')!,
    );
    for (const text of plansToShow())
      for (const figures of coreWith(text).figures(PLAN).values())
        for (const [key, value] of Object.entries(figures)) {
          if (key === 'depthMm') {
            for (const part of Object.keys(value as object)) found.add(`${key}.${part}`);
            continue;
          }
          found.add(key);
          // Held by the names of figures.
          if (key === 'notKnown' || key === 'bounds') continue;
          if (key === 'widenedBy') {
            const keys = inside.get(key) ?? new Set();
            inside.set(key, keys);
            collectKeys(Object.values(value as object), keys);
            continue;
          }
          const keys = inside.get(key) ?? new Set();
          inside.set(key, keys);
          collectKeys(value, keys);
        }
    expect([...documented.keys()].sort()).toEqual([...found].sort());
    for (const [key, keys] of inside)
      for (const part of keys) expect(documented.get(key), key).toContain(`\`${part}\``);
    // The plans above show what the rarer figures hold.
    for (const key of [
      'lossByPart',
      'neededLight',
      'bubbleImages',
      'filmColours',
      'recording',
      'edit',
      'day',
    ])
      expect(inside.get(key)?.size, key).toBeGreaterThan(0);
  });

  it('figures: the command prints the keys that stand around them', () => {
    const printed = JSON.parse(
      run('figures', 'samples/watch-movement.shootplan.yaml', '--format', 'json'),
    );
    expect(Object.keys(printed)).toEqual(['version', 'file', 'shots', 'recording', 'edit', 'day']);
  });

  it('clips: every key is documented, and every documented one is there', () => {
    // None of the clips is there: what is read of one is held by its type, below.
    const folder = mkdtempSync(path.join(os.tmpdir(), 'lamella-readme-'));
    const plan = path.join(folder, 'a.shootplan.yaml');
    writeFileSync(plan, `${EXAMPLE_PLAN}\nclips: { frost: [{ file: a.mp4 }] }\n`);
    const { version: _, files, ...printed } = JSON.parse(run('clips', plan, '--format', 'json'));
    rmSync(folder, { recursive: true });
    expect(files[0].findings[0].rule).toBe('clip-not-found');
    const documented = rowsOf('keys of clips');
    const found = new Set<string>();
    walk({ ...printed, cuts: [1], notAsked: ['b.mp4'] }, '', documented, found);
    expect([...found].sort()).toEqual([...documented.keys()].sort());
    const facts: ClipFacts = {
      bytes: 1,
      size: { width: 1, height: 1 },
      rotation: 0,
      rate: null,
      codec: '',
      durationS: 1,
      bitsPerS: 1,
      shutterS: null,
      iso: null,
      whiteBalance: null,
      created: null,
    };
    for (const key of Object.keys(clipJson(facts)))
      expect(documented.get('clips[].read')).toContain(`\`${key}\``);
  });

  it('check: every key is documented, and every documented one is there', async () => {
    const printed: Json = JSON.parse(run('check', 'samples', '--format', 'json'));
    const documented = rowsOf('keys of check');
    const found = new Set<string>();
    walk(printed, '', documented, found);
    // Two thirds of a stop closed: the exposure is off by more or less, as the iris works up close.
    const unsure = changed(EXAMPLE_PLAN, { 'shots/frost/aperture': 'f/10' });
    const ran = await lamellaHere(['check', 'a.shootplan.yaml', '--format', 'json'], {
      'a.shootplan.yaml': unsure,
    });
    walk(JSON.parse(ran.out) as Json, '', documented, found);
    expect([...found].sort()).toEqual([...documented.keys()].sort());
    for (const part of ['file', 'range', 'message'])
      expect(documented.get('files[].findings[].related[]')).toContain(`\`${part}\``);
    for (const part of ['title', 'sideEffects'])
      expect(documented.get('files[].findings[].fixes[]')).toContain(`\`${part}\``);
  });
});

describe('keys of the other commands', () => {
  it('every command that prints JSON has its table', () => {
    const printing = PROGRAM.filter(({ options }) => options.format?.oneOf?.includes('json'));
    expect(printing.length).toBeGreaterThan(5);
    for (const { name } of printing)
      expect(rowsOf(`keys of ${name}`).size, name).toBeGreaterThan(0);
  });

  it('solve: every key is documented, and every documented one is there', () => {
    const documented = rowsOf('keys of solve');
    // Only where uncertain values matter, or a search ended at its limit: their type holds them.
    const seldom = ['holds', 'cutShort'] as const satisfies readonly (keyof SolvedShot)[];
    const found = new Set<string>(['version', 'file', ...seldom]);
    const parts = new Set<string>();
    const changes: readonly Readonly<Record<string, string>>[] = [
      { 'shots/frost/iso': '200' },
      { 'subjects/frost-plate/depth': '60 mm', 'shots/frost/field': '40 mm' },
    ];
    for (const change of changes) {
      const solved = coreWith(changed(EXAMPLE_PLAN, change)).solve(PLAN, 'frost')!;
      const { edits: _, ...said } = solved;
      // Edits are for editors.
      const own = solved.changes.map(({ edits: _own, ...rest }) => rest);
      for (const key of Object.keys(said)) found.add(key);
      collectKeys({ ...said, changes: own, notKnown: {} }, parts);
    }
    const roots = new Set([...documented.keys()].map((key) => key.split(/[.[]/)[0]));
    expect([...found].sort()).toEqual([...roots].sort());
    const whole = [...documented.values()].join('\n');
    for (const part of parts) expect(whole).toMatch(new RegExp(`[\`.]${part}[\`.[]`));
  });
});

describe('keys of a comparison', () => {
  it('every key is documented, and every documented one is there', () => {
    const before = changed(EXAMPLE_PLAN, { 'shots/frost/iso': '200' });
    const after = changed(EXAMPLE_PLAN, {
      'shots/frost/aperture': 'f/4',
      'shots/frost/iso': '400',
      'shots/frost/rig': null,
      'kit/tubes/tube-20/length': '25 mm',
    })
      .replaceAll('panel', 'lamp')
      .replace('  skin:', '  shine:');
    const found = new Set<string>();
    const documented = rowsOf('keys of compare');
    for (const [old, now] of [
      [before, after],
      [before, before.replace('iso: 200', 'iso: 250')],
      [before, withEdit(['one: { shot: skin, duration: 4 s }'])],
    ] as const) {
      const comparison = comparePlans(coreWith(old).compared(PLAN), coreWith(now).compared(PLAN));
      walk(JSON.parse(compareReport('a', 'b', comparison)), '', documented, found);
    }
    expect([...found].sort()).toEqual([...documented.keys()].sort());
  });
});

function collectKeys(value: unknown, into: Set<string>): void {
  if (Array.isArray(value)) for (const item of value) collectKeys(item, into);
  else if (isRecord(value))
    for (const [key, held] of Object.entries(value)) {
      into.add(key);
      collectKeys(held, into);
    }
}

/** Every way through a value, down to what the table has a row for. */
function walk(
  value: unknown,
  at: string,
  stops: ReadonlyMap<string, string>,
  into: Set<string>,
): void {
  if (at !== '' && stops.has(at)) into.add(at);
  else if (Array.isArray(value)) for (const item of value) walk(item, `${at}[]`, stops, into);
  else if (isRecord(value))
    for (const [key, held] of Object.entries(value))
      walk(held, at === '' ? key : `${at}.${key}`, stops, into);
  else into.add(at);
}

describe('the command line', async () => {
  const commands = [
    'check',
    'figures',
    'sheet',
    'frame',
    'compare',
    'clips',
    'bring-back',
    'format',
    'new',
    'explain',
    'timeline',
  ];
  const helps = commands.map(async (command) => (await lamellaIn(ROOT, [command, '--help'])).out);
  const help = (await Promise.all(helps)).join('\n');
  const options = [...new Set(help.match(/--[a-z][a-z-]+/g))];

  it('has options', () => {
    expect(help).not.toContain('undefined');
    expect(options.length).toBeGreaterThan(3);
  });

  it('has each of them on its page', () => {
    expect(options.filter((option) => !COMMANDS.includes(option))).toEqual([]);
  });

  it('has no option that it does not', () => {
    const known = [...options, '--help', '--version'];
    const README_SECTION = README.split('## Command line')[1]?.split('\n## ')[0] ?? '';
    expect(README_SECTION).toContain('lamella check');
    for (const option of `${COMMANDS}${README_SECTION}`.match(/--[a-z][a-z-]+/g) ?? [])
      expect(known).toContain(option);
  });
});
