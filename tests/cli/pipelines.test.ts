/** The examples of a hook and a workflow, run as far as they can be without the service. */
import { execFileSync, spawnSync } from 'node:child_process';
import {
  appendFileSync,
  chmodSync,
  copyFileSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed } from '../support/plans.ts';
import { folderWith } from './support.ts';

const ROOT = path.resolve(import.meta.dirname, '../..');
const EXAMPLES = path.join(ROOT, 'samples/pipelines');
const PLAN = 'plan.shootplan.yaml';
const BROKEN = changed(EXAMPLE_PLAN, { 'shots/frost/rig': 'bensh' });

/** A repository with one commit, and `lamella` where programs are looked for. */
function repository() {
  const cwd = folderWith({
    [PLAN]: EXAMPLE_PLAN,
    'a plan with blanks.shootplan.yaml': EXAMPLE_PLAN,
  });
  const bin = folderWith({
    lamella: `#!/bin/sh\nexec "${process.execPath}" "${ROOT}/dist/lamella.cjs" "$@"\n`,
  });
  chmodSync(path.join(bin, 'lamella'), 0o755);
  const env: NodeJS.ProcessEnv = {
    ...process.env,
    PATH: `${bin}${path.delimiter}${process.env.PATH}`,
    GIT_CONFIG_GLOBAL: '/dev/null',
    GIT_CONFIG_SYSTEM: '/dev/null',
    GIT_AUTHOR_NAME: 'a',
    GIT_AUTHOR_EMAIL: 'a@example.invalid',
    GIT_COMMITTER_NAME: 'a',
    GIT_COMMITTER_EMAIL: 'a@example.invalid',
  };
  const git = (...args: string[]) => spawnSync('git', args, { cwd, env, encoding: 'utf8' });
  git('init', '-q', '-b', 'main');
  git('add', '.');
  git('commit', '-q', '-m', 'first');
  return { cwd, env, git };
}

describe('the hook', () => {
  const hooked = () => {
    const made = repository();
    const hooks = path.join(made.cwd, '.git/hooks');
    mkdirSync(hooks, { recursive: true });
    copyFileSync(path.join(EXAMPLES, 'pre-commit'), path.join(hooks, 'pre-commit'));
    return made;
  };

  it('lets a sound plan and other files through', () => {
    const { cwd, git } = hooked();
    appendFileSync(path.join(cwd, PLAN), '# a comment\n');
    writeFileSync(path.join(cwd, 'notes.txt'), 'x');
    git('add', '.');
    expect(git('commit', '-m', 'sound').status).toBe(0);
    expect(git('commit', '--allow-empty', '-m', 'nothing').status).toBe(0);
  });

  it('stops one that can’t work, whatever its name', () => {
    for (const name of [PLAN, 'a plan with blanks.shootplan.yaml']) {
      const { cwd, git } = hooked();
      writeFileSync(path.join(cwd, name), BROKEN);
      git('add', '.');
      const { status, stdout, stderr } = git('commit', '-m', 'broken');
      expect(status, name).not.toBe(0);
      expect(stdout + stderr).toContain('unknown-name');
    }
  });
});

describe('the workflow', () => {
  const workflow = parse(readFileSync(path.join(EXAMPLES, 'workflow.yml'), 'utf8'));
  const steps: readonly { run?: string; uses?: string; with?: Record<string, string> }[] =
    workflow.jobs.check.steps;
  const commands = steps.flatMap(({ run }) => run ?? []);

  it('reads, and asks for no more than to read', () => {
    expect(workflow.permissions).toEqual({ contents: 'read' });
    expect(commands).toHaveLength(3);
    const kept = steps.find(({ uses }) => uses?.startsWith('actions/upload-artifact@'));
    expect(kept?.with).toMatchObject({ path: 'changes/' });
  });

  it('its steps do what they say', () => {
    const { cwd, env, git } = repository();
    const base = git('rev-parse', 'HEAD').stdout.trim();
    writeFileSync(path.join(cwd, PLAN), changed(BROKEN, { 'shots/skin/tilt': '5 deg' }));
    const deep = path.join(cwd, 'a plan with blanks.shootplan.yaml');
    writeFileSync(deep, changed(EXAMPLE_PLAN, { 'shots/skin/tilt': '6 deg' }));
    const summary = path.join(cwd, 'summary.md');
    const [check, compare, pages] = commands.map((command) =>
      spawnSync('bash', ['-e', '-c', command], {
        cwd,
        env: { ...env, BASE: base, GITHUB_STEP_SUMMARY: summary },
        encoding: 'utf8',
      }),
    );
    expect(check!.status).toBe(1);
    expect(check!.stdout).toMatch(/^::error file=plan\.shootplan\.yaml,line=\d+/m);
    // It fails where a finding is new that can't be lived with, and has told of the change.
    expect(compare!.status).not.toBe(0);
    expect(readFileSync(summary, 'utf8')).toContain('| tilt | 4 deg | 5 deg |');
    // A page is one to read, whatever was found.
    expect([pages!.status, pages!.stdout]).toEqual([0, '']);
    expect(readdirSync(path.join(cwd, 'changes')).sort()).toEqual([
      'a plan with blanks.html',
      'plan.html',
    ]);
    expect(readFileSync(path.join(cwd, 'changes/plan.html'), 'utf8')).toContain(
      '<img src="data:image/png;base64,',
    );
    // What can't run is no reason to go on.
    const lost = spawnSync('bash', ['-e', '-o', 'pipefail', '-c', commands[2]!], {
      cwd,
      env: { ...env, BASE: 'HEAD', GIT_DIR: path.join(cwd, 'nowhere') },
      encoding: 'utf8',
    });
    expect(lost.status).not.toBe(0);
  });
});

it('the hook is a script that can be started', () => {
  execFileSync('sh', ['-n', path.join(EXAMPLES, 'pre-commit')]);
});
