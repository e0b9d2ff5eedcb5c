/**
 * Measured values that apply to a shot; they replace calculated ones.
 *
 * A shot's own measurement applies to that shot. A rig's applies at the ring setting that it
 * names, else near the magnification that it names, else wherever the rig is used. A measured
 * effective f-number is scaled in proportion to other marked apertures.
 */
import { type Field, ifKnown } from '../plan/field.ts';
import type { Measured } from '../plan/generated/types.ts';
import { message } from '../words/message.ts';
import type { Bench } from './bench.ts';
import { derive, type Figure, figureOf, notKnown } from './figure.ts';
import type { OpticalFigures } from './shot-figures.ts';
import { ringSetting, tracedOptics } from './traced.ts';

/** One record of measurements, and the entry that it belongs to. */
export interface Measurement {
  readonly by: 'shot' | 'rig';
  /** In the plan's words: `drift's measurement`. */
  readonly of: string;
  readonly fields: Measured;
}

/** The shot's own first. */
export function measurementsOf({ shot, fields, rig }: Bench): readonly Measurement[] {
  const own = ifKnown(fields.measured);
  const ofRig = rig && ifKnown(rig.fields.measured);
  return [
    ...(own ? [{ by: 'shot', of: `${shot}'s measurement`, fields: own } as const] : []),
    ...(rig && ofRig
      ? [{ by: 'rig', of: `${rig.name}'s measurement`, fields: ofRig } as const]
      : []),
  ];
}

export const asMeasured = <T>(figure: Figure<T>): Figure<T> =>
  figure.known ? { known: true, value: figure.value, from: figure.from, measured: true } : figure;

/** The optical figures with all measured values that apply; undefined: there are none. */
export function withMeasured(bench: Bench): OpticalFigures | undefined {
  const all = measurementsOf(bench).filter(saysOptics);
  if (all.length === 0) return undefined;
  const reached = all.reduceRight((reach, one) => reachBy(one, bench, reach), bench.reach);
  const traced = tracedOptics({ ...bench, reach: reached });
  const holding = all.filter((one) => holdsHere(one, bench, traced));
  const magnification = holding.map((one) => magnificationHere(one, bench)).find(isSaid);
  const set = magnification ? tracedAt(bench, reached, magnification) : traced;
  const laid = { ...set, reach: reached, ...sized(bench, set, reached, magnification) };
  const fNumber = holding.map((one) => fNumberBy(one, bench)).find(isSaid);
  const room = holding.map(({ fields, of }) => said(fields['working-distance'], of)).find(isSaid);
  const lit = fNumber
    ? {
        effectiveFNumber: asMeasured(fNumber),
        lightLossStops: asMeasured(
          derive([fNumber, bench.marked], (n, marked) => 2 * Math.log2(n / marked)),
        ),
      }
    : {};
  const measured = { ...laid, ...lit, ...(room && { workingDistanceMm: asMeasured(room) }) };
  return { ...measured, pupilDiameterMm: pupilBy(measured) };
}

const isSaid = <T>(figure: Figure<T> | undefined): figure is Figure<T> => figure !== undefined;

const said = (field: Field<number>, of: string): Figure<number> | undefined =>
  field.state === 'missing' ? undefined : figureOf<number>(field, of);

const saysOptics = ({ fields }: Measurement): boolean =>
  (['field', 'magnification', 'effective-f-number', 'working-distance'] as const).some(
    (key) => fields[key].state !== 'missing',
  );

/** m as a record says it, by itself or by its field. */
export function magnificationBy(
  { fields, of }: Measurement,
  { recordedAreaMm }: Bench,
): Figure<number> | undefined {
  const given = said(fields.magnification, of);
  const field = said(fields.field, of);
  return given ?? (field && derive([recordedAreaMm, field], (area, width) => area.width / width));
}

/**
 * m of a record that applies to this shot. The ring of a rig is turned to whatever field the shot
 * needs.
 */
function magnificationHere(one: Measurement, bench: Bench): Figure<number> | undefined {
  if (one.by === 'rig' && bench.wantedAt?.path[0] !== 'ring') return undefined;
  return magnificationBy(one, bench);
}

/** N_eff of a record at the shot's aperture. */
function fNumberBy({ fields, of }: Measurement, bench: Bench): Figure<number> | undefined {
  const given = said(fields['effective-f-number'], of);
  const at = fields.aperture.state === 'missing' ? bench.fields.aperture : fields.aperture;
  return (
    given &&
    derive([given, figureOf(at, of), bench.marked], (n, measuredAt, marked) =>
      measuredAt === marked ? n : (n * marked) / measuredAt,
    )
  );
}

/** Settings of the ring nearer to each other than this share of its travel are the same. */
const SAME_RING = 0.02;
/** Magnifications nearer to each other than this are the same setting. */
const SAME_MAGNIFICATION = 0.05;

function holdsHere(one: Measurement, bench: Bench, traced: OpticalFigures): boolean {
  if (one.by === 'shot') return true;
  const { ring } = one.fields;
  if (ring.state === 'invalid') return false;
  const m = magnificationBy(one, bench);
  const here = traced.ringMagnification;
  if (ring.state === 'known' && here.known && traced.chain.known) {
    const { lens } = traced.chain.value;
    const travel = lens.closest?.magnification ?? 0;
    return Math.abs(here.value - ringSetting(lens, ring.value)) <= SAME_RING * travel;
  }
  if (!m) return ring.state === 'missing';
  const wanted = traced.magnification.known ? traced.magnification : bench.wantedMagnification;
  return m.known && wanted.known && Math.abs(wanted.value / m.value - 1) <= SAME_MAGNIFICATION;
}

/** An end of the reach is moved to the magnification that was measured there. */
function reachBy(one: Measurement, bench: Bench, reach: Bench['reach']): Bench['reach'] {
  const m = magnificationBy(one, bench);
  if (!m) return reach;
  const ring = one.by === 'shot' ? ifKnown(bench.fields.ring) : ifKnown(one.fields.ring);
  return derive([reach, m], ([least, most], measured) => {
    const isOnly = least === most;
    const [from, to] = [
      ring === 'infinity' || isOnly ? measured : least,
      ring === 'closest' || isOnly ? measured : most,
    ];
    return from <= to ? ([from, to] as const) : ([to, to] as const);
  });
}

/** The rig with its ring where the measured magnification is, or as near as it is traced to come. */
function tracedAt(bench: Bench, reach: Bench['reach'], m: Figure<number>): OpticalFigures {
  const byRing = bench.wantedAt?.path[0] === 'ring';
  if (byRing) return tracedOptics({ ...bench, reach });
  const wide = derive(
    [reach, m],
    ([least, most], here) => [Math.min(least, here), Math.max(most, here)] as const,
  );
  return tracedOptics({ ...bench, reach: wide, wantedMagnification: m });
}

function sized(
  bench: Bench,
  set: OpticalFigures,
  reach: Bench['reach'],
  measured: Figure<number> | undefined,
): Partial<OpticalFigures> {
  const m = measured ? asMeasured(measured) : askedFor(bench, set, reach);
  if (!m) return {};
  const field = derive(
    [bench.recordedAreaMm, m],
    (area, it) => [area.width / it, area.height / it] as const,
  );
  return { magnification: m, fieldMm: measured ? asMeasured(field) : field };
}

/**
 * Beyond the traced end of the reach and inside the measured one, the picture is as the shot needs
 * it.
 */
function askedFor(bench: Bench, set: OpticalFigures, reach: Bench['reach']) {
  const { wantedMagnification: wanted } = bench;
  if (!wanted.known || !set.magnification.known || !reach.known) return undefined;
  const [least, most] = reach.value;
  const inside = Math.min(Math.max(wanted.value, least), most);
  return derive([wanted, reach], () => inside);
}

/**
 * D, the entrance pupil as the subject sees it, from measured values: D = u·m/N_eff (Lagrange's
 * invariant between the sides of subject and sensor). If neither was measured, D is as traced.
 */
function pupilBy(measured: OpticalFigures): Figure<number> {
  const { trace, magnification, effectiveFNumber, workingDistanceMm } = measured;
  const isTraced = [magnification, effectiveFNumber, workingDistanceMm].every(
    (figure) => !figure.known || !figure.measured,
  );
  if (isTraced) return measured.pupilDiameterMm;
  // Where the pupil lies behind the front needs the length of the lens; how far it is from the subject
  // doesn't.
  const distance = derive([trace, workingDistanceMm], ({ pupilDepthMm, pupilDistanceMm }, room) =>
    pupilDepthMm === undefined
      ? (pupilDistanceMm ?? notKnown(message`the position of the entrance pupil is unknown`))
      : room + pupilDepthMm,
  );
  return derive([distance, magnification, effectiveFNumber], (u, m, n) => Math.abs((u * m) / n));
}
