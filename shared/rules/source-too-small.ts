import type { FrameSide } from '../mirror/coverage.ts';
import { inLanguage, later, message } from '../words/message.ts';
import { clearDirection, standAt } from './clear-direction.ts';
import { relatedTo, type ShotRule } from './shot-rule.ts';

/** Share of the frame's light that may be missing before anybody sees it. */
export const SEEN = 0.01;

interface Facts {
  /** Missing share of the frame's light; a dimmed part counts by what it loses. */
  readonly share: number;
  /** Share of the frame that no point of the pupil sees lit; null: not known. */
  readonly blackShare: number | null;
  /** Share that only part of the pupil sees lit. */
  readonly dimShare: number;
  readonly side: FrameSide;
  readonly light: string;
  /** Position and size that a light needs at its distance; null: no light would do. */
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
    when: 'more than 1% of the light in the frame is missing. The reflection in a mirror-like subject does not fill the frame, or fills only part of the aperture.',
    why: 'A mirror shows only what lies in its family of angles, around twice the tilt and wide enough for the whole frame. Where no point of the entrance pupil sees the light, the frame is black; where only part of it does, the frame is dimmer by the missing part.',
    remedy:
      'Move the light into the reflection, bring it closer, use a larger source, or tilt the subject toward it.',
    bad: [
      {
        says: 'a light that is too high',
        change: { 'lights/strip/at': '{ distance: 300 mm, elevation: 40 deg }' },
      },
    ],
    good: [
      {
        says: 'a light in the reflection',
        change: { 'lights/strip/at': '{ distance: 300 mm, elevation: 14 deg }' },
      },
    ],
  },
  check({ bench, figures }) {
    const { darkFrame, shade, neededLight } = figures;
    if (!darkFrame.known || darkFrame.value.share <= SEEN) return [];
    const { share, side, light } = darkFrame.value;
    const named = bench.lights.known
      ? bench.lights.value.find(({ name }) => name === light)
      : undefined;
    const at = named?.at ?? bench.fields.light.at;
    return [
      {
        at,
        facts: {
          share,
          blackShare: shade.known ? shade.value.blackShare : null,
          dimShare: shade.known ? shade.value.dimShare : 0,
          side,
          light,
          needed: neededLight.known ? neededLight.value : null,
        },
        related: () => relatedTo(at, darkFrame),
      },
    ];
  },
  words({ share, blackShare, dimShare, side, light, needed }, say) {
    const where = inLanguage(WHERE[side]);
    const black = say.percent(blackShare ?? share);
    const dim = say.percent(dimShare);
    return {
      what:
        blackShare !== null && blackShare <= SEEN
          ? message`${dim} of the frame is dim${where}: ${light} fills only part of the aperture.`
          : dimShare > SEEN
            ? message`${black} of the frame is black${where}, ${dim} dim: the reflection of ${light} doesn't cover it.`
            : message`${black} of the frame is black${where}: the reflection of ${light} doesn't cover it.`,
      ...(needed && {
        why: message`To fill the frame, the light source must measure ${say.length(needed.widthMm)} × ${say.length(needed.heightMm)}, at elevation ${say.angle(needed.upRad)} and azimuth ${say.angle(needed.acrossRad)}.`,
      }),
    };
  },
  size: ({ share }) => ({ kind: 'percent', value: share }),
  numbers: ({ share, blackShare, dimShare, needed }) => ({
    lostShare: share,
    ...(blackShare !== null && { blackShare, dimShare }),
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
