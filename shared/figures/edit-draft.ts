/**
 * What follows from the fields of a cut alone: its length, its speed, the footage that it uses,
 * its transition.
 */
import { type Field, ifKnown } from '../plan/field.ts';
import type { Cut, EditMusic } from '../plan/generated/types.ts';
import type { Place } from '../plan/place.ts';
import type { TimelineLength } from '../quantity/edit.ts';
import type { Rational } from '../quantity/rational.ts';
import type { Music } from '../timeline/beats.ts';
import {
  type Exact,
  exact,
  fromRational,
  fromWritten,
  order,
  toNumber,
  ZERO,
} from '../timeline/exact.ts';
import { type JoinFrames, splitJoin } from '../timeline/join.ts';
import { secondsOf } from '../timeline/length.ts';
import { type Ramp, slowest, slowestWithoutRepeats, sourceUsed } from '../timeline/speed.ts';
import { onTrack } from '../timeline/track.ts';
import { later, message } from '../words/message.ts';
import type { Footage } from './edit-footage.ts';
import type { PlannedCut } from './edit-plan.ts';
import { derive, type Figure, figureOf, known, notKnown, silent } from './figure.ts';
import { lastOf } from './remembered.ts';

const REAL_TIME = exact(1);
export const PLAIN_CUT: JoinFrames = { before: 0, after: 0 };

/**
 * A cut before it is placed: what follows from its own fields, the rate, the music and its shot.
 */
export interface Draft {
  readonly name: string;
  readonly at: Place;
  readonly fields: Cut | null;
  readonly shot: string | null;
  readonly footage: Footage | null;
  readonly lengthS: Figure<Exact>;
  readonly speed: Figure<Ramp>;
  readonly sourceS: Figure<Exact>;
  /**
   * What it shows against real time at its two ends: its speed times what the body or the interval
   * has done to the clip.
   */
  readonly realSpeed: Figure<{ readonly from: number; readonly to: number }>;
  /** Delivery rate over recorded rate. */
  readonly slowestWithoutRepeats: Figure<Exact>;
  /** Whether any part of it is slower than that. */
  readonly repeatsFrames: Figure<boolean>;
  /** The dissolve that it begins with; 0 and 0: a plain cut. */
  readonly join: Figure<JoinFrames>;
}

/** The values of the whole edit that the figures of every cut follow from. */
export interface EditTerms {
  readonly rate: Figure<Rational>;
  readonly music: Figure<Music>;
  /** The music as it is written. */
  readonly written: Field<EditMusic>;
}

/** @param footage of the shot that it shows; null: not known */
export const draftOf = lastOf(
  ({ name, at, fields }: PlannedCut, footage: Footage | null, terms: EditTerms): Draft => {
    const shot = (fields && ifKnown(fields.shot)) ?? null;
    const lengthS = fields ? lengthOf(fields, name, terms) : silent;
    const speed = fields ? speedOf(fields, name) : silent;
    const setting = footage
      ? footage.setting
        ? known(footage.setting)
        : notKnown(message`the recording mode of ${shot ?? name} is unknown`)
      : silent;
    const bound = derive([terms.rate, setting], (delivered, recorded) =>
      slowestWithoutRepeats(fromRational(delivered), fromRational(recorded.rate)),
    );
    return {
      ...{ name, at, fields, shot, footage, lengthS, speed },
      ...(footage?.isHeld
        ? HELD
        : {
            sourceS: derive([speed, lengthS], sourceUsed),
            realSpeed: derive([speed, realPerSOf(footage)], ({ from, to }, times) => ({
              from: toNumber(from) * times,
              to: toNumber(to) * times,
            })),
            slowestWithoutRepeats: bound,
            repeatsFrames: derive([speed, bound], (ramp, least) => isSlower(slowest(ramp), least)),
          }),
      join: fields ? joinOf(fields, name, terms) : silent,
    };
  },
);

const NO_TIME = notKnown(later`the cut holds a picture`);

/** A picture that is held has neither length nor speed, and repeats because it is meant to. */
const HELD = {
  sourceS: NO_TIME,
  realSpeed: NO_TIME,
  slowestWithoutRepeats: NO_TIME,
  repeatsFrames: known(false),
} as const;

const realPerSOf = (footage: Footage | null): Figure<number> =>
  footage === null
    ? silent
    : footage.realPerS === null
      ? notKnown(message`the recording mode of ${footage.shot} is unknown`)
      : known(footage.realPerS);

/** 23.976 shown at 24 is no slow motion: a part in a thousand is the trade's own rounding. */
const SAME_RATE = exact(998, 1000);

/** Slower than `least` by more than the rounding of rates. */
const isSlower = (speed: Exact, least: Exact): boolean =>
  order(speed, { n: least.n * SAME_RATE.n, d: least.d * SAME_RATE.d }) < 0;

function inSeconds(length: TimelineLength, { rate, music, written }: EditTerms): Figure<Exact> {
  const record = ifKnown(written);
  const delivered = rate.known ? fromRational(rate.value) : undefined;
  const seconds = secondsOf(length, delivered, record && paceOf(record));
  if (typeof seconds !== 'string') return known(seconds);
  if (seconds === 'rate') return rate as Figure<never>;
  if (!record) return music.known ? silent : (music as Figure<never>);
  return figureOf<unknown>(record[seconds], message`the music`) as Figure<never>;
}

/**
 * The values of the music that lengths in beats and bars need. The first beat is not one of them.
 */
function paceOf({ tempo, bar }: EditMusic): Pick<Music, 'tempo' | 'bar'> | undefined {
  const [bpm, beats] = [ifKnown(tempo), ifKnown(bar)];
  if (bpm === undefined) return undefined;
  return { tempo: fromWritten(bpm), ...(beats !== undefined && { bar: beats }) };
}

function lengthOf({ duration }: Cut, name: string, terms: EditTerms): Figure<Exact> {
  const written = figureOf(duration, name);
  return written.known ? inSeconds(written.value, terms) : written;
}

function speedOf({ speed }: Cut, name: string): Figure<Ramp> {
  if (speed.state === 'missing') return known({ from: REAL_TIME, to: REAL_TIME });
  return derive([figureOf(speed, name)], ({ from, to }) => ({
    from: fromWritten(from),
    to: fromWritten(to),
  }));
}

function joinOf({ transition: join }: Cut, name: string, terms: EditTerms): Figure<JoinFrames> {
  if (join.state === 'missing') return known(PLAIN_CUT);
  const written = figureOf(join, name);
  if (!written.known) return written;
  if (written.value === 'cut') return known(PLAIN_CUT);
  const seconds = inSeconds(written.value.length, terms);
  return derive([seconds, terms.rate], (length, fps) =>
    splitJoin(onTrack(ZERO, length, fromRational(fps)).endFrame),
  );
}
