/**
 * Builds the bench of a shot: looks up the entries that it names and gathers the inputs of its
 * figures.
 */
import { MARKED_APERTURES } from '../optics/apertures.ts';
import type { Field } from '../plan/field.ts';
import { ifKnown, isKnown } from '../plan/field.ts';
import type { Body, GroupTypes, Recording, Rig, Shot } from '../plan/generated/types.ts';
import type { Place } from '../plan/place.ts';
import { toNumber } from '../quantity/rational.ts';
import { message } from '../words/message.ts';
import type { Bench, LightInUse } from './bench.ts';
import { diffusedStops } from './diffuser.ts';
import { derive, type Figure, figureOf, known, notKnown, silent, unknownOf } from './figure.ts';
import { chainBehind } from './filters.ts';
import {
  gelledColour,
  gelNames,
  gelStops,
  gelsIn,
  setColourOf,
  shiftOf,
  tooBlueFor,
} from './gels.ts';
import type { Named } from './named.ts';
import { type Lookup, lookUp, type PlanReader } from './reader.ts';
import { recordedAreaOf, stillOf } from './recorded-area.ts';
import { remembered } from './remembered.ts';
import { layOutRig, type RigLayout } from './rig-layout.ts';
import { stackOf } from './stack-plan.ts';
import { timeLapseOf } from './time-lapse.ts';

export function readBench(reader: PlanReader, shot: Named<Shot>): Bench {
  const { fields } = shot;
  const at: Place = { file: shot.file, entry: shot.entry, path: [] };
  const rigLookup = lookUp(reader, 'rigs', fields.rig);
  const rig = rigLookup.state === 'found' ? rigLookup.entry : undefined;
  const subjectLookup = lookUp(reader, 'subjects', fields.subject);
  const deliverField = reader.plan('deliver');
  const deliver = ifKnown(deliverField);
  const layout = rig ? reader.rig(rig) : layOutRig(reader, rig);
  const { body, lens } = layout;
  const stack = stackOf(fields, shot.name);
  // Stills are in no recording mode, whichever is written.
  const recording = stack?.isStills ? undefined : recordingOf(fields, body);

  const timeLapse = timeLapseOf(fields, shot.name);
  const isStills = stack?.isStills || timeLapse?.isStills;
  const still = isStills && body ? stillOf({ body, fields, shot: shot.name }) : undefined;
  const recordedAreaMm = still
    ? still.areaMm
    : recording
      ? recordedAreaOf(recording)
      : recorded(recording, fields, shot.name, rigLookup, 'area');
  const recordedPixels = still
    ? still.pixels
    : recorded(recording, fields, shot.name, rigLookup, 'resolution');
  const field = figureOf(fields.field, shot.name);
  const wanted = wantedOf(fields, shot.name, recordedAreaMm, field);
  const apertureRange = fromEntry(lens, 'aperture', rigLookup);
  const lights = lightsOf(reader, fields, shot.name);
  const filters = filtersOf(reader, rig, fields, shot.name);

  return {
    file: reader.file,
    shot: shot.name,
    at,
    fields,
    rigName: rig?.name,
    rig,
    body,
    lens,
    subject: subjectLookup.state === 'found' ? subjectLookup.entry : undefined,
    recording,
    deliver,
    offer: reader.offer,
    constants: reader.constants,
    source: { reader, shot },
    ...(rig ? ofLayout(layout, filters) : withoutRig(rigLookup, fields.rig, shot.name)),
    carriers: carriersOf(reader, fields, rig),
    lights,
    filters,
    recordedAreaMm,
    recordedPixels,
    timeLapse,
    stack,
    recordRate: timeLapse
      ? derive([timeLapse.intervalS], (seconds) => 1 / seconds)
      : still
        ? notKnown(message`stills have no frame rate`)
        : derive([recorded(recording, fields, shot.name, rigLookup, 'rate')], toNumber),
    deliveredPixels: deliver
      ? figureOf(deliver.resolution, 'deliver')
      : figureOf(deliverField as Field<never>, message`the plan`),
    ...wanted,
    marked: figureOf(fields.aperture, shot.name),
    apertureRange,
    marksOnLens: apertureRange.known ? marksIn(apertureRange.value) : [],
    shutter: figureOf(fields.shutter, shot.name),
    iso: figureOf(fields.iso, shot.name),
    isoLimits: body ? isoLimitsOf(body) : noIsoLimits(),
    bodyShows: body && ifKnown(body.fields['displayed-aperture']),
    tiltRad: fields.tilt.state === 'missing' ? known(0) : figureOf(fields.tilt, shot.name),
    tiltAxis: ifKnown(fields['tilt-axis']) ?? 'level',
    givenCircleMm: figureOf(reader.plan('circle-of-confusion'), message`the plan`),
    mainsHz: figureOf(reader.plan('mains'), message`the plan`),
    readThroughBareLens:
      lights.known &&
      lights.value.some((light) => {
        const reading = ifKnown(light.fields.reading);
        return reading !== undefined && ifKnown(reading.through) === 'bare-lens';
      }),
    checks: checksOf(reader, fields),
    checksOfDay: checksOfDay(reader, fields),
    checksUnread: areChecksUnread(reader, fields),
    hasClips: reader.hasClips(shot.name),
  };
}

/** Head, stand and rail, as the shot's own support names them, else the rig's. */
function carriersOf(
  reader: PlanReader,
  fields: Shot,
  rig: Named<Rig> | undefined,
): Bench['carriers'] {
  const support = ifKnown(fields.support) ?? (rig && ifKnown(rig.fields.support));
  if (!support) return {};
  const head = lookUp(reader, 'heads', support.head);
  const stand = lookUp(reader, 'stands', support.stand);
  const rail = lookUp(reader, 'rails', support.rail);
  return {
    head: head.state === 'found' ? head.entry : undefined,
    stand: stand.state === 'found' ? stand.entry : undefined,
    rail: rail.state === 'found' ? rail.entry : undefined,
  };
}

/** The shot's own state of a check overrides the day's, which overrides the list for every shot. */
function checksOf(reader: PlanReader, fields: Shot): Bench['checks'] {
  const checks = new Map<string, 'open' | 'done'>();
  const preflight = ifKnown(reader.plan('preflight'));
  for (const name of (preflight && ifKnown(preflight['every-shot'])) ?? [])
    if (isKnown(name)) checks.set(name.value, 'open');
  for (const states of [preflight && ifKnown(preflight.once), ifKnown(fields.preflight)])
    for (const [name, state] of states ?? [])
      if (isKnown(state)) checks.set(name, state.value === 'open' ? 'open' : 'done');
  return checks;
}

function checksOfDay(reader: PlanReader, fields: Shot): Bench['checksOfDay'] {
  const preflight = ifKnown(reader.plan('preflight'));
  const once = preflight && ifKnown(preflight.once);
  const own = ifKnown(fields.preflight);
  return new Set([...(once?.keys() ?? [])].filter((name) => !own?.has(name)));
}

function areChecksUnread(reader: PlanReader, fields: Shot): boolean {
  const field = reader.plan('preflight');
  const preflight = ifKnown(field);
  return [field, preflight?.['every-shot'], preflight?.once, fields.preflight].some(
    (each) => each?.state === 'invalid',
  );
}

type OfLayout = Pick<Bench, 'parts' | 'chainParts' | 'chain' | 'reach' | 'weighedParts'>;

/** What a shot has of its rig's layout. */
export const ofLayout = (layout: RigLayout, filters: Bench['filters']): OfLayout => ({
  parts: layout.parts,
  chainParts: layout.chainParts,
  chain: chainBehind(layout.chain, filters),
  reach: layout.reach,
  weighedParts: layout.weighedParts,
});

/** That the rig is missing, or has a finding of its own. */
function withoutRig(rig: Lookup<Rig>, field: Field<string>, shot: string): OfLayout {
  const why = rig.state === 'missing' ? (figureOf(field, shot) as Figure<never>) : silent;
  return { parts: why, chainParts: why, chain: why, reach: why, weighedParts: why };
}

function fromEntry<T, K extends keyof T>(
  entry: Named<T> | undefined,
  key: K,
  rig: Lookup<Rig>,
): T[K] extends Field<infer V> ? Figure<V> : never {
  const figure = entry
    ? figureOf(entry.fields[key] as Field<unknown>, entry.name)
    : rig.state === 'found'
      ? silent
      : notKnown(message`the shot has no rig`);
  return figure as T[K] extends Field<infer V> ? Figure<V> : never;
}

function recordingOf(fields: Shot, body: Bench['body']): Bench['recording'] {
  const settings = body && ifKnown(body.fields['recording-modes']);
  if (!body || !settings || !isKnown(fields.record)) return undefined;
  const name = fields.record.value;
  const setting = settings.get(name);
  if (!setting || !isKnown(setting)) return undefined;
  const { file, entry } = body;
  return { name, group: 'recordings', file, entry, fields: setting.value, of: body };
}

function recorded<K extends keyof Recording>(
  recording: Bench['recording'],
  fields: Shot,
  shot: string,
  rig: Lookup<Rig>,
  key: K,
): Recording[K] extends Field<infer V> ? Figure<V> : never {
  const figure = (): Figure<unknown> => {
    if (recording) return figureOf(recording.fields[key] as Field<unknown>, recording.name);
    if (fields.record.state === 'missing') return figureOf(fields.record, shot);
    return rig.state === 'missing' ? figureOf(fields.rig, shot) : silent;
  };
  return figure() as Recording[K] extends Field<infer V> ? Figure<V> : never;
}

function wantedOf(
  fields: Shot,
  shot: string,
  recordedAreaMm: Bench['recordedAreaMm'],
  field: Figure<number>,
): Pick<Bench, 'wantedMagnification' | 'wantedRing' | 'wantedAt'> {
  const none = notKnown(message`the shot needs another`);
  if (fields.ring.state !== 'missing')
    return {
      wantedMagnification: none,
      wantedRing: figureOf(fields.ring, shot),
      wantedAt: fields.ring.at,
    };
  if (fields.magnification.state !== 'missing')
    return {
      wantedMagnification: figureOf(fields.magnification, shot),
      wantedRing: none,
      wantedAt: fields.magnification.at,
    };
  return {
    wantedMagnification: derive([recordedAreaMm, field], (area, width) => area.width / width),
    wantedRing: none,
    wantedAt: fields.field.state === 'missing' ? undefined : fields.field.at,
  };
}

/** A boom reaches over what it lights: only `overhead: no` says that nothing is under the light. */
const isOverhead = ({ overhead }: GroupTypes['lights'], stand: LightInUse['stand']): boolean =>
  ifKnown(overhead) ?? (stand && ifKnown(stand.fields.kind)) === 'boom';

function lightsOf(reader: PlanReader, fields: Shot, shot: string): Figure<readonly LightInUse[]> {
  const list = figureOf(fields.light, shot);
  if (!list.known) return list;
  const relight = ifKnown(fields.relight);
  const lights: LightInUse[] = [];
  for (const item of list.value) {
    const light = lookUp(reader, 'lights', item);
    if (light.state !== 'found') return silent;
    const { name, fields: base } = light.entry;
    const override = relight?.get(name);
    if (override && !isKnown(override)) return silent;
    const laid = override ? laidOver(base, override.value) : base;
    const gels = override ? gelsIn(reader, override.value.gels) : [];
    const colour = gelledColour(laid['colour-temperature'], gels);
    const fields = gels?.length === 0 ? laid : { ...laid, 'colour-temperature': colour };
    const added = sheetsAdded(base, laid);
    const isDiffused =
      override !== undefined && isCovered(override.value) && !isRebrightened(override.value);
    const carrier = lookUp(reader, 'stands', base.stand);
    const stand = carrier.state === 'found' ? carrier.entry : undefined;
    lights.push({
      name,
      fields,
      readAt: override && isRebrightened(override.value) ? fields.at : base.at,
      dimmedStops:
        override && override.value.dimmed.state !== 'missing'
          ? figureOf(override.value.dimmed, name)
          : known(0),
      // A brightness that is given for the shot is that behind its gels and its sheet.
      gelStops:
        override && isRebrightened(override.value)
          ? known(0)
          : derive(
              [
                gelStops(gels),
                known(added * reader.constants.sheetStops),
                isDiffused
                  ? diffusedStops(base, laid['emitting-size'], reader.constants)
                  : known(0),
              ],
              (ofGels, ofSheet, ofDiffuser) => ofGels + ofSheet + ofDiffuser,
            ),
      sheetsAdded: override && isRebrightened(override.value) ? 0 : added,
      isDiffused,
      isRebrightened: override !== undefined && isRebrightened(override.value),
      gels: gelNames(gels),
      gelShift: shiftOf(gels),
      tooBlue: override
        ? tooBlueFor(laid['colour-temperature'], gels, override.value.gels.at)
        : null,
      setColour: setColourOf(override?.value['colour-temperature']),
      isOverhead: isOverhead(base, stand),
      stand,
      at: item.at,
    });
  }
  return { known: true, value: lights, from: list.from };
}

/** Polarising sheets that a shot puts on a light; −1: it takes off the one that the light had. */
function sheetsAdded(base: GroupTypes['lights'], inShot: GroupTypes['lights']): number {
  const sheets = ({ polarised }: GroupTypes['lights']): number =>
    polarised.state === 'known' && polarised.value !== 'none' ? 1 : 0;
  return sheets(inShot) - sheets(base);
}

const BRIGHTNESS = ['luminance', 'illuminance', 'reading'] as const;

/** Whether a shot gives a new brightness for a light. */
const isRebrightened = (
  over: {
    readonly [K in (typeof BRIGHTNESS)[number]]?: { readonly state: string };
  },
): boolean => BRIGHTNESS.some((key) => (over[key]?.state ?? 'missing') !== 'missing');

const isCovered = (over: {
  readonly 'emitting-size'?: { readonly state: string } | undefined;
}): boolean => (over['emitting-size']?.state ?? 'missing') !== 'missing';

type LightAt = GroupTypes['lights']['at'];

/**
 * The light with the changes of this shot. A brightness given in the shot replaces every other way
 * of giving it, so that a reading taken for the shot is not weighed against the light's own data.
 */
function laidOver(
  base: GroupTypes['lights'],
  over: Omit<{ [K in keyof GroupTypes['lights']]?: GroupTypes['lights'][K] }, never>,
): GroupTypes['lights'] {
  const given = Object.entries(over).filter(([, field]) => field?.state !== 'missing');
  const cleared = isRebrightened(over)
    ? Object.fromEntries(
        // What is given for the shot is on its subject, not at the distance of a data sheet.
        [...BRIGHTNESS, 'illuminance-distance' as const].map((key) => [
          key,
          { state: 'missing', at: base[key].at } as const,
        ]),
      )
    : {};
  const kept = given.filter(([key]) => key in base);
  const at = over.at && movedTo(base.at, over.at);
  // A diffuser is the face that the subject sees, whatever the shape of the lamp behind it.
  const face = isCovered(over) && { diameter: { state: 'missing', at: base.diameter.at } as const };
  return { ...base, ...cleared, ...face, ...Object.fromEntries(kept), ...(at && { at }) };
}

/** The position that the shot moves the light to; parts of it that the shot doesn't give stay. */
function movedTo(base: LightAt, over: LightAt): LightAt {
  if (!isKnown(base) || !isKnown(over)) return over.state === 'missing' ? base : over;
  const said = Object.entries(over.value).filter(([, field]) => field.state !== 'missing');
  return { ...over, value: { ...base.value, ...Object.fromEntries(said) } };
}

function filtersOf(
  reader: PlanReader,
  rig: Named<Rig> | undefined,
  fields: Shot,
  shot: string,
): Bench['filters'] {
  const own = fields.filters.state === 'missing' ? [] : [figureOf(fields.filters, shot)];
  const ofRig =
    own.length > 0 || !rig || rig.fields.filters.state === 'missing'
      ? []
      : [figureOf(rig.fields.filters, rig.name)];
  const lists = [...own, ...ofRig];
  if (lists.some((list) => !list.known)) return unknownOf(lists);
  const filters: Named<GroupTypes['filters']>[] = [];
  const from: Place[] = [];
  for (const list of lists) {
    if (!list.known) continue;
    from.push(...list.from);
    for (const item of list.value) {
      const filter = lookUp(reader, 'filters', item);
      if (filter.state !== 'found') return silent;
      filters.push(filter.entry);
    }
  }
  return { known: true, value: filters, from };
}

const isoLimitsOf = remembered(({ name, fields }: Named<Body>): Bench['isoLimits'] => {
  const limits = ifKnown(fields.iso);
  if (!limits) return noIsoLimits();
  const one = (key: 'lowest' | 'highest' | 'usable-to') => figureOf(limits[key], name);
  return { lowest: one('lowest'), highest: one('highest'), cleanTo: one('usable-to') };
});

function noIsoLimits(): Bench['isoLimits'] {
  const none = notKnown(message`the body's ISO range is not given`);
  return { lowest: none, highest: none, cleanTo: none };
}

/** Ends of the range and the third-stop marks between them. */
const marksIn = remembered(
  ({ from, to }: { readonly from: number; readonly to: number }): readonly number[] => {
    const between = MARKED_APERTURES.filter((mark) => mark > from * 1.03 && mark < to * 0.97);
    return from === to ? [from] : [from, ...between, to];
  },
);
