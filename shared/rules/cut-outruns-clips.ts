import type { CutFigures } from '../figures/edit-figures.ts';
import type { Footage } from '../figures/edit-footage.ts';
import { setTo } from '../plan/fixes.ts';
import type { PlanFix } from '../plan/problem.ts';
import { toNumber } from '../timeline/exact.ts';
import { message } from '../words/message.ts';
import { cutsIn, frames, framesText, timeText, valueOrName, withCuts } from './edit-rule.ts';
import { AT_INTERVALS, printTime } from './fewer-frames.ts';
import type { PlanRule } from './plan-rule.ts';
import type { Observation } from './rule.ts';

interface Facts {
  readonly cut: string;
  readonly shot: string;
  readonly startS: number;
  readonly endS: number;
  readonly clipS: number;
  /** null: every clip that is listed is rejected. */
  readonly clip: number | null;
  readonly uncoveredFrames: number;
  readonly isListed: boolean;
  /** Its clips don't play in real time, so they last as long as their frames. */
  readonly isStretched: boolean;
  /** Later cuts of the shot for which no footage is left. */
  readonly more: number;
}

export const cutOutrunsClips: PlanRule<Facts> = {
  name: 'cut-outruns-clips',
  severity: 'warning',
  docs: {
    when: 'a cut needs more footage than a take of its shot has, or every clip of the shot is rejected.',
    why: 'A cut of length T with a linear speed ramp from a to b uses (a + b)/2·T of the clip, starting at `from`. Without `from`, cuts of one shot follow each other in the take and continue in the next take when one is used up.',
    remedy:
      'Set an earlier in point, shorten the cut, slow it down if the frame rate allows, or plan longer or more takes.',
    bad: [
      {
        says: 'an in point too late in the take',
        change: withCuts({
          one: 'shot: frost, duration: 4 s',
          two: 'shot: skin, from: 18 s, duration: 4 s',
        }),
      },
      {
        says: 'a speed ramp that uses up the take',
        change: withCuts({
          one: 'shot: frost, duration: 4 s',
          two: 'shot: skin, duration: 12 s, speed: 100 to 300 %',
        }),
      },
      {
        says: 'a time-lapse that plays too short',
        change: {
          ...AT_INTERVALS,
          'shots/frost/time-lapse': '{ interval: 60 s, duration: 1 h }',
          ...withCuts({ one: 'shot: frost, duration: 4 s', two: 'shot: skin, duration: 4 s' }),
        },
      },
    ],
    good: [
      {
        says: 'a cut within the take',
        change: withCuts({ two: 'shot: skin, from: 14 s, duration: 4 s' }),
      },
      {
        says: 'a second take where the first is used up',
        change: {
          ...withCuts({
            one: 'shot: skin, duration: 12 s',
            two: 'shot: frost, duration: 4 s',
            three: 'shot: skin, duration: 12 s',
          }),
          'shots/skin/take': '{ duration: 20 s, count: 2, settle: 5 s }',
        },
      },
    ],
  },
  check(view) {
    /** When a shot's clips are used up, no later cut has any footage. */
    const usedUp = new Set<string>();
    return cutsIn(view).flatMap(({ edit, cut }): Observation<Facts>[] => {
      const { uncoveredFrames, laid, clipS, fields, footage } = cut;
      if (!fields || !footage || !uncoveredFrames.known || uncoveredFrames.value === 0) return [];
      if (!laid.known || !clipS.known || usedUp.has(footage.shot)) return [];
      const isLaid = fields.from.state === 'missing';
      if (isLaid) usedUp.add(footage.shot);
      const isListed = edit.plan.shots.get(footage.shot)?.clips != null;
      const isNone = toNumber(laid.value.covered) === 0 && isListed && cut.clipFile === null;
      return [
        {
          at: valueOrName(cut, fields.from.state === 'known' ? fields.from : fields.duration),
          facts: {
            cut: cut.name,
            shot: footage.shot,
            startS: toNumber(laid.value.start),
            endS: toNumber(laid.value.end),
            clipS: toNumber(clipS.value),
            clip: isNone ? null : laid.value.clip + 1,
            uncoveredFrames: uncoveredFrames.value,
            isListed,
            isStretched: footage.stretch !== null,
            more: isLaid ? laterOf(cut, edit.cuts) : 0,
          },
          related: [{ at: footage.takeAt, words: message`length of a take of ${footage.shot}` }],
        },
      ];
    });
  },
  words: ({ cut, shot, endS, clipS, clip, uncoveredFrames, isListed, isStretched, more }, say) =>
    clip === null
      ? { what: message`${cut} has no clip: every clip of ${shot} is rejected.` }
      : {
          what: isStretched
            ? message`${cut} uses ${shot} up to ${say.number(endS)} s, but its clip plays ${say.number(clipS)} s.`
            : message`${cut} uses ${shot} up to ${say.number(endS)} s, but each take is ${say.number(clipS)} s.`,
          why: message`Its last ${frames(uncoveredFrames)} have no footage${clip > 1 ? (isListed ? message`, in clip ${clip}` : message`, in take ${clip}`) : ''}.${moreWords(more)}`,
        },
  size: ({ startS, endS, clipS }) => ({ kind: 'time', value: endS - Math.max(startS, clipS) }),
  numbers: ({ startS, endS, clipS, uncoveredFrames }) => ({
    sourceStartS: startS,
    sourceEndS: endS,
    clipS,
    uncoveredFrames,
  }),
  fixes({ facts }, { edit }) {
    const cut = edit?.cuts.find(({ name }) => name === facts.cut);
    if (!cut?.fields || facts.clip === null) return [];
    return [
      ...earlier(cut, facts),
      ...shorter(cut, facts),
      ...(facts.isListed ? [] : longerTake(cut, facts)),
    ];
  },
};

/** Later cuts of the shot that are not covered either. */
function laterOf(cut: CutFigures, cuts: readonly CutFigures[]): number {
  const behind = cuts.slice(cuts.indexOf(cut) + 1);
  return behind.filter(
    ({ shot, uncoveredFrames }) =>
      shot === cut.shot && uncoveredFrames.known && uncoveredFrames.value > 0,
  ).length;
}

const moreWords = (more: number): string =>
  more === 0
    ? ''
    : more === 1
      ? message` No footage is left for a later cut of it.`
      : message` No footage is left for ${more} later cuts of it.`;

/** Footage that the transitions need beyond the cut, s. */
const handleS = (cut: CutFigures, side: 'handleBefore' | 'handleAfter'): number => {
  const handle = cut[side];
  if (!handle.known || !cut.lengthS.known || !cut.track.known || !cut.speed.known) return 0;
  const { startFrame, endFrame } = cut.track.value;
  const perFrame = toNumber(cut.lengthS.value) / Math.max(1, endFrame - startFrame);
  const speed = toNumber(side === 'handleBefore' ? cut.speed.value.from : cut.speed.value.to);
  return handle.value.neededFrames * perFrame * speed;
};

function earlier(cut: CutFigures, { startS, endS, clipS }: Facts): readonly PlanFix[] {
  const { from } = cut.fields!;
  const start = clipS - (endS - startS) - handleS(cut, 'handleAfter');
  if (from.state !== 'known' || start < handleS(cut, 'handleBefore')) return [];
  const text = timeText(start);
  return [setTo(message`Move the in point to ${text}`, from.at, text)];
}

function shorter(cut: CutFigures, { uncoveredFrames }: Facts): readonly PlanFix[] {
  if (!cut.track.known || !cut.fields) return [];
  const { startFrame, endFrame } = cut.track.value;
  const left = endFrame - startFrame - uncoveredFrames;
  // A ramp keeps its end speeds: a shorter one is steeper and uses less footage in proportion to
  // its length.
  if (left < 1) return [];
  const text = framesText(left);
  return [
    setTo(
      message`Shorten the cut to ${text}`,
      cut.fields.duration.at,
      text,
      message`the edit is shorter`,
    ),
  ];
}

function longerTake(cut: CutFigures, { endS }: Facts): readonly PlanFix[] {
  if (!cut.footage) return [];
  const { stretch, shot } = cut.footage;
  const neededS = endS + handleS(cut, 'handleAfter');
  if (stretch) return longerStretched(cut.footage, neededS);
  const seconds = Math.ceil(neededS - 1e-6);
  const text = `${seconds} s`;
  return [
    setTo(
      message`Lengthen each take of ${shot} to ${text}`,
      cut.footage.takeAt,
      text,
      message`more is recorded`,
    ),
  ];
}

/** As many frames as the cut needs, by what their number follows from. */
function longerStretched({ shot, takeAt, stretch }: Footage, neededS: number): readonly PlanFix[] {
  if (!stretch) return [];
  const needed = Math.ceil(neededS * stretch.perS - 1e-6);
  switch (stretch.unit) {
    case 'frames':
      return [setTo(message`Take ${needed} frames of ${shot}`, takeAt, String(needed))];
    case 'time-lapse': {
      const text = printTime(Math.ceil(needed / 60) * 60);
      return [setTo(message`Run the time-lapse of ${shot} for ${text}`, takeAt, text)];
    }
    case 'take': {
      const text = printTime(needed);
      return [
        setTo(
          message`Lengthen each take of ${shot} to ${text}`,
          takeAt,
          text,
          message`more is recorded`,
        ),
      ];
    }
  }
}
