/** `lamella clips` over clips that ffmpeg made: what is said, where, and with which status. */
import { execFileSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runCommandLine } from '../../server/command-line.ts';
import { createCore } from '../../shared/core/core.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { ALL_RULES } from '../../shared/rules/registry.ts';
import { lamellaIn } from '../support/command-line.ts';
import { copyClip, makeClip } from '../support/ffmpeg.ts';

const LAMELLA = fileURLToPath(new URL('../../dist/lamella.cjs', import.meta.url));
const H264 = ['-c:v', 'libx264', '-preset', 'ultrafast', '-pix_fmt', 'yuv420p'];
/** As many bits as the setting takes, so that bars don't pass for the thin setting. */
const FULL = { size: '1920x1080', coding: [...H264, '-qp', '6'] };

const folder = mkdtempSync(path.join(os.tmpdir(), 'lamella-clips-'));
const plans = path.join(folder, 'plans');
const card = path.join(folder, 'card');
const at = (...way: readonly string[]): string => path.join(folder, ...way);

const withClips = (...lines: readonly string[]): string =>
  `${EXAMPLE_PLAN}\nclips:\n${lines.join('\n')}\n`;

interface Ran {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

function lamella(...args: readonly string[]): Ran {
  try {
    const out = execFileSync(process.execPath, [LAMELLA, ...args], {
      cwd: plans,
      encoding: 'utf8',
      env: { ...process.env, NO_COLOR: '1' },
    });
    return { status: 0, out, err: '' };
  } catch (cause) {
    const { status, stdout, stderr } = cause as { status: number; stdout: string; stderr: string };
    return { status, out: stdout, err: stderr };
  }
}

beforeAll(() => {
  mkdirSync(at('plans', 'media'), { recursive: true });
  mkdirSync(at('card', 'day'), { recursive: true });
  makeClip(at('plans', 'media', 'good.mp4'), FULL);
  makeClip(at('plans', 'media', 'small.mp4'), { size: '1280x720', coding: H264 });
  makeClip(at('card', 'day', 'more.mov'), FULL);
  copyClip(at('plans', 'media', 'good.mp4'), at('plans', 'media', 'left.mkv'));
  const whole = readFileSync(at('plans', 'media', 'good.mp4'));
  writeFileSync(at('plans', 'media', 'half.mp4'), whole.subarray(0, whole.length / 2));
  writeFileSync(at('plans', 'media', 'code.ts'), 'export const one = 1;\n');
  symlinkSync(at('card', 'day', 'more.mov'), at('plans', 'media', 'link.mov'));
  execFileSync('mkfifo', [at('plans', 'media', 'pipe.mp4')]);
  writeFileSync(
    at('plans', 'plan.shootplan.yaml'),
    withClips(
      '  frost:',
      '    - { file: media/good.mp4, verdict: keep }',
      '    - { file: media/half.mp4 }',
      '    - { file: media/small.mp4, verdict: maybe }',
      '    - { file: media/gone.mp4 }',
      '    - { file: media/link.mov }',
      '    - { file: media/pipe.mp4 }',
      '    - { file: media/none.mp4, verdict: reject }',
      '    - { file: day/more.mov }',
    ),
  );
  writeFileSync(
    at('plans', 'clean.shootplan.yaml'),
    withClips('  frost:', '    - { file: media/good.mp4, verdict: keep }'),
  );
}, 60_000);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

const lineOf = (name: string): number =>
  readFileSync(at('plans', 'plan.shootplan.yaml'), 'utf8')
    .split('\n')
    .findIndex((line) => line.includes(name)) + 1;

interface Report {
  readonly files: readonly {
    readonly file: string;
    readonly findings: readonly {
      readonly rule: string;
      readonly severity: string;
      readonly message: string;
      readonly range: { readonly start: { readonly line: number } };
    }[];
  }[];
  readonly clips: readonly {
    readonly file: string;
    readonly state: string;
    readonly read: unknown;
  }[];
  readonly notAsked: readonly string[];
  readonly stopped: boolean;
}

const report = (...args: readonly string[]): Report & { readonly status: number } => {
  const { status, out } = lamella('clips', ...args, '--format', 'json');
  return { status, ...JSON.parse(out) };
};

describe('all clips of a plan', () => {
  it('one that is broken, missing, elsewhere or no file never stops the rest', () => {
    const { status, files, clips, notAsked, stopped } = report('plan.shootplan.yaml');
    expect(status).toBe(1);
    expect(stopped).toBe(false);
    expect(files).toHaveLength(1);
    expect(
      files[0]!.findings.map(({ rule, severity, range }) => [rule, severity, range.start.line]),
    ).toEqual([
      ['clip-unreadable', 'error', lineOf('half.mp4')],
      ['clip-differs', 'error', lineOf('small.mp4')],
      ['clip-not-found', 'error', lineOf('gone.mp4')],
      ['clip-unreadable', 'error', lineOf('link.mov')],
      ['clip-unreadable', 'error', lineOf('pipe.mp4')],
      ['clip-not-found', 'error', lineOf('day/more.mov')],
    ]);
    expect(files[0]!.findings[3]!.message).toContain('it lies outside');
    expect(files[0]!.findings[4]!.message).toContain('it is not a regular file');
    expect(clips.map(({ state }) => state)).toEqual([
      ...['read', 'unreadable', 'read', 'not-found', 'unreadable', 'unreadable', 'not-found'],
      'not-found',
    ]);
    // What only ends like a transport stream is none.
    expect(notAsked).toEqual(['media/left.mkv']);
  });

  it('--media: paths may start there, links may lead there, and all below it is looked through', () => {
    const { files, clips, notAsked } = report('plan.shootplan.yaml', '--media', card);
    const names = files[0]!.findings.map(({ range }) => range.start.line);
    expect(names).not.toContain(lineOf('day/more.mov'));
    expect(names).not.toContain(lineOf('link.mov'));
    expect(clips.at(-1)).toMatchObject({ state: 'read' });
    expect(notAsked).toEqual([]);
  });

  it('reads what the clips are', () => {
    const { status, clips } = report('clean.shootplan.yaml');
    expect(status).toBe(0);
    expect(clips[0]?.read).toMatchObject({
      widthPx: 1920,
      heightPx: 1080,
      rate: '25/1',
      rateFps: 25,
      rateIsConstant: true,
      codec: 'h264',
      durationS: 1,
    });
  });

  it('text has the table, what no shot asks for, and the findings', () => {
    const { out, status } = lamella('clips', 'clean.shootplan.yaml', '--fail-on', 'warning');
    // A second of film is no take of the plan, which asks for none.
    expect(status).toBe(0);
    expect(out).toMatch(/^Clip +Shot +Verdict +Resolution/);
    expect(out).toMatch(/\nmedia\/good\.mp4 +frost +keep +1920 × 1080 +25 fps +h264 /);
    expect(out).toContain(
      'Not listed in the plan:\n  media/half.mp4\n  media/left.mkv\n  media/small.mp4',
    );
    expect(out).toMatch(/1 file checked: no findings\.\n$/);
  });

  it('a plan without clips says so', () => {
    writeFileSync(at('plans', 'none.shootplan.yaml'), EXAMPLE_PLAN);
    const { out, status } = lamella('clips', 'none.shootplan.yaml');
    expect(out).toContain('The plan lists no clips. `lamella bring-back --clips DIR` finds');
    expect(status).toBe(0);
  });

  it('nothing is written beside the clips', () => {
    expect(existsSync(at('plans', 'media', 'good.mp4'))).toBe(true);
    const before = execFileSync('ls', ['-lR', '--time-style=full-iso', plans], {
      encoding: 'utf8',
    });
    lamella('clips', 'plan.shootplan.yaml');
    const after = execFileSync('ls', ['-lR', '--time-style=full-iso', plans], { encoding: 'utf8' });
    expect(after).toBe(before);
  });
});

describe('a test clip', () => {
  it('that is as asked passes, in the first line', () => {
    const { out, status } = lamella(
      ...['clips', '--test-clip', 'media/good.mp4', '--shot', 'frost', 'clean.shootplan.yaml'],
    );
    expect(status).toBe(0);
    expect(out.split('\n')[0]).toBe('PASS  media/good.mp4 matches frost, as far as the file says.');
    expect(out).toContain('check it on the camera: shutter, ISO, white balance.');
  });

  it('of the setting that nobody read back fails, with why', () => {
    const { out, status } = lamella(
      ...['clips', '--test-clip', 'media/small.mp4', '--shot', 'frost', 'clean.shootplan.yaml'],
    );
    expect(status).toBe(1);
    expect(out.split('\n').slice(0, 2)).toEqual([
      "FAIL  media/small.mp4 doesn't match frost.",
      '  media/small.mp4: recorded at 1280 × 720, not 1920 × 1080.  clip-differs',
    ]);
  });

  it('that is cut off fails too', () => {
    const { out, status } = lamella(
      ...['clips', '--test-clip', 'media/half.mp4', '--shot', 'frost', 'clean.shootplan.yaml'],
    );
    expect(status).toBe(1);
    expect(out).toMatch(/^FAIL {2}/);
    expect(out).toContain("can't be read");
  });

  it('as JSON', () => {
    const { out } = lamella(
      ...['clips', '--test-clip', 'media/good.mp4', '--shot', 'frost'],
      ...['clean.shootplan.yaml', '--format', 'json'],
    );
    expect(JSON.parse(out)).toMatchObject({ version: 1, shot: 'frost', pass: true, findings: [] });
  });
});

describe('wrong use', () => {
  it.each([
    [['--test-clip', 'a.mp4', 'clean.shootplan.yaml'], 'go together'],
    [['--shot', 'frost', 'clean.shootplan.yaml'], 'go together'],
    [
      ['--test-clip', 'a.mp4', '--shot', 'frots', 'clean.shootplan.yaml'],
      'has no shot "frots". Did you mean frost?',
    ],
    [['clean.shootplan.yaml', '--media', 'nowhere'], '--media nowhere: no such folder.'],
    [
      ['--test-clip', 'media/gone.mp4', '--shot', 'frost', 'clean.shootplan.yaml'],
      'media/gone.mp4: no such file.',
    ],
    [
      ['--test-clip', 'a.mp4', '--shot', 'frost', '--media', '.', 'clean.shootplan.yaml'],
      'takes no --media',
    ],
  ])('%j', async (args, words) => {
    const { status, err } = await lamellaIn(plans, ['clips', ...args]);
    expect(status).toBe(2);
    expect(err).toContain(words);
  });
});

it('asked to stop, it says what it has read until then, and that it is not all', async () => {
  let stop = (): void => undefined;
  let out = '';
  const asked: string[] = [];
  const status = await runCommandLine(['clips', 'plan.shootplan.yaml', '--format', 'json'], {
    createCore,
    rules: ALL_RULES,
    sheetScript: () => '',
    reviewScript: () => '',
    createClipReader: () => ({
      async read(file, signal) {
        asked.push(path.basename(file));
        if (asked.length > 1) {
          stop();
          throw signal.reason;
        }
        return { state: 'unreadable', why: 'it is a test' };
      },
      close: async () => undefined,
    }),
    terminal: {
      cwd: plans,
      colour: false,
      out: (text) => {
        out += text;
      },
      err: () => undefined,
      progress: () => undefined,
      onInterrupt(stops) {
        stop = stops;
        return () => undefined;
      },
      input: async () => new Uint8Array(),
    },
  });
  const { clips, files, stopped } = JSON.parse(out) as Report;
  expect(status).toBe(2);
  expect(stopped).toBe(true);
  expect(asked).toEqual(['good.mp4', 'half.mp4']);
  expect(clips.map(({ state }) => state)).toEqual(['unreadable', ...Array(7).fill('not-read')]);
  // Of what was not looked at, nothing is said.
  expect(files[0]!.findings.map(({ rule }) => rule)).toEqual(['clip-unreadable']);
});
