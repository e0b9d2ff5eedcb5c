import type { CutFigures } from '../figures/edit-figures.ts';
import type { PlanFix } from '../plan/problem.ts';
import { message } from '../words/message.ts';
import { cutsIn, framesText, withCuts } from './edit-rule.ts';
import { type PlanRule, removal } from './plan-rule.ts';
import type { Observation } from './rule.ts';
import { setTo } from './shot-rule.ts';

type Lack = 'nothing-before' | 'too-long' | 'before' | 'after';

interface Facts {
  readonly cut: string;
  readonly lack: Lack;
  /** The cut that lacks it. */
  readonly of: string;
  readonly neededFrames: number;
  readonly thereFrames: number;
  /** The longest dissolve that both cuts allow, frames. */
  readonly longestFrames: number;
}

export const joinWithoutHandles: PlanRule<Facts> = {
  name: 'join-without-handles',
  severity: 'warning',
  docs: {
    when: 'a dissolve needs more of a clip than lies before or after the cut, is longer than the cuts allow, or begins the film.',
    why: 'Common practice: a dissolve lies across the cut, half before it and half after, so the clip that goes must run on for the one half and the clip that comes must have begun the other half earlier. Handles are what is recorded for that.',
    remedy: 'Dissolve shorter, begin later in the clip, or record longer takes.',
    bad: [
      {
        says: 'a clip taken from its first frame',
        change: withCuts({
          one: 'shot: frost, duration: 4 s',
          two: 'shot: skin, from: 0 s, duration: 4 s, transition: dissolve 12 frames',
        }),
      },
      {
        says: 'a dissolve longer than the cut',
        change: withCuts({
          one: 'shot: frost, duration: 4 s',
          two: 'shot: skin, duration: 8 frames, transition: dissolve 24 frames',
        }),
      },
      {
        says: 'a dissolve from nothing',
        change: withCuts({
          one: 'shot: frost, duration: 4 s, transition: dissolve 12 frames',
          two: 'shot: skin, duration: 4 s',
        }),
      },
    ],
    good: [
      {
        says: 'a clip that began earlier',
        change: withCuts({
          one: 'shot: frost, duration: 4 s',
          two: 'shot: skin, from: 2 s, duration: 4 s, transition: dissolve 12 frames',
        }),
      },
      {
        says: 'laid with room for its handles',
        change: withCuts({
          one: 'shot: frost, duration: 4 s',
          two: 'shot: skin, duration: 4 s, transition: dissolve 12 frames',
        }),
      },
    ],
  },
  check: (view) =>
    cutsIn(view).flatMap(({ cut, previous }): Observation<Facts>[] => {
      const { transition: join } = cut.fields!;
      if (join.state !== 'known' || !cut.join.known) return [];
      const { before, after } = cut.join.value;
      if (before + after === 0) return [];
      const lack = lackOf(cut, previous);
      return lack ? [{ at: join.at, facts: { cut: cut.name, ...lack } }] : [];
    }),
  words: ({ cut, lack, of, neededFrames, thereFrames }) => {
    switch (lack) {
      case 'nothing-before':
        return { what: message`${cut} begins the film: there is nothing to dissolve from.` };
      case 'too-long':
        return {
          what: message`The dissolve into ${cut} needs ${framesText(neededFrames)} of ${of}, which has ${thereFrames}.`,
          why: message`A dissolve lies half before the cut and half after it; what another dissolve takes counts too.`,
        };
      case 'before':
        return {
          what: message`${of} needs ${framesText(neededFrames)} before it for the dissolve; its clip has ${thereFrames}.`,
          why: message`The clip that comes must have begun half the dissolve before the cut.`,
        };
      case 'after':
        return {
          what: message`${of} needs ${framesText(neededFrames)} after it for the dissolve; its clip has ${thereFrames}.`,
          why: message`The clip that goes must run on for half the dissolve after the cut.`,
        };
    }
  },
  numbers: ({ neededFrames, thereFrames }) => ({ neededFrames, thereFrames }),
  fixes({ at, facts: { longestFrames, lack } }) {
    const shorter: readonly PlanFix[] =
      longestFrames >= 2
        ? [
            setTo(
              message`Dissolve over ${framesText(longestFrames)}`,
              at,
              `dissolve ${framesText(longestFrames)}`,
            ),
          ]
        : [];
    return [
      ...shorter.map((fix) => ({ ...fix, sideEffects: message`the dissolve is quicker` })),
      removal(
        message`Cut instead`,
        at,
        ...(lack === 'nothing-before' ? [] : [message`no dissolve`]),
      ),
    ];
  },
};

function lackOf(cut: CutFigures, previous: CutFigures | undefined): Omit<Facts, 'cut'> | null {
  const { before, after } = cut.join.known ? cut.join.value : { before: 0, after: 0 };
  if (!previous)
    return {
      lack: 'nothing-before',
      of: cut.name,
      neededFrames: before,
      thereFrames: 0,
      longestFrames: 0,
    };
  const room = {
    // Frames of each cut that no other dissolve takes.
    own: lengthOf(cut),
    previous: lengthOf(previous) - (previous.join.known ? previous.join.value.after : 0),
    // A cut that outruns its clip has a finding of its own.
    clipBefore: cut.handleBefore.known ? cut.handleBefore.value.thereFrames : before,
    clipAfter:
      previous.handleAfter.known && !outruns(previous)
        ? previous.handleAfter.value.thereFrames
        : after,
  };
  const longest = Math.min(
    2 * Math.min(room.previous, room.clipBefore) + 1,
    2 * Math.min(room.own, room.clipAfter),
  );
  const longestFrames = Math.max(0, Math.min(before + after, longest));
  const lack = (what: Lack, of: CutFigures, neededFrames: number, thereFrames: number) => ({
    ...{ lack: what, of: of.name, neededFrames, longestFrames },
    thereFrames: Math.max(0, thereFrames),
  });
  if (after > room.own) return lack('too-long', cut, after, room.own);
  if (before > room.previous) return lack('too-long', previous, before, room.previous);
  if (before > room.clipBefore) return lack('before', cut, before, room.clipBefore);
  if (after > room.clipAfter) return lack('after', previous, after, room.clipAfter);
  return null;
}

/** Endless where it isn't known: what isn't known is short of nothing. */
const lengthOf = ({ track }: CutFigures): number =>
  track.known ? track.value.endFrame - track.value.startFrame : Number.POSITIVE_INFINITY;

const outruns = ({ uncoveredFrames }: CutFigures): boolean =>
  uncoveredFrames.known && uncoveredFrames.value > 0;
