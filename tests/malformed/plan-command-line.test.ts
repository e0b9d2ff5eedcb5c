/**
 * The same broken plans through the command line, and what only bytes can have wrong: in this process,
 * and all of them together in one of its own as it is shipped.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import type { CheckReport, FiguresReport, JsonFinding } from '../../shared/report/json.ts';
import { lamella, type PlanBytes, type Ran } from '../published/support/command-line.ts';
import { lamellaHere } from '../support/command-line.ts';
import { eachAwaited } from '../support/each.ts';
import { BROKEN, SHOTS, SOUND, unmarked } from './support/broken-plans.ts';

const CHECK = ['check', '.', '--format', 'json'];

const inOneFolder = (plans: readonly PlanBytes[]): Readonly<Record<string, PlanBytes>> =>
  Object.fromEntries(plans.map((plan, index) => [`${index + 1000}.shootplan.yaml`, plan]));

/** All plans in one folder, checked by one run. */
async function checkAll(plans: readonly PlanBytes[]) {
  const ran = await lamellaHere(CHECK, inOneFolder(plans));
  return { ...ran, files: findingsOfFiles(ran) };
}

const findingsOfFiles = ({ out }: Ran) =>
  (JSON.parse(out) as CheckReport).files.map(({ findings }) => findings);

const NAME = 'a.shootplan.yaml';

async function figuresOf(plan: PlanBytes): Promise<FiguresReport['shots']> {
  const ran = await lamellaHere(['figures', NAME, '--format', 'json'], { [NAME]: plan });
  expect(ran).toMatchObject({ status: 0, err: '' });
  return (JSON.parse(ran.out) as FiguresReport).shots;
}

const findingsIn = (
  findings: readonly JsonFinding[] | undefined,
  wanted: JsonFinding['severity'] = 'error',
) => (findings ?? []).filter(({ severity }) => severity === wanted);

describe('broken plans', () => {
  const plans = BROKEN.map((broken) => unmarked(broken).text);
  let checked: Awaited<ReturnType<typeof checkAll>>;
  let sound: FiguresReport['shots'];

  beforeAll(async () => {
    checked = await checkAll(plans);
    sound = await figuresOf(SOUND);
  });

  it('end with exit status 1 and nothing on the error stream', () => {
    expect(checked).toMatchObject({ status: 1, err: '' });
    expect(checked.files.length).toBe(BROKEN.length);
  });

  it('come to the same in a process of its own, as it is shipped', () => {
    const { status, out, err } = lamella(CHECK, inOneFolder(plans));
    expect({ status, out, err }).toEqual({ status: 1, out: checked.out, err: '' });
    const [first] = plans as [string];
    expect(lamella(['check', NAME], { [NAME]: first }).status).toBe(1);
    expect(lamella(['check', NAME], { [NAME]: SOUND })).toMatchObject({ status: 0, err: '' });
  });

  it('each is told on its place, and leaves the figures of other shots as they were', async () => {
    await eachAwaited(
      BROKEN,
      async (broken) => {
        const { text, range } = unmarked(broken);
        const [told] = findingsIn(checked.files[BROKEN.indexOf(broken)], broken.severity);
        // The same place as in the editor, counted from 1.
        const fromOne = ({ line, character }: typeof range.start) => ({
          line: line + 1,
          column: character + 1,
        });
        expect(told).toMatchObject({
          rule: broken.rule,
          range: { start: fromOne(range.start), end: fromOne(range.end) },
        });
        const figures = await figuresOf(text);
        for (const shot of broken.kept) expect(figures[shot]).toEqual(sound[shot]);
      },
      ({ name }) => name,
    );
  });

  it('as text: the line is shown, nothing that a terminal would act on', async () => {
    await eachAwaited(
      BROKEN,
      async (broken) => {
        const ran = await lamellaHere(['check', NAME], { [NAME]: unmarked(broken).text });
        const { status, out, err } = ran;
        expect({ status, err }).toEqual({ status: broken.severity === 'warning' ? 0 : 1, err: '' });
        expect(out).toMatch(/^ {4}\| /m);
        // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must not be there.
        expect(out).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/);
        // A line of a megabyte is no line to show.
        expect(Math.max(...out.split('\n').map(({ length }) => length))).toBeLessThan(400);
      },
      ({ name }) => name,
    );
  });
});

describe('bytes', () => {
  const at = (text: string) => Buffer.from(text, 'utf8');
  const [before, after] = SOUND.split('rig: bench\n    field: 66 mm') as [string, string];
  const line = before.split('\n').length;

  it.each([
    [
      'Latin-1',
      Buffer.concat([at(`${before}about: caf`), Buffer.from([0xe9]), at(`\n${after}`)]),
      15,
    ],
    ['a lone continuation byte', Buffer.concat([at(before), Buffer.from([0x80]), at(after)]), 5],
    ['an overlong slash', Buffer.concat([at(before), Buffer.from([0xc0, 0xaf]), at(after)]), 5],
    [
      'half a surrogate pair',
      Buffer.concat([at(before), Buffer.from([0xed, 0xa0, 0x80]), at(after)]),
      5,
    ],
    ['a sequence that breaks off', Buffer.concat([at(before), Buffer.from([0xf0, 0x9f])]), 5],
  ])('%s is a finding at the first byte that is no UTF-8', async (_, bytes, column) => {
    const { status, err, files } = await checkAll([bytes, SOUND]);
    expect({ status, err }).toEqual({ status: 1, err: '' });
    const [error] = findingsIn(files[0]);
    expect(error).toMatchObject({ rule: 'syntax', range: { start: { line, column } } });
    // The sound plan beside it is checked all the same.
    expect(findingsIn(files[1])).toEqual([]);
    expect(files[1]?.length).toBeGreaterThan(0);
  });

  it.each([
    ['UTF-16 LE', Buffer.from(`\ufeff${SOUND}`, 'utf16le')],
    ['UTF-16 BE', Buffer.from(`\ufeff${SOUND}`, 'utf16le').swap16()],
  ])('%s is said to be no UTF-8, once', async (_, bytes) => {
    const { status, files } = await checkAll([bytes]);
    expect(status).toBe(1);
    expect(files[0]?.map(({ rule }) => rule)).toEqual(['syntax']);
  });

  it.each([
    ['a byte order mark', at(`\ufeff${SOUND}`)],
    ['CRLF', at(SOUND.replaceAll('\n', '\r\n'))],
  ])('%s changes no figure', async (_, bytes) => {
    const [figures, sound] = [await figuresOf(bytes), await figuresOf(SOUND)];
    expect(Object.keys(figures)).toEqual(SHOTS);
    expect(figures).toEqual(sound);
  });

  it('an empty file is a finding at its first character', async () => {
    const { status, files } = await checkAll([Buffer.alloc(0)]);
    expect(status).toBe(1);
    expect(files[0]).toMatchObject([
      { rule: 'missing-key', range: { start: { line: 1, column: 1 } } },
    ]);
  });
});
