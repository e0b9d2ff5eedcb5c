/** What `lamella clips` says besides its findings: what was read, and what nobody asked for. */

import { type Block, list, paragraph, section, strong, table, worded } from '../api/document.ts';
import { type LocatedFinding, messageOf } from '../api/located.ts';
import type { CoveredCut } from '../clips/coverage.ts';
import type {
  ClipEdit,
  ClipFacts,
  ClipFault,
  ClipGap,
  ClipPicture,
  ClipReading,
  ClipTimecode,
} from '../clips/facts.ts';
import type { LookedAt } from '../looked-at/looked.ts';
import { KINDS } from '../quantity/index.ts';
import { rational, toNumber } from '../quantity/rational.ts';
import type { Say } from '../say/say.ts';
import { timecode } from '../timeline/timecode.ts';
import { inLanguage, later, message } from '../words/message.ts';
import type { BenchRow, BenchRows, LampRow } from './bench-row.ts';
import type { JsonFinding } from './json.ts';
import { lookedBlocks } from './looked.ts';
import { SEVERITY_WORDS } from './sheet/words.ts';

/** A clip of the plan with what became of it. */
export interface CheckedClip {
  readonly shot: string;
  readonly file: string;
  readonly verdict: 'keep' | 'maybe' | 'reject' | null;
  /** null: not looked at, since the run was stopped. */
  readonly reading: ClipReading | null;
}

/** What is reported besides the findings. */
interface CheckedClips {
  readonly clips: readonly CheckedClip[];
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
      ? message`${cuts.length} cut uses clips that were read`
      : message`${cuts.length} cuts use clips that were read`;
  if (short.length === 0) return message`The edit: ${count}, and every clip is long enough.`;
  const each = short.map(
    ({ cut, file, missingS }) => message`${cut} needs ${say.seconds(missingS)} more of ${file}`,
  );
  return message`The edit: ${count}; ${each.join(', ')}.`;
}

/** `lamella clips --format json` */
interface ClipsJson {
  readonly clips: readonly {
    readonly shot: string;
    readonly file: string;
    readonly verdict: CheckedClip['verdict'];
    readonly state: 'read' | 'not-found' | 'unreadable' | 'not-read';
    /** Of an unreadable one: what is at fault, where that is known. */
    readonly fault: ClipFault | null;
    readonly read: ClipJson | null;
    /** What was seen in its pictures; null: they were not looked at. */
    readonly looked: LookedAt | null;
    /** Why they couldn't be looked at. */
    readonly lookFailed: string | null;
  }[];
  /** The cuts of the edit in the clips that were read. */
  readonly cuts: readonly CoveredCut[];
  /** Clips in the folders that no shot asks for. */
  readonly notAsked: readonly string[];
  /** The run was stopped: what was read until then. */
  readonly stopped: boolean;
}

interface ClipJson {
  readonly bytes: number;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly rotationDeg: number;
  /** A still picture, which has neither rate nor length. */
  readonly isPicture: boolean;
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
  /** "10:00:00:00", with ; where numbers are left out, of the first frame that is shown. */
  readonly startTimecode: string | null;
  readonly bitDepth: number | null;
  readonly chroma: string | null;
  readonly interlaced: boolean | null;
  /** Width over height of a pixel, an exact fraction. */
  readonly pixelAspect: string | null;
  readonly transfer: string | null;
  readonly primaries: string | null;
  readonly gaps: readonly ClipGap[];
  readonly editList: ClipEdit | null;
}

export const clipsJson = (clips: readonly CheckedClip[]): ClipsJson['clips'] =>
  clips.map(({ shot, file, verdict, reading }) => ({
    shot,
    file,
    verdict,
    state: reading?.state ?? 'not-read',
    fault: (reading?.state === 'unreadable' && reading.fault) || null,
    read: reading?.state === 'read' ? clipJson(reading.facts) : null,
    looked: (reading?.state === 'read' && reading.looked) || null,
    lookFailed: (reading?.state === 'read' && reading.lookFailed) || null,
  }));

export function clipJson({ size, rate, rotation, ...facts }: ClipFacts): ClipJson {
  const { bytes, codec, durationS, bitsPerS, shutterS, iso, whiteBalance, created } = facts;
  const isConstant = rate === null ? null : rate.kind === 'constant';
  return {
    bytes,
    widthPx: size.width,
    heightPx: size.height,
    rotationDeg: rotation,
    isPicture: facts.isPicture ?? false,
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
    startTimecode: facts.startTimecode ? timecodeText(facts.startTimecode) : null,
    ...pictureJson(facts.picture ?? {}),
    gaps: facts.gaps ?? [],
    editList: facts.edit ?? null,
  };
}

const pictureJson = (
  picture: ClipPicture,
): Pick<
  ClipJson,
  'bitDepth' | 'chroma' | 'interlaced' | 'pixelAspect' | 'transfer' | 'primaries'
> => {
  const { bitDepth = null, chroma = null, isInterlaced = null, pixelAspect } = picture;
  const { transfer = null, primaries = null } = picture;
  return {
    bitDepth,
    chroma,
    interlaced: isInterlaced,
    pixelAspect: pixelAspect ? `${pixelAspect.n}/${pixelAspect.d}` : null,
    transfer,
    primaries,
  };
};

/** At 29.97 a count that leaves nothing out is one of 30. */
function timecodeText({ frame, rate, dropFrame }: ClipTimecode): string | null {
  const counted = dropFrame ? rate : rational(Math.round(toNumber(rate)));
  return timecode(frame, counted) ?? null;
}

const COLUMNS = [
  later`Clip`,
  later`Shot`,
  later`Verdict`,
  later`Resolution`,
  later`Frame rate`,
  later`Codec`,
  later`Bit rate`,
  later`Length`,
  later`Settings`,
];

/**
 * What was read, what no shot asks for, and whether it was all.
 *
 * @param findings for a page, which has them at its head; left out: said elsewhere
 */
export function clipsDocument(
  { clips, cuts, notAsked, stopped }: CheckedClips,
  say: Say,
  findings?: readonly LocatedFinding[],
): readonly Block[] {
  const until = stopped ? message`Stopped early. These are the clips read so far.` : '';
  const none = message`The plan lists no clips. \`lamella bring-back --clips DIR\` finds those of a card by their times.`;
  const read = table(
    COLUMNS.map(inLanguage),
    clips.map((clip) => rowOf(clip, say)),
  );
  const coverage = paragraph(coverageWords(cuts, say));
  const looks = lookedBlocks(clips, say);
  if (!findings)
    return [
      clips.length === 0 ? paragraph(none) : read,
      coverage,
      ...looks,
      list(notAsked, { lead: message`Not listed in the plan:` }),
      paragraph(until),
    ];
  const found = findings.map((one) => [
    strong(inLanguage(SEVERITY_WORDS[one.severity])),
    ': ',
    worded(messageOf(one)),
  ]);
  return [
    ...section(1, message`Clips`, [], true),
    paragraph(until && strong(until)),
    found.length > 0 ? list(found) : paragraph(clips.length === 0 ? none : message`No findings.`),
    read,
    coverage,
    ...looks,
    ...section(2, message`Not listed in the plan`, [list(notAsked)]),
  ];
}

const rowOf = ({ shot, file, verdict, reading }: CheckedClip, say: Say): readonly string[] => [
  file,
  shot,
  verdict ?? '',
  ...(reading?.state === 'read'
    ? cells(reading.facts, say)
    : [inLanguage(STATES[reading?.state ?? 'not-read'])]),
];

const STATES = {
  'not-found': later`not found`,
  unreadable: later`can't be read`,
  'not-read': later`not read`,
};

export function cells(facts: ClipFacts, say: Say): readonly string[] {
  const { size, rotation, codec, bitsPerS, durationS } = facts;
  return [
    `${say.resolution(size)}${rotation === 0 ? '' : message` turned ${rotation}°`}`,
    rateText(facts),
    [codec, ...pictureCells(facts.picture ?? {})].join(' '),
    ...(facts.isPicture
      ? ['', '']
      : [`${say.number(bitsPerS / 1e6)} Mb/s`, say.seconds(durationS)]),
    settings(facts, say),
  ];
}

/** "10 bit 4:2:2", "interlaced": what differs from clip to clip. */
function pictureCells({ bitDepth, chroma, isInterlaced, transfer }: ClipPicture): string[] {
  return [
    ...(bitDepth ? [message`${bitDepth} bit`] : []),
    ...(chroma ? [chroma] : []),
    ...(isInterlaced ? [message`interlaced`] : []),
    ...(transfer && transfer !== 'bt709' ? [transfer] : []),
  ];
}

function rateText({ rate, isPicture }: ClipFacts): string {
  if (isPicture) return message`picture`;
  if (rate === null) return message`unknown`;
  if (rate.kind === 'constant') return KINDS.rate.print(rate.rate);
  return message`changes, ${Number(rate.lowest.toFixed(2))} to ${Number(rate.highest.toFixed(2))} fps`;
}

/** What the file carries of how the body was set, and when. */
function settings(facts: ClipFacts, say: Say): string {
  const { shutterS, iso, whiteBalance, created, startTimecode } = facts;
  return [
    shutterS === null ? '' : say.shutter(shutterS),
    iso === null ? '' : message`ISO ${iso}`,
    whiteBalance === null ? '' : whiteBalance === 'auto' ? message`WB auto` : `${whiteBalance} K`,
    created === null ? '' : created,
    startTimecode ? (timecodeText(startTimecode) ?? '') : '',
  ]
    .filter((one) => one !== '')
    .join(', ');
}

/** `lamella clips --test-clip … --format json` */
export interface TestClipReport {
  readonly version: 1;
  readonly clip: string;
  readonly shot: string;
  readonly pass: boolean;
  readonly read: ClipJson | null;
  readonly looked: LookedAt | null;
  /** Proposed, if an 18% grey card fills the middle of the frame. */
  readonly benchRow: BenchRow | null;
  /** The same of the shot's one lamp, where the body was measured before. */
  readonly lampRow: LampRow | null;
  /** Whose offset it is; null: none is proposed. */
  readonly offsetOf: BenchRows['of'] | null;
  readonly findings: readonly Pick<JsonFinding, 'rule' | 'severity' | 'message' | 'numbers'>[];
}
