/** What the clips of a shot have to match. */
import type { ClipAsk } from '../clips/facts.ts';
import { type Field, ifKnown } from '../plan/field.ts';
import type { Place } from '../plan/place.ts';
import type { Bench } from './bench.ts';
import { valueIn } from './figure.ts';
import { clipRateOf, clipSecondsOf, isConformed } from './playback.ts';
import type { ShotFigures } from './shot-figures.ts';
import { isOfStills } from './stills.ts';

export function clipAskOf(bench: Bench, figures: ShotFigures): ClipAsk {
  const { fields, recording, deliver, stack } = bench;
  const isStills = isOfStills(bench);
  if (stack?.isStills) return pictureAskOf(bench);
  const iso = ifKnown(fields.iso);
  const whiteBalance = ifKnown(fields['white-balance']);
  return {
    // Stills become a clip in the edit: large enough, at the rate of the piece, in any codec.
    size: orNull(isStills ? deliver?.resolution : recording?.fields.resolution),
    isLeast: isStills,
    rate: valueIn(clipRateOf(bench)) ?? null,
    ...(isConformed(bench) && slowedFrom(bench)),
    codec: isStills ? null : orNull(recording?.fields.codec),
    bitsPerS: isStills ? null : orNull(recording?.fields.bitrate),
    takeS: valueIn(clipSecondsOf(bench)) ?? null,
    shutterS: valueIn(figures.shutterSeconds) ?? null,
    iso: typeof iso === 'number' ? iso : null,
    whiteBalance: typeof whiteBalance === 'number' ? whiteBalance : null,
    ...(!isStills && recording && pictureAsk(recording.fields)),
  };
}

function slowedFrom({ recording }: Bench): Pick<ClipAsk, 'slowedFrom'> {
  const rate = recording && ifKnown(recording.fields.rate);
  return rate ? { slowedFrom: rate } : {};
}

/** The finished picture of a stack: developed and put together elsewhere, and large enough. */
const pictureAskOf = ({ deliver }: Bench): ClipAsk => ({
  ...{ size: orNull(deliver?.resolution), isLeast: true, isPicture: true },
  ...{ rate: null, codec: null, bitsPerS: null, takeS: null },
  ...{ shutterS: null, iso: null, whiteBalance: null },
});
/** Left out where the mode says nothing of it. */
function pictureAsk(fields: NonNullable<Bench['recording']>['fields']): Pick<ClipAsk, 'picture'> {
  const bitDepth = ifKnown(fields['bit-depth']);
  const [chroma, transfer] = [ifKnown(fields.chroma), ifKnown(fields.transfer)];
  const primaries = ifKnown(fields.primaries);
  const picture = {
    ...(bitDepth !== undefined && { bitDepth }),
    ...(chroma !== undefined && { chroma }),
    ...(transfer !== undefined && { transfer }),
    ...(primaries !== undefined && { primaries }),
  };
  return Object.keys(picture).length > 0 ? { picture } : {};
}

const orNull = <T>(field: Field<T> | undefined): T | null => (field && ifKnown(field)) ?? null;

/**
 * The place in the shot of each value that a clip may differ from; the shot itself if the value
 * isn't written.
 */
export function askedAt(bench: Bench, of: string): Place {
  const { fields } = bench;
  const at: Readonly<Record<string, Place>> = {
    shutter: fields.shutter.at,
    iso: fields.iso.at,
    'white-balance': fields['white-balance'].at,
    duration: bench.timeLapse ? fields['time-lapse'].at : fields.take.at,
  };
  const stills = bench.stack ? bench.stack.at : fields['time-lapse'].at;
  return at[of] ?? (isOfStills(bench) ? stills : fields.record.at);
}
