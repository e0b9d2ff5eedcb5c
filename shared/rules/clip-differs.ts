import type { Difference } from '../clips/compare.ts';
import type { ClipEdit, ClipGap } from '../clips/facts.ts';
import { KINDS } from '../quantity/index.ts';
import { toNumber } from '../quantity/rational.ts';
import type { Say } from '../say/say.ts';
import { message } from '../words/message.ts';
import type { RuleCore } from './rule.ts';

interface Facts {
  readonly file: string;
  readonly differences: readonly Difference[];
}

export const clipDiffers: RuleCore<Facts> = {
  name: 'clip-differs',
  severity: 'warning',
  onRequest: true,
  docs: {
    when: 'a clip does not match its shot in resolution, frame rate, codec, bit rate, duration, rotation or the part that the edit uses. Shutter, ISO, white balance, bit depth, chroma, transfer function and primaries are compared where plan and file state them. It names missing frames with their place, interlaced coding, pixels that are not square, and an edit list that hides frames. A picture (JPEG, PNG or TIFF) is expected of a focus stack of stills, and only its resolution is compared. An error where nothing can be recovered: too few pixels or frames, missing frames, less bit depth or chroma, or a variable frame rate. So is a picture in place of a clip.',
    why: 'A setting that nobody confirmed spoils every take until someone does. Differences count from half the bit rate down, 1/6 stop of shutter or ISO, and 5 mired of white balance. A clip counts as short from 1 s. Missing frames are looked for in the whole index of MP4 and QuickTime files, and in the first 6,000 frames of others.',
    remedy:
      'Record it again while the setup is in place. One test clip at the start of the day, checked with `lamella clips --test-clip`, shows the mistake before the first take. Where the body conforms a high frame rate, `plays` of the recording mode says which rate its clips have.',
    bad: [],
    good: [],
  },
  words({ file, differences }, say) {
    const [first, ...others] = differences.map((one) => wholeWords(differenceWords(one, say)));
    return {
      what: message`${file}: ${first ?? message`differs`}.`,
      ...(others.length > 0 && { why: message`Also: ${others.join('; ')}.` }),
    };
  },
  numbers: ({ differences }) => Object.assign({}, ...differences.map(numbersOf)),
};

interface Words {
  readonly what: string;
  /** Left out: what is found says it all. */
  readonly asked?: string;
}

const wholeWords = ({ what, asked }: Words): string =>
  asked === undefined ? what : message`${what}, not ${asked}`;

/** "recorded at 1280 × 720", "1920 × 1080" */
function differenceWords(difference: Difference, say: Say): Words {
  switch (difference.of) {
    case 'kind':
      return difference.found === 'clip'
        ? { what: message`a clip`, asked: message`the finished picture of the stack` }
        : { what: message`a picture`, asked: message`a clip` };
    case 'missing-frames':
      return { what: gapWords(difference.gaps, say) };
    case 'edit':
      return { what: editWords(difference.found, say) };
    case 'interlaced':
      return { what: message`coded as interlaced`, asked: message`progressive` };
    case 'pixel-aspect': {
      const { n, d } = difference.found;
      return { what: message`pixel aspect ${n}:${d}`, asked: '1:1' };
    }
    case 'bit-depth':
      return { what: message`${difference.found} bit`, asked: message`${difference.asked} bit` };
    case 'chroma':
      return { what: message`chroma ${difference.found}`, asked: difference.asked };
    case 'transfer':
      return { what: message`transfer function ${difference.found}`, asked: difference.asked };
    case 'primaries':
      return { what: message`primaries ${difference.found}`, asked: difference.asked };
    case 'size':
      return {
        what: message`recorded at ${say.resolution(difference.found)}`,
        asked: say.resolution(difference.asked),
      };
    case 'rate':
      return {
        what: rateWords(difference),
        asked: difference.isConformed
          ? message`kept at ${KINDS.rate.print(difference.asked)}`
          : difference.isUnslowed
            ? message`slowed to ${KINDS.rate.print(difference.asked)}`
            : KINDS.rate.print(difference.asked),
      };
    case 'codec':
      return { what: message`codec ${difference.found}`, asked: difference.asked };
    case 'bitrate':
      return {
        what: message`${megabits(difference.found, say)} on average`,
        asked: megabits(difference.asked, say),
      };
    case 'duration':
      return {
        what: message`${say.seconds(difference.found)} long`,
        asked: message`the ${say.seconds(difference.asked)} of a take`,
      };
    case 'cut':
      return {
        what: message`${say.seconds(difference.found)} long`,
        asked: message`the ${say.seconds(difference.asked)} that cut ${difference.cut} needs`,
      };
    case 'rotation':
      return { what: message`rotated by ${difference.found}° for display`, asked: message`level` };
    case 'shutter':
      return {
        what: message`shutter ${say.shutter(difference.found)}`,
        asked: say.shutter(difference.asked),
      };
    case 'iso':
      return { what: message`ISO ${difference.found}`, asked: message`ISO ${difference.asked}` };
    case 'white-balance':
      return {
        what:
          difference.found === 'auto'
            ? message`automatic white balance`
            : message`white balance ${Math.round(difference.found)} K`,
        asked: `${Math.round(difference.asked)} K`,
      };
  }
}

/** More places than that are counted, and not told one by one. */
const MOST_PLACES = 3;

/** "3 frames missing: 2 at 1.64 s (after frame 41), 1 at 3 s (after frame 75)" */
function gapWords(gaps: readonly ClipGap[], say: Say): string {
  const total = gaps.reduce((sum, { missing }) => sum + missing, 0);
  const places = gaps
    .slice(0, MOST_PLACES)
    .map(
      ({ atS, frame, missing }) =>
        message`${missing} at ${say.seconds(atS)} (after frame ${frame})`,
    );
  const more = gaps.length - places.length;
  const all = [...places, ...(more > 0 ? [message`more in ${more} other places`] : [])].join(', ');
  return total === 1
    ? message`${total} frame missing: ${all}`
    : message`${total} frames missing: ${all}`;
}

/** What the list does first of all. */
function editWords({ skippedFrames, leftFrames, emptyS, pieces }: ClipEdit, say: Say): string {
  if (skippedFrames > 0) return message`its edit list hides its first frames (${skippedFrames})`;
  if (leftFrames > 0) return message`its edit list hides its last frames (${leftFrames})`;
  if (emptyS > 0)
    return message`its edit list starts with ${say.seconds(emptyS)} without a picture`;
  return message`its edit list shows it in ${pieces} pieces`;
}

const megabits = (bitsPerS: number, say: Say): string => `${say.number(bitsPerS / 1e6)} Mb/s`;

function rateWords({
  found,
  isConformed,
  isUnslowed,
}: Extract<Difference, { of: 'rate' }>): string {
  if (found.kind === 'constant' && isConformed)
    return message`slowed to ${KINDS.rate.print(found.rate)} by the body`;
  if (found.kind === 'constant' && isUnslowed)
    return message`kept at ${KINDS.rate.print(found.rate)} by the body`;
  if (found.kind === 'constant') return message`recorded at ${KINDS.rate.print(found.rate)}`;
  const rounded = (value: number) => Number(value.toFixed(2));
  return message`recorded at a variable frame rate, ${rounded(found.lowest)} to ${rounded(found.highest)} fps`;
}

function numbersOf(difference: Difference): Readonly<Record<string, number>> {
  switch (difference.of) {
    case 'size': {
      const { asked, found } = difference;
      return {
        width: found.width,
        height: found.height,
        askedWidth: asked.width,
        askedHeight: asked.height,
      };
    }
    case 'rate': {
      const { asked, found } = difference;
      const rate = found.kind === 'constant' ? toNumber(found.rate) : found.mean;
      return { rateFps: rate, askedRateFps: toNumber(asked) };
    }
    case 'bitrate':
      return { bitsPerS: difference.found, askedBitsPerS: difference.asked };
    case 'duration':
      return { durationS: difference.found, askedDurationS: difference.asked };
    case 'cut':
      return { durationS: difference.found, neededByCutS: difference.asked };
    case 'shutter':
      return { shutterS: difference.found, askedShutterS: difference.asked };
    case 'iso':
      return { iso: difference.found, askedIso: difference.asked };
    case 'white-balance':
      return {
        ...(difference.found !== 'auto' && { kelvin: difference.found }),
        askedKelvin: difference.asked,
      };
    case 'rotation':
      return { rotationDeg: difference.found };
    case 'missing-frames': {
      const { gaps } = difference;
      const missingFrames = gaps.reduce((sum, { missing }) => sum + missing, 0);
      const [first] = gaps;
      return {
        missingFrames,
        ...(first && { firstGapAfterFrame: first.frame, firstGapS: first.atS }),
      };
    }
    case 'edit': {
      const { skippedFrames, leftFrames, emptyS, pieces } = difference.found;
      return { skippedFrames, leftFrames, emptyS, editPieces: pieces };
    }
    case 'pixel-aspect':
      return { pixelAspect: toNumber(difference.found) };
    case 'bit-depth':
      return { bitDepth: difference.found, askedBitDepth: difference.asked };
    case 'interlaced':
    case 'chroma':
    case 'transfer':
    case 'primaries':
    case 'codec':
    case 'kind':
      return {};
  }
}
