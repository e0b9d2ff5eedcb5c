/** The figures of an edit laid out for other programs, with what was read of its clips. */
import type { TimelineOptions } from '../../api/timeline.ts';
import type { ClipFacts, ClipReading } from '../../clips/facts.ts';
import { exactRate } from '../../clips/rate.ts';
import type { CutFigures, EditFigures } from '../../figures/edit-figures.ts';
import { ifKnown } from '../../plan/field.ts';
import { type Rational, toNumber } from '../../quantity/rational.ts';
import { exact, fromRational, times, wholeBelow, ZERO } from '../../timeline/exact.ts';
import { layOut, type Material, type Programme, type ToLay } from '../../timeline/programme.ts';
import { message } from '../../words/message.ts';
import { referenceTo } from './reference.ts';

/** Pictures that a cut holds, by the ending of their name. */
const STILL = /\.(?:jpe?g|png|tiff?|dng|exr|heic|webp|bmp)$/i;

const REAL_TIME = { from: exact(1), to: exact(1) };

interface About extends TimelineOptions {
  readonly title: string;
  /** URL of the plan. */
  readonly plan: string;
  readonly start: Programme['start'];
}

/** Of an edit whose every cut has a place. */
export function programmeOf({ cuts, music }: EditFigures, rate: Rational, about: About): Programme {
  const { title, start } = about;
  const laid = cuts.map((cut) => toLay(cut, rate, about));
  return layOut(laid, { title, start, rate, music: music.known ? music.value : null });
}

function toLay(cut: CutFigures, rate: Rational, about: About): ToLay {
  const { name, shot, track, laid, speed, join, fields } = cut;
  const [startFrame, endFrame] = track.known
    ? [track.value.startFrame, track.value.endFrame]
    : [0, 0];
  return {
    ...{ name, shot, startFrame, endFrame },
    material: materialOf(cut, rate, about),
    startS: laid.known ? laid.value.start : ZERO,
    speed: speed.known ? speed.value : REAL_TIME,
    join: join.known ? join.value : { before: 0, after: 0 },
    reframe: (fields && ifKnown(fields.reframe)) ?? null,
    grade: (fields && ifKnown(fields.grade)) ?? null,
    about: (fields && ifKnown(fields.about)) ?? null,
  };
}

function materialOf(cut: CutFigures, editRate: Rational, about: About): Material {
  const { name, shot, laid, clipFile, clipS, footage } = cut;
  const isStill = footage?.isHeld === true || (clipFile !== null && STILL.test(clipFile));
  const take =
    laid.known && footage?.isHeld !== true
      ? message`${shot ?? name}, take ${laid.value.clip + 1}`
      : (shot ?? name);
  const facts = clipFile === null ? null : factsOf(about.readings?.get(clipFile));
  const read = facts && rateOf(facts);
  const planned = footage?.setting?.rate ?? null;
  const rate = read ?? planned ?? editRate;
  const inFrames = clipS.known ? wholeBelow(times(clipS.value, fromRational(rate))) : null;
  return {
    key: clipFile ?? `\n${take}`,
    name: clipFile === null ? take : (clipFile.split(/[/\\]/).at(-1) ?? clipFile),
    url: clipFile === null ? null : referenceTo(clipFile, about.found?.get(clipFile), about),
    rate,
    rateFrom: read ? 'file' : planned ? 'plan' : 'edit',
    width: facts?.size.width ?? footage?.setting?.width ?? null,
    height: facts?.size.height ?? footage?.setting?.height ?? null,
    startTimecode: facts?.startTimecode ?? null,
    frames: isStill ? 1 : facts && read ? Math.round(facts.durationS * toNumber(read)) : null,
    plannedFrames: isStill ? 1 : inFrames,
    isStill,
  };
}

const factsOf = (reading: ClipReading | undefined): ClipFacts | null =>
  reading?.state === 'read' ? reading.facts : null;

/** Of a clip whose frames differ in length, the rate that it has on the whole. */
const rateOf = ({ rate }: ClipFacts): Rational | null =>
  rate === null ? null : rate.kind === 'constant' ? rate.rate : exactRate(rate.mean);
