/** What was assumed, in words: of what, between which values, and what settles it. */
import { isPrior, type Prior } from '../assumptions/assumption.ts';
import { ASSUMPTIONS, type AssumptionId } from '../assumptions/table.ts';
import type { QuantityId } from '../quantity/index.ts';
import { aroundWords, inBrackets } from '../say/around.ts';
import type { Say } from '../say/say.ts';
import { shown } from '../say/shown.ts';
import { inLanguage, later, message } from '../words/message.ts';

interface Told {
  /** Null: the words of the table say all. */
  readonly what: string | null;
  readonly quantity: QuantityId;
  /** What takes its place, as an order. */
  readonly settle: string;
}

const VIBRATION = later`vibration`;
const LOSS = later`light loss`;

const TOLD: Readonly<Record<AssumptionId, Told>> = {
  'lens-loss': { what: LOSS, quantity: 'stops', settle: later`Give \`loss\` or \`t-stop\`.` },
  'converter-loss': { what: LOSS, quantity: 'stops', settle: later`Give \`loss\`.` },
  'close-up-loss': { what: LOSS, quantity: 'stops', settle: later`Give \`loss\`.` },
  'polariser-loss': { what: LOSS, quantity: 'stops', settle: later`Give \`loss\`.` },
  'sheet-loss': {
    what: later`light loss of the polarising sheet`,
    quantity: 'stops',
    settle: later`Give the light's brightness behind it under \`relight\`.`,
  },
  'diffuser-loss': {
    what: later`light loss of the diffuser`,
    quantity: 'stops',
    settle: later`Give the light's brightness behind it under \`relight\`.`,
  },
  'highlight-latitude': {
    what: later`highlight latitude`,
    quantity: 'stops',
    settle: later`Give \`highlight-latitude\`.`,
  },
  'gloss-reflectance': {
    what: later`reflectance`,
    quantity: 'percent',
    settle: later`Give \`reflectance\` or \`refractive-index\`; metal needs it.`,
  },
  'floating-film': {
    what: later`reflectance`,
    quantity: 'percent',
    settle: later`Give \`thickness\` of the film.`,
  },
  'vibration-table': { what: VIBRATION, quantity: 'length', settle: later`Give \`vibration\`.` },
  'vibration-stand': { what: VIBRATION, quantity: 'length', settle: later`Give \`vibration\`.` },
  'vibration-boom': { what: VIBRATION, quantity: 'length', settle: later`Give \`vibration\`.` },
  'vibration-hand': { what: VIBRATION, quantity: 'length', settle: later`Give \`vibration\`.` },
  'pupil-ratio': {
    what: later`pupil ratio`,
    quantity: 'ratio',
    settle: later`Give \`pupil-ratio\`.`,
  },
  'long-pupil-ratio': {
    what: later`pupil ratio`,
    quantity: 'ratio',
    settle: later`Give \`pupil-ratio\`.`,
  },
  iris: {
    what: null,
    quantity: 'ratio',
    settle: later`Read the exposure through this rig once to be sure, or give \`effective-f-number\` under \`measured\` of the rig.`,
  },
  area: { what: null, quantity: 'size', settle: later`Give \`area\` or \`crop\`.` },
  'closest-distance': {
    what: later`closest focus from the sensor`,
    quantity: 'length',
    settle: later`Give \`closest.from-sensor\`.`,
  },
  'closest-magnification': {
    what: later`magnification at closest focus`,
    quantity: 'magnification',
    settle: later`Give \`closest.magnification\`.`,
  },
  flange: {
    what: later`flange distance`,
    quantity: 'length',
    settle: later`Give \`flange-distance\`.`,
  },
  'front-diameter': {
    what: later`front diameter`,
    quantity: 'length',
    settle: later`Give \`front-diameter\`.`,
  },
  'reflected-constant': {
    what: later`the usual meter constant, K`,
    quantity: 'ratio',
    settle: later`Give the light a \`reading\` through the rig.`,
  },
  'incident-constant': {
    what: later`the usual meter constant, C`,
    quantity: 'ratio',
    settle: later`Give the light a \`reading\` with the meter.`,
  },
  'point-light': {
    what: later`width of the face`,
    quantity: 'length-or-zero',
    settle: later`Give \`emitting-size\`.`,
  },
  'still-size': {
    what: later`size of a still`,
    quantity: 'capacity',
    settle: later`Give \`size\` under \`stills\`.`,
  },
  'rig-change': {
    what: later`change of rig`,
    quantity: 'time',
    settle: later`Give \`rig-change\`.`,
  },
  'light-change': {
    what: later`change of a light`,
    quantity: 'time',
    settle: later`Give \`light-change\`.`,
  },
  'subject-change': {
    what: later`change of subject`,
    quantity: 'time',
    settle: later`Give \`subject-change\`.`,
  },
  'new-film': {
    what: later`new film`,
    quantity: 'time',
    settle: later`Give \`new-film\`.`,
  },
  modulation: { what: null, quantity: 'ratio', settle: later`Give \`modulation\`.` },
};

/** What somebody assumed of one thing. */
export interface AssumedOf {
  readonly id: AssumptionId;
  /** Its name as it is to be shown; null: the calculation itself. */
  readonly of: string | null;
  readonly prior?: Prior | undefined;
}

/**
 * "Assumed: light loss of `long-200` 0.3 stops (0.1 to 0.5). Give `loss` or `t-stop`."
 */
export function assumedWords({ id, of, prior }: AssumedOf, say: Say): string {
  const { what, settle } = TOLD[id];
  const value = valueWords(id, prior, say);
  const words =
    what === null
      ? of === null
        ? message`Assumed: ${value}.`
        : message`Assumed of ${of}: ${value}.`
      : of === null
        ? message`Assumed: ${inLanguage(what)} ${value}.`
        : message`Assumed: ${inLanguage(what)} of ${of} ${value}.`;
  return `${words} ${inLanguage(settle)}`;
}

function valueWords(id: AssumptionId, prior: Prior | undefined, say: Say): string {
  const { value } = ASSUMPTIONS[id];
  const { what, quantity } = TOLD[id];
  const of = prior ?? (isPrior(value) ? value : undefined);
  if (what !== null && of) {
    const print = (number: number): string => shown(quantity, number, say);
    return `${print(of.middle)}${inBrackets(aroundWords(of.middle, of, print))}`;
  }
  if (isPrior(value)) return '';
  const { middle, ends } = value;
  return `${inLanguage(middle)}${ends === null ? '' : inBrackets(inLanguage(ends))}`;
}
