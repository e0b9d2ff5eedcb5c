import type { CutFigures } from '../figures/edit-figures.ts';
import { removal, setTo } from '../plan/fixes.ts';
import { message } from '../words/message.ts';
import { cutsIn, framesText, withCuts } from './edit-rule.ts';
import type { PlanRule } from './plan-rule.ts';
import type { Observation } from './rule.ts';

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
    when: 'handles are too short for a dissolve, a dissolve is longer than its cuts, or the first cut has one.',
    why: 'A dissolve is centred on the cut, half before and half after. The outgoing clip needs a handle for the second half, the incoming clip for the first half. A handle is extra footage beyond the cut.',
    remedy: 'Shorten the dissolve, set a later in point, or record longer takes.',
    bad: [
      {
        says: 'a clip used from its first frame',
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
        says: 'a handle before the in point',
        change: withCuts({
          one: 'shot: frost, duration: 4 s',
          two: 'shot: skin, from: 2 s, duration: 4 s, transition: dissolve 12 frames',
        }),
      },
      {
        says: 'placed with room for its handles',
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
        return { what: message`${cut} is the first cut: there is nothing to dissolve from.` };
      case 'too-long':
        return {
          what: message`The dissolve into ${cut} needs ${framesText(neededFrames)} of ${of}, which has ${thereFrames}.`,
          why: message`A dissolve is centred on the cut. Frames used by another dissolve are not available.`,
        };
      case 'before':
        return {
          what: message`The dissolve into ${cut} needs a handle of ${framesText(neededFrames)} before its in point; the clip has ${thereFrames}.`,
          why: message`The incoming clip must begin half the dissolve before the cut.`,
        };
      case 'after':
        return {
          what: message`The dissolve into ${cut} needs a handle of ${framesText(neededFrames)} after ${of}; the clip has ${thereFrames}.`,
          why: message`The outgoing clip must continue for half the dissolve after the cut.`,
        };
    }
  },
  numbers: ({ neededFrames, thereFrames }) => ({ neededFrames, thereFrames }),
  fixes({ at, facts: { longestFrames, lack } }) {
    const shorter = framesText(longestFrames);
    return [
      ...(longestFrames >= 2
        ? [
            setTo(
              message`Shorten the dissolve to ${shorter}`,
              at,
              `dissolve ${shorter}`,
              message`faster dissolve`,
            ),
          ]
        : []),
      removal(
        message`Replace the dissolve with a cut`,
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
    // Frames of each cut that no other dissolve uses.
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

/** Infinite where it is unknown, so that unknown lengths give no finding. */
const lengthOf = ({ track }: CutFigures): number =>
  track.known ? track.value.endFrame - track.value.startFrame : Number.POSITIVE_INFINITY;

const outruns = ({ uncoveredFrames }: CutFigures): boolean =>
  uncoveredFrames.known && uncoveredFrames.value > 0;
