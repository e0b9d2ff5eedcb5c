/** The same broken plans through the shipped command line, and what only bytes can have wrong. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { CheckReport, JsonFinding } from '../../shared/report/json.ts';
import { figuresByCommand, lamella, type PlanBytes } from '../published/support/command-line.ts';
import { BROKEN, SHOTS, SOUND, unmarked } from './support/broken-plans.ts';

/** All plans in one folder, checked by one process. */
function checkAll(plans: readonly PlanBytes[]) {
  const named = plans.map((plan, index) => [`${index + 1000}.shootplan.yaml`, plan] as const);
  const ran = lamella(['check', '.', '--format', 'json'], Object.fromEntries(named));
  const report = JSON.parse(ran.out) as CheckReport;
  return { ...ran, files: report.files.map(({ findings }) => findings) };
}

const findingsIn = (
  findings: readonly JsonFinding[] | undefined,
  wanted: JsonFinding['severity'] = 'error',
) => (findings ?? []).filter(({ severity }) => severity === wanted);

describe('broken plans', () => {
  let checked: ReturnType<typeof checkAll>;
  let sound: ReturnType<typeof figuresByCommand>;

  beforeAll(() => {
    checked = checkAll(BROKEN.map((broken) => unmarked(broken).text));
    sound = figuresByCommand(SOUND);
  });

  it('end with exit status 1 and nothing on the error stream', () => {
    expect(checked).toMatchObject({ status: 1, err: '' });
    expect(checked.files.length).toBe(BROKEN.length);
  });

  it.each(BROKEN.map((broken, index) => ({ ...broken, index })))('$name', (broken) => {
    const { text, range } = unmarked(broken);
    const [told] = findingsIn(checked.files[broken.index], broken.severity);
    // The same place as in the editor, counted from 1.
    const fromOne = ({ line, character }: typeof range.start) => ({
      line: line + 1,
      column: character + 1,
    });
    expect(told).toMatchObject({
      rule: broken.rule,
      range: { start: fromOne(range.start), end: fromOne(range.end) },
    });
    const figures = figuresByCommand(text);
    for (const shot of broken.kept) expect(figures[shot]).toEqual(sound[shot]);
  });

  it('each alone ends with exit status 1 too, and a sound one with 0', () => {
    const name = 'a.shootplan.yaml';
    for (const broken of BROKEN.slice(0, 5)) {
      const { status } = lamella(['check', name], { [name]: unmarked(broken).text });
      expect(status, broken.name).toBe(1);
    }
    expect(lamella(['check', name], { [name]: SOUND })).toMatchObject({ status: 0, err: '' });
  });

  it('as text: the line is shown, nothing that a terminal would act on', () => {
    const name = 'a.shootplan.yaml';
    for (const broken of BROKEN) {
      const { status, out, err } = lamella(['check', name], { [name]: unmarked(broken).text });
      expect({ status, err }).toEqual({ status: broken.severity === 'warning' ? 0 : 1, err: '' });
      // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must not be there.
      expect(out).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/);
      // A line of a megabyte is no line to show.
      expect(Math.max(...out.split('\n').map(({ length }) => length))).toBeLessThan(400);
    }
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
  ])('%s is a finding at the first byte that is no UTF-8', (_, bytes, column) => {
    const { status, err, files } = checkAll([bytes, SOUND]);
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
  ])('%s is said to be no UTF-8, once', (_, bytes) => {
    const { status, files } = checkAll([bytes]);
    expect(status).toBe(1);
    expect(files[0]?.map(({ rule }) => rule)).toEqual(['syntax']);
  });

  it.each([
    ['a byte order mark', at(`\ufeff${SOUND}`)],
    ['CRLF', at(SOUND.replaceAll('\n', '\r\n'))],
  ])('%s changes no figure', (_, bytes) => {
    const [figures, sound] = [figuresByCommand(bytes), figuresByCommand(SOUND)];
    expect(Object.keys(figures)).toEqual(SHOTS);
    expect(figures).toEqual(sound);
  });

  it('an empty file is a finding at its first character', () => {
    const { status, files } = checkAll([Buffer.alloc(0)]);
    expect(status).toBe(1);
    expect(files[0]).toMatchObject([
      { rule: 'missing-key', range: { start: { line: 1, column: 1 } } },
    ]);
  });
});
