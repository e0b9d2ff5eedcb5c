/** Measurements that differ much from the calculation, each at the value that was measured. */
import { traceChain } from '../optics/chain.ts';
import { ringFor } from '../optics/reach.ts';
import { ifKnown } from '../plan/field.ts';
import type { Measured } from '../plan/generated/types.ts';
import type { Place } from '../plan/place.ts';
import { message } from '../words/message.ts';
import type { Bench } from './bench.ts';
import { type Figure, figureOf, notKnown, valueIn } from './figure.ts';
import { balancedMm, summedKg } from './load.ts';
import { type Measurement, magnificationBy, measurementsOf } from './measured.ts';
import { ringSetting, tracedOptics } from './traced.ts';

export type MeasuredKey = Exclude<keyof Measured, 'ring' | 'aperture'>;

export interface Disagreement {
  readonly at: Place;
  readonly key: MeasuredKey;
  readonly measured: number;
  readonly computed: number;
}

/** A difference above this share of the calculated value is large. */
const FAR = 0.1;
/** Balancing the rig on a finger finds the centre of gravity no better than this, mm. */
const BALANCE_MM = 5;

export function disagreementsOf(bench: Bench): readonly Disagreement[] {
  return measurementsOf(bench).flatMap((one) =>
    KEYS.flatMap((key): Disagreement[] => {
      const field = one.fields[key];
      if (field.state !== 'known') return [];
      const computed = valueIn(computedFor(key, one, bench));
      if (computed === undefined || !Number.isFinite(computed)) return [];
      const measured: number = field.value;
      const apart = Math.abs(measured - computed);
      if (apart <= FAR * Math.abs(computed) || (key === 'balance' && apart <= BALANCE_MM))
        return [];
      return [{ at: field.at, key, measured, computed }];
    }),
  );
}

const KEYS: readonly MeasuredKey[] = [
  'field',
  'magnification',
  'effective-f-number',
  'working-distance',
  'mass',
  'balance',
];

function computedFor(key: MeasuredKey, one: Measurement, bench: Bench): Figure<number> {
  switch (key) {
    case 'mass':
      return summedKg(bench.weighedParts);
    case 'balance':
      return balancedMm(bench.weighedParts);
    case 'magnification':
      return magnificationAsked(one, bench);
    case 'field': {
      const m = magnificationAsked(one, bench);
      const { recordedAreaMm: area } = bench;
      return m.known && area.known ? { ...m, value: area.value.width / m.value } : notKnown('');
    }
    default:
      return traced(key, one, bench);
  }
}

/** The setting of the ring that a record names: its own, of a shot the shot's. */
const ringNamed = ({ by, fields }: Measurement, bench: Bench) =>
  ifKnown(fields.ring) ?? (by === 'shot' ? ifKnown(bench.fields.ring) : undefined);

/** m at the ring setting of the measurement; if it names none, m that the shot needs. */
function magnificationAsked(one: Measurement, bench: Bench): Figure<number> {
  const { chain, reach } = bench;
  const ring = ringNamed(one, bench);
  if (ring !== undefined && chain.known) {
    const { magnification } = traceChain(chain.value, ringSetting(chain.value.lens, ring));
    return magnification === undefined ? notKnown('') : { ...chain, value: magnification };
  }
  if (one.by === 'shot') return bench.wantedMagnification;
  const hasOneSetting = reach.known && reach.value[0] === reach.value[1];
  return hasOneSetting
    ? { ...reach, value: reach.value[0] }
    : notKnown(message`the focus ring setting is unknown`);
}

function traced(
  key: 'effective-f-number' | 'working-distance',
  one: Measurement,
  bench: Bench,
): Figure<number> {
  const { chain } = bench;
  const setting = ringOf(one, bench);
  if (!chain.known || setting === undefined) return notKnown('');
  const trace = traceChain(chain.value, setting);
  if (key === 'working-distance') {
    const { workingDistanceMm } = trace;
    return workingDistanceMm === undefined ? notKnown('') : { ...chain, value: workingDistanceMm };
  }
  const { aperture } = one.fields;
  const marked = aperture.state === 'missing' ? bench.marked : figureOf(aperture, one.of);
  return marked.known ? { ...chain, value: marked.value * trace.fNumberRatio } : marked;
}

/** Where the ring stood: as named, else where it shows the measured size, else as the shot sets it. */
function ringOf(one: Measurement, bench: Bench): number | undefined {
  const { chain } = bench;
  if (!chain.known) return undefined;
  const ring = ringNamed(one, bench);
  if (ring !== undefined) return ringSetting(chain.value.lens, ring);
  const m = magnificationBy(one, bench);
  if (m) return m.known ? ringFor(chain.value, m.value)?.ringMagnification : undefined;
  return valueIn(tracedOptics(bench).ringMagnification);
}
