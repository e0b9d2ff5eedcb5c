import type { CutFigures } from '../figures/edit-figures.ts';
import { setTo } from '../plan/fixes.ts';
import { beatAt, framesPerBeat, nearestBeat } from '../timeline/beats.ts';
import { exact, fromRational, nearestWhole, over, times, toNumber } from '../timeline/exact.ts';
import { message } from '../words/message.ts';
import { cutsIn, frames, framesText, withCuts } from './edit-rule.ts';
import type { PlanRule } from './plan-rule.ts';
import type { Observation } from './rule.ts';

/** One frame early or late is not visible, and the exact time of a beat falls between frames. */
const MOST_FRAMES = 1;

interface Facts {
  readonly cut: string;
  /** The cut before it, whose length sets its place. */
  readonly before: string;
  readonly fromBeatFrames: number;
  readonly framesPerBeat: number;
}

const MUSIC = 'music: { tempo: 90 bpm, first-beat: 0 s, bar: 4 beats }, ';

export const offTheBeat: PlanRule<Facts> = {
  name: 'off-the-beat',
  severity: 'note',
  docs: {
    when: 'a cut falls more than a frame from the nearest beat of the music, by the length of the cut before it.',
    why: 'A beat lasts 60·rate/tempo frames. A cut on the beat, or one frame early, feels in time with the music. The finding is made once, where the edit leaves the beat; later cuts of whole beats keep the same offset.',
    remedy: 'Set the length of the cut before it in beats or bars, or accept the finding.',
    bad: [
      {
        says: 'a length in seconds that is not whole beats',
        change: withCuts(
          { one: 'shot: frost, duration: 3 s', two: 'shot: skin, duration: 2 bars' },
          MUSIC,
        ),
      },
    ],
    good: [
      {
        says: 'a length in bars',
        change: withCuts(
          { one: 'shot: frost, duration: 1 bar', two: 'shot: skin, duration: 2 bars' },
          MUSIC,
        ),
      },
    ],
  },
  check: (view) =>
    cutsIn(view).flatMap(({ edit, cut, previous }): Observation<Facts>[] => {
      const { fromBeatFrames: from } = cut;
      const { music, rate } = edit;
      if (!previous?.fields || !from.known || !music.known || !rate.known) return [];
      const beat = toNumber(framesPerBeat(music.value.tempo, fromRational(rate.value)));
      const isInherited = previous !== edit.cuts[0] && isAsFarOff(cut, previous, beat);
      if (Math.abs(from.value) <= MOST_FRAMES || isInherited) return [];
      const { duration } = previous.fields;
      if (duration.state !== 'known') return [];
      return [
        {
          at: duration.at,
          facts: {
            cut: cut.name,
            before: previous.name,
            fromBeatFrames: from.value,
            framesPerBeat: beat,
          },
          related: [
            { at: { ...cut.at, part: 'key' }, words: cut.name },
            { at: edit.plan.music.at, words: message`\`music\` of the edit` },
          ],
        },
      ];
    }),
  words: ({ cut, before, fromBeatFrames: from, framesPerBeat: beat }, say) => ({
    what:
      from > 0
        ? message`${cut} is ${frames(Math.abs(from))} after the beat.`
        : message`${cut} is ${frames(Math.abs(from))} before the beat.`,
    why: message`It begins where ${before} ends; a beat lasts ${say.number(beat)} frames.`,
  }),
  numbers: ({ fromBeatFrames, framesPerBeat: beat }) => ({ fromBeatFrames, framesPerBeat: beat }),
  fixes({ at, facts }, { edit }) {
    const index = edit?.cuts.findIndex(({ name }) => name === facts.cut) ?? -1;
    const [previous, cut] = [edit?.cuts[index - 1], edit?.cuts[index]];
    if (!edit?.music.known || !edit.rate.known || !previous?.track.known || !cut?.track.known)
      return [];
    const rate = fromRational(edit.rate.value);
    const music = edit.music.value;
    const { startFrame, start } = previous.track.value;
    const beat = nearestBeat(music, over(exact(cut.track.value.startFrame), rate));
    const isOnBeat = Math.abs(valueOr(previous.fromBeatFrames, Number.NaN)) <= MOST_FRAMES;
    const beats = beat - nearestBeat(music, start);
    const toBeat = nearestWhole(times(beatAt(music, beat), rate)) - startFrame;
    const inBeats = isOnBeat && beats > 0;
    if (!inBeats && toBeat < 1) return [];
    const text = inBeats ? `${beats} ${beats === 1 ? 'beat' : 'beats'}` : framesText(toBeat);
    return [
      setTo(
        message`Set ${facts.before} to ${text}`,
        at,
        text,
        message`its length changes and later cuts move`,
      ),
    ];
  },
};

const valueOr = (figure: CutFigures['fromBeatFrames'], other: number): number =>
  figure.known ? figure.value : other;

/** Off by as much as the cut before: its own length is whole beats. The first frame of the edit isn't judged. */
function isAsFarOff(cut: CutFigures, previous: CutFigures, beat: number): boolean {
  const [here, there] = [cut.fromBeatFrames, previous.fromBeatFrames];
  if (!here.known || !there.known) return false;
  const beats = (here.value - there.value) / beat;
  return Math.abs(beats - Math.round(beats)) * beat <= MOST_FRAMES;
}
