/** The music under the edit as FCPXML has it: a sound clip as long as the edit, with its beats. */
import type { Exact } from '../../timeline/exact.ts';
import type { Programme } from '../../timeline/programme.ts';
import { beatMarks } from './beats.ts';
import { seconds } from './fcpxml-time.ts';
import { type Element, element } from './xml.ts';

const NAME = 'music';

/** @param duration of the edit, s: a plan says no file, so its length isn't known */
export const musicAsset = (id: string, duration: Exact): Element =>
  element(
    'asset',
    { id, name: NAME, start: '0s', duration: seconds(duration), hasAudio: 1, audioSources: 1 },
    [element('media-rep', { kind: 'original-media', src: NAME })],
  );

/**
 * On the lane below the spine, so that the beats stay with the music when cuts move.
 * @param origin where the item begins that it is connected to, in that item's own time, s
 * @param inEdit s of so many frames of the edit
 */
export const musicClip = (
  programme: Programme,
  ref: string,
  origin: Exact,
  inEdit: (frames: number) => Exact,
): Element =>
  element(
    'asset-clip',
    {
      ...{ ref, lane: -1, offset: seconds(origin), name: NAME, start: '0s' },
      duration: seconds(inEdit(programme.frames)),
      audioRole: 'music',
    },
    beatMarks(programme).map(({ frame, name }) =>
      element('marker', {
        start: seconds(inEdit(frame)),
        duration: seconds(inEdit(1)),
        value: name,
      }),
    ),
  );
