import { flickerFreeMarksS, flickerFreeTimesS } from '../exposure/flicker.ts';
import { isNearMark, MARKED_SHUTTER_RECIPROCALS } from '../exposure/shutter-marks.ts';
import type { Bench } from '../figures/bench.ts';
import type { KnownFigure } from '../figures/figure.ts';
import { setTo } from '../plan/fixes.ts';
import type { Sec } from '../quantity/brands.ts';
import { KINDS } from '../quantity/index.ts';
import { message } from '../words/message.ts';
import { relatedTo, type ShotRule } from './shot-rule.ts';

/** Share by which the light may vary from frame to frame before anybody sees it. */
const SEEN = 0.02;

/** Times nearer to each other than this share are set alike. */
const SAME = 0.002;

interface Facts {
  readonly residual: number;
  readonly lampHz: number;
  readonly seconds: number;
  readonly light: string;
  /** The waveform isn't known: the residual is the most that any leaves. */
  readonly isMost: boolean;
  /** Frequency at which bands roll through the picture; 0: they are stationary. */
  readonly rollHz: number | null;
  /** Over the height of the picture; null: the body's readout isn't known. */
  readonly bandsInFrame: number | null;
}

export const lampFlicker: ShotRule<Facts> = {
  name: 'lamp-flicker',
  severity: 'warning',
  docs: {
    when: 'a pulsing lamp leaves more than 2% flicker at this shutter time.',
    why: 'Over a whole number of lamp cycles the light evens out at any frame rate. The remainder shows as pulsing or banding: |sin(πf·t)/(πf·t)| of the modulation for a sine wave, up to 1/(2f·t) for pulses. Without `waveform`, the worst case of all waveforms is used; a filament lamp on mains is a sine wave.',
    remedy:
      "Use a shutter time of whole lamp cycles, such as 1/50 s or 1/100 s on 50 Hz mains. Or use a lamp that doesn't pulse. State `waveform` if you know it.",
    bad: [
      {
        says: '1/80 s under lamps on 50 Hz mains',
        change: {
          'shots/frost/light': '[bulb]',
          'shots/frost/white-balance': '3200 K',
          'shots/frost/shutter': '1/80 s',
          'shots/frost/iso': 'auto',
        },
      },
      {
        says: '1/48 s spans two or three pulses',
        change: {
          'lights/panel/modulation': '100 Hz',
          'lights/panel/waveform': 'pulsed',
          'shots/frost/shutter': '1/48 s',
        },
      },
    ],
    good: [
      {
        says: 'whole cycles',
        change: {
          'shots/frost/light': '[bulb]',
          'shots/frost/shutter': '1/50 s',
          'shots/frost/iso': 'auto',
        },
      },
    ],
  },
  check({ bench, figures }) {
    const { flickerResidual, shutterSeconds, worstFlicker } = figures;
    if (!flickerResidual.known || !shutterSeconds.known || !worstFlicker.known) return [];
    if (flickerResidual.value <= SEEN) return [];
    const at = bench.fields.shutter.at;
    const { lampHz, light, course, rollHz, bandsInFrame } = worstFlicker.value;
    return [
      {
        at,
        facts: {
          residual: flickerResidual.value,
          seconds: shutterSeconds.value,
          lampHz,
          light,
          isMost: course === 'unknown',
          rollHz,
          bandsInFrame,
        },
        related: () => relatedTo(at, ofLamp(bench, worstFlicker, light)),
      },
    ];
  },
  words({ residual, lampHz, seconds, light, isMost, rollHz, bandsInFrame }, say) {
    // Less than one band over the frame is seen as pulsing.
    const many =
      bandsInFrame !== null && bandsInFrame >= 1
        ? message`${say.number(bandsInFrame)} bands`
        : message`Bands`;
    const bands =
      rollHz === null
        ? ''
        : rollHz === 0
          ? message` ${many} will be visible and stationary.`
          : message` ${many} will roll through the frame at ${say.number(rollHz)} Hz.`;
    return {
      what: isMost
        ? message`${light} pulses at ${say.number(lampHz)} Hz; at ${say.shutter(seconds)} that leaves up to ${say.percent(residual)} flicker.`
        : message`${light} pulses at ${say.number(lampHz)} Hz; at ${say.shutter(seconds)} that leaves ${say.percent(residual)} flicker.`,
      why: message`The shutter spans ${say.number(seconds * lampHz)} lamp cycles, not a whole number.${bands}`,
    };
  },
  size: ({ residual }) => ({ kind: 'percent', value: residual }),
  numbers: ({ residual, lampHz, seconds }) => ({
    flickerResidual: residual,
    lampHz,
    shutterSeconds: seconds,
  }),
  fixes({ at, facts: { lampHz, seconds } }, { bench }) {
    const rate = bench.recordRate.known ? bench.recordRate.value : lampHz / 8;
    const times = flickerFreeTimesS(lampHz, rate);
    // The longest times of a fast lamp are far from a short exposure: the marks in between count too.
    const marks = flickerFreeMarksS(lampHz, rate, MARKED_SHUTTER_RECIPROCALS);
    const between = times.filter((time) => !marks.some((mark) => Math.abs(mark / time - 1) < SAME));
    const settable = [...marks, ...between.filter(isNearMark)];
    const nearest = [...(settable.length > 0 ? settable : times)].sort(
      (a, b) => Math.abs(Math.log(a / seconds)) - Math.abs(Math.log(b / seconds)),
    );
    return nearest.slice(0, 2).map((time) => {
      const text = KINDS.shutter.print({ kind: 'time', seconds: time as Sec });
      return setTo(message`Set shutter to ${text} (whole lamp cycles)`, at, text);
    });
  },
};

/** Without what is written of the shot's other lights, which were only compared. */
function ofLamp({ lights }: Bench, figure: KnownFigure<unknown>, name: string) {
  const others = new Set(
    (lights.known ? lights.value : [])
      .filter((light) => light.name !== name)
      .map(({ fields }) => fields.kind.at.entry),
  );
  return { ...figure, from: figure.from.filter(({ entry }) => !others.has(entry)) };
}
