/** What was seen in the pictures of clips, as a table. */
import { type Block, list, table } from '../api/document.ts';
import type { ClipReading } from '../clips/facts.ts';
import type { LookedAt } from '../looked-at/looked.ts';
import type { Say } from '../say/say.ts';
import { inLanguage, later, message } from '../words/message.ts';

interface LookedClip {
  readonly file: string;
  readonly reading: ClipReading | null;
}

const COLUMNS = [
  later`Looked at`,
  later`Frames`,
  later`Clipped`,
  later`Black`,
  later`Flicker`,
  later`Repeated`,
  later`Sharpest edges`,
  later`Sound peak`,
];

/** Nothing where nobody looked. */
export function lookedBlocks(clips: readonly LookedClip[], say: Say): readonly Block[] {
  const rows = clips.flatMap(({ file, reading }) =>
    reading?.state === 'read' && reading.looked ? [[file, ...cells(reading.looked, say)]] : [],
  );
  const failed = clips.flatMap(({ file, reading }) =>
    reading?.state === 'read' && reading.lookFailed
      ? [message`${file}: ${reading.lookFailed}`]
      : [],
  );
  return [
    ...(rows.length > 0 ? [table(COLUMNS.map(inLanguage), rows)] : []),
    list(failed, { lead: message`Could not be looked at:` }),
  ];
}

function cells(looked: LookedAt, say: Say): readonly string[] {
  const { frames, clipped, crushed, flicker, repeats, edgePx, sound } = looked;
  const repeated = repeats.reduce((sum, { count }) => sum + count, 0);
  return [
    String(frames),
    say.percent(clipped),
    say.percent(crushed),
    flicker.map((one) => flickerWords(one, say)).join(', '),
    String(repeated),
    edgePx === null ? message`unknown: too few edges` : `${say.number(edgePx)} px`,
    sound === null
      ? message`no sound`
      : sound.peakDb === null
        ? message`silent`
        : `${say.number(sound.peakDb)} dB`,
  ];
}

/** "100 Hz: 3%" */
const flickerWords = ({ lampHz, depth }: LookedAt['flicker'][number], say: Say): string =>
  depth === null
    ? message`${say.number(lampHz)} Hz: unknown at this frame rate or length`
    : `${say.number(lampHz)} Hz: ${say.percent(depth)}`;
