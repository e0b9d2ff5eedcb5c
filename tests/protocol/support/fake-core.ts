/**
 * A core that finds what a text tells it to find, so that tests of the hosts decide what is found:
 *
 *     use: other.shootplan.yaml
 *     name: !error what is wrong here
 *     name: !warning what is wrong (fix: better words)
 *     name: !priced something (fix: better words)      a warning whose fix has a price
 *     name: !throw                                     fails
 */

import { LENS_KINDS } from '../../../shared/api/beside-text.ts';
import type { Core, CoreOptions } from '../../../shared/api/facade.ts';
import type { LocatedFinding, LocatedFix, Position, Range } from '../../../shared/api/located.ts';
import type { FileId } from '../../../shared/plan/place.ts';
import { resolveUse } from '../../../shared/workspace/use-path.ts';

const MARK = /!(error|warning|note|hint|priced) ([^(]*?)(?: \(fix: ([^)]*)\))?$/;
const BREAK = /\r\n|\r|\n/;

export interface FakeCore extends Core {
  text(file: FileId): string | undefined;
  readonly calls: { findings: number; lensWords: number };
}

export function createFakeCore(options: CoreOptions): FakeCore {
  const texts = new Map<FileId, string>();
  const refused = new Map<FileId, string>();
  const calls = { findings: 0, lensWords: 0 };
  const lines = (file: FileId): string[] => (texts.get(file) ?? '').split(BREAK);

  const used = (file: FileId): FileId[] =>
    lines(file).flatMap((line) => {
      const written = /^use: (.*)$/.exec(line)?.[1];
      const target = written
        ? resolveUse(file, written, options.rootOf(file), ...(options.otherRoots?.(file) ?? []))
        : undefined;
      return target?.ok ? [target.file] : [];
    });

  const reaches = (file: FileId): FileId[] => {
    const found = new Set([file]);
    for (const each of found) for (const next of used(each)) found.add(next);
    return [...found];
  };

  const findings = (file: FileId): LocatedFinding[] => {
    calls.findings++;
    return lines(file).flatMap((text, line) => {
      if (text.includes('!throw')) throw new Error('told to fail');
      const missing = /^use: (.*)$/.test(text)
        ? used(file).filter((each) => refused.has(each))
        : [];
      if (missing[0])
        return [finding(file, line, 0, text.length, 'error', refused.get(missing[0]) ?? '')];
      const match = MARK.exec(text);
      if (!match) return [];
      const severity = match[1] === 'priced' ? 'warning' : match[1]!;
      return [finding(file, line, match.index, text.length, severity, match[2]!)];
    });
  };

  const fixesOf = (of: LocatedFinding): LocatedFix[] => {
    const match = MARK.exec(lines(of.file)[of.range.start.line] ?? '');
    if (!match?.[3]) return [];
    const fix = {
      title: `Write ${match[3]}`,
      edits: [{ file: of.file, range: of.range, text: match[3] }],
    };
    return [match[1] === 'priced' ? { ...fix, sideEffects: 'costs a stop' } : fix];
  };

  return {
    calls,
    text: (file) => texts.get(file),
    give: (file, text) => {
      refused.delete(file);
      texts.set(file, text);
    },
    edit: (file, range, text) => {
      const before = texts.get(file);
      if (before === undefined) return;
      const [start, end] = [offsetAt(before, range.start), offsetAt(before, range.end)];
      texts.set(file, before.slice(0, start) + text + before.slice(Math.max(start, end)));
    },
    prepare: () => true,
    completions: () => ({ items: [], incomplete: false }),
    explain: () => null,
    colours: () => [],
    definition: () => null,
    references: () => [],
    renamable: () => null,
    rename: () => ({ ok: true, edits: [] }),
    solve: () => null,
    measure: () => [],
    measuredWords: ({ what }) => [what, ''],
    newShot: () => null,
    moved: () => [],
    dropClips: () => ({ edits: [] }),
    links: () => [],
    names: () => [],
    format: () => [],
    formatNewLine: () => [],
    selection: () => [],
    findEntries: () => [],
    editFigures: () => null,
    dayFigures: () => null,
    timeline: () => ({ ok: false, why: 'the plan has no edit with cuts' }),
    recording: () => [],
    clips: () => [],
    checkClips: () => [],
    cutCoverage: () => [],
    lookAsk: () => null,
    testClip: () => null,
    rootsChanged: () => {},
    refuse: (file, why) => {
      texts.delete(file);
      refused.set(file, why);
    },
    close: (file) => {
      texts.delete(file);
      refused.delete(file);
    },
    wanted: (file) => reaches(file).filter((each) => !texts.has(each) && !refused.has(each)),
    reaches,
    findings,
    fixesOf,
    effort: () => 0,
    areFree: () => true,
    fixesIn: (file, range) =>
      findings(file)
        .filter((each) => touches(each.range, range))
        .flatMap((each) => fixesOf(each).map((fix) => ({ ...fix, finding: each }))),
    hover: (file, position) => {
      const text = lines(file)[position.line] ?? '';
      if (text.includes('!throw')) throw new Error('told to fail');
      const range = rangeOf(position.line, 0, text.length);
      return text === '' ? null : { markdown: `**${text}** \\*as written\\*`, range };
    },
    hints: (file, range) =>
      lines(file).flatMap((text, line) =>
        text.includes('f/') && line >= range.start.line && line <= range.end.line
          ? [
              {
                kind: 'aperture' as const,
                position: { line, character: text.length },
                label: 'f/32 effective',
                tooltip: 'why',
              },
            ]
          : [],
      ),
    lenses: (file) =>
      lines(file).flatMap((text, line) => {
        const shot = /^shot: (.*)$/.exec(text)?.[1];
        return shot ? [{ shot, range: rangeOf(line, 0, text.length) }] : [];
      }),
    lensWords: (file, shot, without) => {
      calls.lensWords++;
      const shown = LENS_KINDS.filter((kind) => !without?.has(kind));
      const words = shown.length === LENS_KINDS.length ? 'the state' : shown.join(', ');
      return lines(file).includes(`shot: ${shot}`) ? `${words} of ${shot}` : null;
    },
    symbols: (file) =>
      lines(file).flatMap((text, line) => {
        const name = /^([a-z-]+):/.exec(text)?.[1];
        const range = rangeOf(line, 0, text.length);
        if (!name) return [];
        const child = {
          name: `${name}-entry`,
          detail: '',
          kind: 'entry' as const,
          range,
          selection: range,
          children: [],
        };
        const detail = 'a section';
        return [{ name, detail, kind: 'section', range, selection: range, children: [child] }];
      }),
    figures: (file) =>
      new Map(
        lines(file).flatMap((text) => {
          const name = /^shot: (.*)$/.exec(text)?.[1];
          const needed = { depthMm: { front: 0.5, needed: null } };
          return name
            ? [
                [
                  name,
                  { magnification: 1.5, ...needed, notKnown: { 'depthMm.needed': 'needs `tilt`' } },
                ],
              ]
            : [];
        }),
      ),
    compared: () => ({ sections: new Map(), shots: new Map(), edit: null, findings: [] }),
    sheet: () => {
      throw new Error('no test of these asks for a sheet');
    },
    frame: () => {
      throw new Error('no test of these asks for a frame');
    },
    startComparing: () => {
      throw new Error('no test of these compares plans');
    },
    startSheet: () => {
      throw new Error('no test of these asks for a sheet');
    },
    startSolving: () => {
      throw new Error('no test of these has a shot solved');
    },
    startFrame: (_, shot, width) => {
      if (shot !== 'drift') return null;
      let slices = 0;
      const png = Uint8Array.of(width, 2, 3);
      const caption = ['Traced from *the* plan.'];
      return {
        work: () => {
          slices += 1;
          return slices < 3 ? null : { ok: true, width, height: 9, png, caption };
        },
      };
    },
    placeOfCut: () => null,
    placeInShot: () => null,
    setInShot: () => [],
    tickCheck: () => [],
    shotAt: () => null,
    shownAt: () => ({ shot: null, key: null, cut: null }),
    state: (file) => ({ ready: 0, shots: lines(file).filter((l) => l.startsWith('shot:')).length }),
    line: (file, index) => lines(file)[index] ?? '',
  };
}

const rangeOf = (line: number, from: number, to: number): Range => ({
  start: { line, character: from },
  end: { line, character: to },
});

const finding = (
  file: FileId,
  line: number,
  from: number,
  to: number,
  severity: string,
  what: string,
): LocatedFinding => ({
  rule: what.startsWith('unused') ? 'unused-name' : 'told-to',
  severity: severity as LocatedFinding['severity'],
  file,
  range: rangeOf(line, from, to),
  what,
  why: '',
  related: what.includes('related')
    ? [{ file, range: rangeOf(0, 0, 1), words: 'the first line' }]
    : [],
});

const before = (a: Position, b: Position): boolean =>
  a.line < b.line || (a.line === b.line && a.character <= b.character);

const touches = (a: Range, b: Range): boolean => before(a.start, b.end) && before(b.start, a.end);

/** Offset of a position, clamped as LSP says. */
export function offsetAt(text: string, { line, character }: Position): number {
  let offset = 0;
  let rest = text;
  for (let index = 0; index < line; index++) {
    const match = BREAK.exec(rest);
    if (!match) return text.length;
    offset += match.index + match[0].length;
    rest = text.slice(offset);
  }
  return offset + Math.min(character, BREAK.exec(rest)?.index ?? rest.length);
}
