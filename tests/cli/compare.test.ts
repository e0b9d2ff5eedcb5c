/** `lamella compare` and `lamella sheet` on files and on revisions of a real repository. */
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { JSDOM } from 'jsdom';
import { describe, expect, it } from 'vitest';
import { runCommandLine } from '../../server/command-line.ts';
import { createCore } from '../../shared/core/core.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { ALL_RULES } from '../../shared/rules/registry.ts';
import { changed } from '../support/plans.ts';
import { folderWith } from './support.ts';

async function run(cwd: string, ...args: string[]) {
  let [out, err] = ['', ''];
  const terminal = {
    cwd,
    colour: false,
    out: (text: string) => {
      out += text;
    },
    err: (text: string) => {
      err += text;
    },
    input: async () => new Uint8Array(),
    progress: () => undefined,
    onInterrupt: () => () => undefined,
  };
  const status = await runCommandLine(args, {
    terminal,
    createCore,
    rules: ALL_RULES,
    sheetScript: () => '',
    reviewScript: () => '',
    createClipReader: () => {
      throw new Error('no clips here');
    },
  });
  return { status, out, err };
}

const NAME = 'plan.shootplan.yaml';
const CLOSED = changed(EXAMPLE_PLAN, { 'shots/frost/aperture': 'f/10' });
const BROKEN = changed(EXAMPLE_PLAN, { 'shots/frost/rig': 'bensh' });

describe('two plans', () => {
  it('text, Markdown and JSON say the same change', async () => {
    const cwd = folderWith({ 'old.shootplan.yaml': EXAMPLE_PLAN, 'new.shootplan.yaml': CLOSED });
    const files = ['old.shootplan.yaml', 'new.shootplan.yaml'];
    const text = await run(cwd, 'compare', ...files);
    expect(text).toMatchObject({ status: 0, err: '' });
    expect(text.out).toContain('aperture  f/8 → f/10');
    const markdown = await run(cwd, 'compare', ...files, '--format', 'md');
    expect(markdown.out).toContain('| aperture | f/8 | f/10 |');
    const json = JSON.parse((await run(cwd, 'compare', ...files, '--format', 'json')).out);
    expect(json).toMatchObject({
      version: 1,
      before: 'old.shootplan.yaml',
      after: 'new.shootplan.yaml',
      shots: [{ shot: 'frost', fields: [{ path: 'aperture', before: 'f/8', after: 'f/10' }] }],
    });
  });

  it('are one page with both traced frames, written to a file', async () => {
    const cwd = folderWith({ 'old.shootplan.yaml': EXAMPLE_PLAN, 'new.shootplan.yaml': CLOSED });
    const files = ['old.shootplan.yaml', 'new.shootplan.yaml'];
    const { status, out, err } = await run(
      ...([cwd, 'compare', ...files, '--format', 'html', '-o', 'c.html'] as const),
    );
    expect({ status, out, err }).toEqual({
      ...{ status: 0, out: '', err: 'The comparison was written to c.html.\n' },
    });
    const { document } = new JSDOM(readFileSync(path.join(cwd, 'c.html'), 'utf8')).window;
    const frames = [...document.querySelectorAll('.shot img')];
    expect(frames.map((frame) => frame.getAttribute('alt'))).toEqual([
      'Frame before',
      'Frame after',
    ]);
    for (const frame of frames)
      expect(frame.getAttribute('src')).toMatch(/^data:image\/png;base64,iVBORw0KGgo/);
    const style = document.querySelector('style')!.textContent;
    const hash = createHash('sha256').update(style!).digest('base64');
    expect(document.querySelector('meta[http-equiv]')!.getAttribute('content')).toContain(
      `style-src 'sha256-${hash}'`,
    );
  });

  it('never over a plan', async () => {
    const cwd = folderWith({ [NAME]: EXAMPLE_PLAN });
    const { status, err } = await run(cwd, 'compare', NAME, NAME, '-o', NAME);
    expect(status).toBe(2);
    expect(err).toContain('is the name of a plan, and would overwrite it.');
  });

  it('exit with 1 where a finding at or above the bar is new, not where one is gone', async () => {
    const cwd = folderWith({
      'sound.shootplan.yaml': EXAMPLE_PLAN,
      'broken.shootplan.yaml': BROKEN,
      'dark.shootplan.yaml': changed(EXAMPLE_PLAN, { 'shots/frost/aperture': 'f/11' }),
    });
    const status = async (...args: string[]) => (await run(cwd, 'compare', ...args)).status;
    expect(await status('sound.shootplan.yaml', 'broken.shootplan.yaml')).toBe(1);
    expect(await status('broken.shootplan.yaml', 'sound.shootplan.yaml')).toBe(0);
    expect(await status('sound.shootplan.yaml', 'dark.shootplan.yaml')).toBe(0);
    expect(await status('sound.shootplan.yaml', 'dark.shootplan.yaml', '--fail-on', 'note')).toBe(
      1,
    );
  });

  it.each([
    [['compare', NAME], /takes two plans/],
    [['compare', 'a.txt', NAME], /not a plan/],
    [['compare', 'gone.shootplan.yaml', NAME], /no such file/],
    [['compare', '--git', 'HEAD', NAME, NAME], /takes one plan/],
  ])('%s is told what is wrong', async (args, words) => {
    const { status, err } = await run(folderWith({ [NAME]: EXAMPLE_PLAN }), ...args);
    expect(status).toBe(2);
    expect(err).toMatch(words);
  });
});

describe('with a revision', () => {
  const git = (cwd: string, ...args: string[]) =>
    execFileSync(
      'git',
      [
        '-c',
        'user.name=a',
        '-c',
        'user.email=a@example.invalid',
        '-c',
        'commit.gpgsign=false',
        ...args,
      ],
      {
        cwd,
        stdio: 'pipe',
        env: { ...process.env, GIT_CONFIG_GLOBAL: '/dev/null', GIT_CONFIG_SYSTEM: '/dev/null' },
      },
    );

  /** A repository with one commit of the example's plan that takes its lights from another file. */
  function repository(): string {
    const lights = /^lights:\n(?: {2}.*\n)+/m.exec(EXAMPLE_PLAN)![0];
    const cwd = folderWith({
      [`plans/${NAME}`]: EXAMPLE_PLAN.replace(lights, '').replace(
        'mains:',
        'use: [../kit.shootplan.yaml]\nmains:',
      ),
      'kit.shootplan.yaml': `shootplan: 1\n\n${lights}`,
    });
    git(cwd, 'init', '-q', '-b', 'main');
    git(cwd, 'add', '.');
    git(cwd, 'commit', '-q', '-m', 'first');
    return cwd;
  }

  it('says nothing where nothing changed', async () => {
    const cwd = repository();
    expect(await run(cwd, 'compare', '--git', 'HEAD', `plans/${NAME}`)).toEqual({
      status: 0,
      out: 'The plans are identical.\n',
      err: '',
    });
  });

  it('compares all that the plan uses, as it was then, from any folder', async () => {
    const cwd = repository();
    const kit = path.join(cwd, 'kit.shootplan.yaml');
    writeFileSync(kit, readFileSync(kit, 'utf8').replace('12000 cd/m2', '3000 cd/m2'));
    for (const [folder, file] of [
      [cwd, `plans/${NAME}`],
      [path.join(cwd, 'plans'), NAME],
    ] as const) {
      const { out } = await run(folder, 'compare', '--git', 'main', file);
      expect(out).toContain('luminance  12000 cd/m2 → 3000 cd/m2');
      expect(out).toMatch(/exposure +\S+ stops \([^)]*\) → −\d/);
    }
    const page = await run(cwd, 'compare', '--git', 'main', `plans/${NAME}`, '--format', 'html');
    const { document } = new JSDOM(page.out).window;
    expect([...document.querySelectorAll('.plan dd')].map((name) => name.textContent)).toEqual([
      `main:plans/${NAME}`,
      `plans/${NAME}`,
    ]);
    expect(document.querySelector('.beside')!.textContent).toContain('12000 cd/m23000 cd/m2');
  });

  it.each([
    ['nowhere', /no revision nowhere/],
    ['--output=x', /no revision --output=x/],
    ['HEAD:plans', /no revision/],
  ])('the revision %s is told not to be there', async (revision, words) => {
    const { status, err } = await run(
      repository(),
      'compare',
      `--git=${revision}`,
      `plans/${NAME}`,
    );
    expect(status).toBe(2);
    expect(err).toMatch(words);
  });

  it('a file that was not there then is told so; so is a folder without a repository', async () => {
    const cwd = repository();
    writeFileSync(path.join(cwd, 'new.shootplan.yaml'), EXAMPLE_PLAN);
    expect((await run(cwd, 'compare', '--git', 'HEAD', 'new.shootplan.yaml')).err).toMatch(
      /not there at HEAD/,
    );
    const bare = folderWith({ [NAME]: EXAMPLE_PLAN });
    expect((await run(bare, 'compare', '--git', 'HEAD', NAME)).err).toMatch(
      /not in a git repository/,
    );
  });

  it.each(['.', 'ext::sh -c touch%20pwned', 'ssh://nowhere.invalid/x'])(
    'a commit that is not there whole is not fetched, whatever its remote %s would run',
    async (url) => {
      const cwd = repository();
      const pwned = path.join(cwd, 'pwned');
      const blob = git(cwd, 'rev-parse', `HEAD:plans/${NAME}`).toString().trim();
      rmSync(path.join(cwd, '.git/objects', blob.slice(0, 2), blob.slice(2)));
      for (const [key, value] of [
        ['core.repositoryFormatVersion', '1'],
        ['extensions.partialClone', 'origin'],
        ['remote.origin.promisor', 'true'],
        ['remote.origin.url', url],
        ['remote.origin.uploadpack', `touch ${pwned}; git-upload-pack`],
        ['core.sshCommand', `touch ${pwned};`],
        ['core.fsmonitor', `touch ${pwned};`],
        ['protocol.allow', 'always'],
      ] as const)
        git(cwd, 'config', key, value);
      const { status, err } = await run(cwd, 'compare', '--git', 'HEAD', `plans/${NAME}`);
      expect(existsSync(pwned)).toBe(false);
      expect(status).toBe(2);
      expect(err).toMatch(/not there at HEAD/);
      // Git by itself would have run it.
      if (url === '.') {
        expect(() => git(cwd, 'cat-file', 'blob', blob)).toThrow();
        expect(existsSync(pwned)).toBe(true);
      }
    },
  );

  it('without git it says that git is missing', async () => {
    const path_ = process.env.PATH;
    process.env.PATH = '/nowhere';
    try {
      const { status, err } = await run(
        folderWith({ [NAME]: EXAMPLE_PLAN }),
        'compare',
        '--git',
        'HEAD',
        NAME,
      );
      expect(status).toBe(2);
      expect(err).toMatch(/git is not installed/);
    } finally {
      process.env.PATH = path_;
    }
  });
});

describe('the sheet', () => {
  it('is written where it is asked for, as its name says, else to standard output', async () => {
    const cwd = folderWith({ [NAME]: EXAMPLE_PLAN });
    expect(await run(cwd, 'sheet', NAME, '-o', 'sheet.html')).toEqual({
      status: 0,
      out: '',
      err: 'The sheet was written to sheet.html.\n',
    });
    expect(readFileSync(path.join(cwd, 'sheet.html'), 'utf8')).toMatch(/^<!doctype html>/);
    await run(cwd, 'sheet', NAME, '--output', 'sheet.md');
    expect(readFileSync(path.join(cwd, 'sheet.md'), 'utf8')).toMatch(/^# Winter Window\n/);
    expect((await run(cwd, 'sheet', NAME, '--format', 'md')).out).toMatch(/^# Winter Window\n/);
    expect((await run(cwd, 'sheet', NAME, '--lengths', 'inches')).out).toContain(' in</');
  });

  it('never takes a plan’s place, and says where it can’t be written', async () => {
    const cwd = folderWith({ [NAME]: EXAMPLE_PLAN });
    expect((await run(cwd, 'sheet', NAME, '-o', 'other.shootplan.yaml')).status).toBe(2);
    expect(existsSync(path.join(cwd, 'other.shootplan.yaml'))).toBe(false);
    const { status, err } = await run(cwd, 'sheet', NAME, '-o', 'no/such/folder/x.html');
    expect(status).toBe(2);
    const said = 'there is no folder no/such/folder';
    expect(err).toBe(`lamella: no/such/folder/x.html can't be written: ${said}.\n`);
    expect((await run(cwd, 'sheet', NAME, '-o', `${NAME}/x.html`)).err).toContain(
      'is not a folder',
    );
    expect((await run(cwd, 'sheet', NAME, '-o', '.')).err).toContain('it is a folder');
  });
});
