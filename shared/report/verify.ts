/** What `lamella verify` says besides its findings: what was read, and what nobody asked for. */
import { type LocatedFinding, messageOf } from '../api/located.ts';
import type { CoveredCut } from '../clips/coverage.ts';
import type { ClipFacts, ClipReading } from '../clips/facts.ts';
import { KINDS } from '../quantity/index.ts';
import { toNumber } from '../quantity/rational.ts';
import type { Say } from '../say/say.ts';
import { inLanguage, later, message } from '../words/message.ts';
import { inertLine, inertMarkdown, wordedMarkdown } from './inert.ts';
import type { JsonFinding } from './json.ts';
import { painter } from './paint.ts';
import { SEVERITY_WORDS } from './sheet/words.ts';

/** A clip of the plan with what became of it. */
export interface VerifiedClip {
  readonly shot: string;
  readonly file: string;
  readonly verdict: 'keep' | 'maybe' | 'reject' | null;
  /** null: not looked at, since the run was stopped. */
  readonly reading: ClipReading | null;
}

/** What is reported besides the findings. */
export interface Verified {
  readonly clips: readonly VerifiedClip[];
  readonly cuts: readonly CoveredCut[];
  readonly notAsked: readonly string[];
  readonly stopped: boolean;
}

/** Of the edit, as far as it is laid into clips that were read; "" where none of it is. */
function coverageWords(cuts: readonly CoveredCut[], say: Say): string {
  if (cuts.length === 0) return '';
  const short = cuts.filter(({ missingS }) => missingS > 0);
  const count =
    cuts.length === 1
      ? message`${cuts.length} cut is laid into clips that were read`
      : message`${cuts.length} cuts are laid into clips that were read`;
  if (short.length === 0) return message`The edit: ${count}, and they last.`;
  const each = short.map(
    ({ cut, file, missingS }) => message`${cut} lacks ${say.seconds(missingS)} of ${file}`,
  );
  return message`The edit: ${count}; ${inertLine(each.join(', '))}.`;
}

/** `lamella verify --format json` */
export interface VerifyJson {
  readonly clips: readonly {
    readonly shot: string;
    readonly file: string;
    readonly verdict: VerifiedClip['verdict'];
    readonly state: 'read' | 'not-found' | 'unreadable' | 'not-read';
    readonly read: ClipJson | null;
  }[];
  /** The cuts of the edit in the clips that were read. */
  readonly cuts: readonly CoveredCut[];
  /** Clips in the folders that no shot asks for. */
  readonly notAsked: readonly string[];
  /** The run was stopped: what was read until then. */
  readonly stopped: boolean;
}

export interface ClipJson {
  readonly bytes: number;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly rotationDeg: number;
  /** An exact fraction "30000/1001"; null: it changes, or there are too few frames to tell. */
  readonly rate: string | null;
  readonly rateFps: number | null;
  readonly rateIsConstant: boolean | null;
  readonly codec: string;
  readonly durationS: number;
  readonly bitsPerS: number;
  readonly shutterS: number | null;
  readonly iso: number | null;
  readonly whiteBalance: number | 'auto' | null;
  readonly created: string | null;
}

export const clipsJson = (clips: readonly VerifiedClip[]): VerifyJson['clips'] =>
  clips.map(({ shot, file, verdict, reading }) => ({
    shot,
    file,
    verdict,
    state: reading?.state ?? 'not-read',
    read: reading?.state === 'read' ? clipJson(reading.facts) : null,
  }));

export function clipJson({ size, rate, rotation, ...facts }: ClipFacts): ClipJson {
  const { bytes, codec, durationS, bitsPerS, shutterS, iso, whiteBalance, created } = facts;
  const isConstant = rate === null ? null : rate.kind === 'constant';
  return {
    bytes,
    widthPx: size.width,
    heightPx: size.height,
    rotationDeg: rotation,
    rate: rate?.kind === 'constant' ? `${rate.rate.n}/${rate.rate.d}` : null,
    rateFps: rate === null ? null : rate.kind === 'constant' ? toNumber(rate.rate) : rate.mean,
    rateIsConstant: isConstant,
    codec,
    durationS,
    bitsPerS,
    shutterS,
    iso,
    whiteBalance,
    created,
  };
}

const COLUMNS = [
  later`Clip`,
  later`Shot`,
  later`Verdict`,
  later`Size`,
  later`Rate`,
  later`Codec`,
  later`Bit rate`,
  later`Length`,
  later`Set`,
];

/** The table of what was read, what no shot asks for, and whether it was all. */
export function verifyText(
  { clips, cuts, notAsked, stopped }: Verified,
  say: Say,
  colour: boolean,
): string {
  const paint = painter(colour);
  const rows = clips.map((clip) => rowOf(clip, say));
  const parts = [
    rows.length === 0
      ? message`The plan lists no clips.`
      : table([COLUMNS.map(inLanguage), ...rows], paint),
    coverageWords(cuts, say),
    notAsked.length === 0
      ? ''
      : [message`No shot asks for:`, ...notAsked.map((name) => `  ${inertLine(name)}`)].join('\n'),
    stopped ? message`Stopped: this is what was read until then.` : '',
  ];
  return `${parts.filter((part) => part !== '').join('\n\n')}\n`;
}

const rowOf = ({ shot, file, verdict, reading }: VerifiedClip, say: Say): readonly string[] => [
  file,
  shot,
  verdict ?? '',
  ...(reading?.state === 'read'
    ? cells(reading.facts, say)
    : [inLanguage(STATES[reading?.state ?? 'not-read'])]),
];

const STATES = {
  'not-found': later`not there`,
  unreadable: later`can’t be read`,
  'not-read': later`not read`,
};

export function cells(facts: ClipFacts, say: Say): readonly string[] {
  const { size, rotation, codec, bitsPerS, durationS } = facts;
  return [
    `${KINDS.pixels.print(size)}${rotation === 0 ? '' : message` turned ${rotation}°`}`,
    rateText(facts),
    codec,
    `${say.number(bitsPerS / 1e6)} Mb/s`,
    say.seconds(durationS),
    settings(facts, say),
  ];
}

function rateText({ rate }: ClipFacts): string {
  if (rate === null) return message`not known`;
  if (rate.kind === 'constant') return KINDS.rate.print(rate.rate);
  return message`changes, ${Number(rate.lowest.toFixed(2))} to ${Number(rate.highest.toFixed(2))} fps`;
}

/** What the file carries of how the body was set, and when. */
function settings({ shutterS, iso, whiteBalance, created }: ClipFacts, say: Say): string {
  return [
    shutterS === null ? '' : say.shutter(shutterS),
    iso === null ? '' : message`ISO ${iso}`,
    whiteBalance === null ? '' : whiteBalance === 'auto' ? message`WB auto` : `${whiteBalance} K`,
    created === null ? '' : created,
  ]
    .filter((one) => one !== '')
    .join(', ');
}

type Paint = ReturnType<typeof painter>;

function table([head = [], ...rows]: readonly (readonly string[])[], paint: Paint): string {
  const all = [head, ...rows].map((row) => row.map(inertLine));
  const widths = head.map((_, column) =>
    Math.max(...all.map((row) => [...(row[column] ?? '')].length)),
  );
  const line = (row: readonly string[]): string =>
    row
      .map((cell, column) => cell + ' '.repeat(widths[column]! - [...cell].length))
      .join('  ')
      .trimEnd();
  return all
    .map((row, index) => (index === 0 ? paint('heading', line(row)) : line(row)))
    .join('\n');
}

/** The same as a page of an editor, findings first. */
export function verifyMarkdown(
  { clips, cuts, notAsked, stopped }: Verified,
  findings: readonly LocatedFinding[],
  say: Say,
): string {
  const list = (lines: readonly string[]): string => lines.map((one) => `- ${one}`).join('\n');
  const rows = clips.map((clip) => rowOf(clip, say).map((cell) => inertMarkdown(cell)));
  const width = COLUMNS.length;
  const parts = [
    `# ${message`Clips`}`,
    stopped ? `**${message`Stopped: this is what was read until then.`}**` : '',
    findings.length === 0
      ? clips.length === 0
        ? message`The plan lists no clips.`
        : message`Nothing was found.`
      : list(
          findings.map(
            (one) =>
              `**${inLanguage(SEVERITY_WORDS[one.severity])}**: ${wordedMarkdown(messageOf(one))}`,
          ),
        ),
    rows.length === 0
      ? ''
      : [COLUMNS.map(inLanguage), COLUMNS.map(() => '---'), ...rows]
          .map(
            (row) => `| ${Array.from({ length: width }, (_, at) => row[at] ?? '').join(' | ')} |`,
          )
          .join('\n'),
    wordedMarkdown(coverageWords(cuts, say)),
    notAsked.length === 0
      ? ''
      : `## ${message`No shot asks for`}\n\n${list(notAsked.map((one) => inertMarkdown(one)))}`,
  ];
  return `${parts.filter((part) => part !== '').join('\n\n')}\n`;
}

/** `lamella verify --test-clip … --format json` */
export interface TestClipReport {
  readonly version: 1;
  readonly clip: string;
  readonly shot: string;
  readonly pass: boolean;
  readonly read: ClipJson | null;
  readonly findings: readonly Pick<JsonFinding, 'rule' | 'severity' | 'message' | 'numbers'>[];
}
