import type { FrameSide } from '../mirror/coverage.ts';
import { inLanguage, later, message } from '../words/message.ts';
import { clearDirection, standAt } from './clear-direction.ts';
import { relatedTo, type ShotRule } from './shot-rule.ts';

/** Share of the frame that may stay black unseen. */
export const SEEN = 0.01;

interface Facts {
  readonly share: number;
  readonly side: FrameSide;
  readonly light: string;
  /** Where a light at its distance has to stand, and how large it has to be; null: none could. */
  readonly needed: {
    readonly upRad: number;
    readonly acrossRad: number;
    readonly widthMm: number;
    readonly heightMm: number;
  } | null;
}

export const sourceTooSmall: ShotRule<Facts> = {
  name: 'source-too-small',
  severity: 'warning',
  docs: {
    when: 'more than 1 % of the frame stays black because the mirror-like subject shows no light there.',
    why: 'A mirror shows only what stands in the family of angles: the direction of twice the tilt, over a patch as large as the whole frame asks for. What of it the light doesn’t fill is black.',
    remedy:
      'Move the light to where the mirror looks, bring it nearer, take a larger one, or tilt toward it.',
    bad: [
      {
        says: 'a light that stands too high',
        change: { 'lights/strip/at': '{ distance: 300 mm, up: 40 deg }' },
      },
    ],
    good: [
      {
        says: 'a light where the mirror looks',
        change: { 'lights/strip/at': '{ distance: 300 mm, up: 14 deg }' },
      },
    ],
  },
  check({ bench, figures }) {
    const { darkFrame, neededLight } = figures;
    if (!darkFrame.known || darkFrame.value.share <= SEEN) return [];
    const { share, side, light } = darkFrame.value;
    const named = bench.lights.known
      ? bench.lights.value.find(({ name }) => name === light)
      : undefined;
    const at = named?.at ?? bench.fields.light.at;
    return [
      {
        at,
        facts: { share, side, light, needed: neededLight.known ? neededLight.value : null },
        related: relatedTo(at, darkFrame),
      },
    ];
  },
  words({ share, side, light, needed }, say) {
    const where = inLanguage(WHERE[side]);
    return {
      what: message`${say.percent(share)} of the frame stays black${where}: ${light} doesn’t reach there.`,
      ...(needed && {
        why: message`The frame needs ${say.length(needed.widthMm)} x ${say.length(needed.heightMm)} of light, ${say.angle(needed.upRad)} up and ${say.angle(needed.acrossRad)} across.`,
      }),
    };
  },
  size: ({ share }) => ({ kind: 'percent', value: share }),
  numbers: ({ share, needed }) => ({
    blackShare: share,
    ...(needed && { neededWidthMm: needed.widthMm, neededHeightMm: needed.heightMm }),
  }),
  fixes({ facts: { light, needed } }, { bench }) {
    const direction = needed && clearDirection(bench, light, needed, SEEN);
    return direction ? [standAt(bench, light, direction)] : [];
  },
};

const WHERE: Record<FrameSide, string> = {
  none: '',
  all: '',
  around: later` around the edge`,
  left: later` on the left`,
  right: later` on the right`,
  bottom: later` at the bottom`,
  top: later` at the top`,
};
