/**
 * What a shot's figures are uncertain for: every value that was written as a range, and every one
 * that was assumed and has ends. A width is two ways to lay the shot out again, once at each end.
 */
import type { Prior } from '../assumptions/assumption.ts';
import {
  type AssumptionId,
  DIFFUSER_LOSS,
  INCIDENT,
  IRIS_KEEPS_SIZE,
  POLARISER_LOSS,
  REFLECTED,
  STILL_BYTES_PER_PIXEL,
} from '../assumptions/table.ts';
import type { Field } from '../plan/field.ts';
import type { Place } from '../plan/place.ts';
import { later } from '../words/message.ts';
import {
  type Assumed,
  closestDistanceOf,
  closestMagnificationOf,
  filterLoss,
  flangeOf,
  frontDiameterOf,
  glassLoss,
  glossReflectanceOf,
  highlightLatitudeOf,
  pupilRatioOf,
  vibrationOfStand,
} from './assumed.ts';
import type { Bench, LightInUse } from './bench.ts';
import { layerOf, unknownThickness } from './film-share.ts';
import { type AnyPart, findPart } from './find-part.ts';
import { entryBench, fitOf, writtenOf } from './fitted-entry.ts';
import { fittedLens } from './fitted-lens.ts';
import { isGloss, mirrorKind } from './mirror-kind.ts';
import { pointSizeOf } from './moved-light.ts';
import type { Named } from './named.ts';
import { assumedStillOf, stillsField } from './stills.ts';
import { isClear } from './through.ts';
import { keyAt, turnsBetween } from './turns.ts';
import type { Change, ConstantKey, Width } from './width.ts';

/** Every width that figures of this shot may have, each input once. */
export function widthsOf(bench: Bench): readonly Width[] {
  const found = new Map<string, Width>();
  const add = (width: Width): void => {
    const key =
      width.at && !width.group
        ? `${width.at.file} ${width.at.entry} ${width.at.path.join('.')}`
        : width.group
          ? `${width.group} ${found.size}`
          : width.key;
    if (!found.has(key)) found.set(key, width);
  };
  const axes = lensAxes(bench);
  const isFitted = (at: Place): boolean =>
    axes.length > 0 &&
    at.entry === bench.lens?.entry &&
    at.file === bench.lens.file &&
    FITTED.has(String(at.path[0]));
  const addOwn = (width: Width): void => {
    if (!width.at || !isFitted(width.at)) add(width);
  };
  for (const { name, fields } of entriesOf(bench))
    for (const width of rangesIn(fields, name)) addOwn(width);
  for (const [field, name, assumed] of assumptionsIn(bench)) {
    if (field.state !== 'missing' || isFitted(field.at)) continue;
    const width = assumedWidth(field.at, name, assumed);
    if (width) add(width);
  }
  for (const width of pointsIn(bench)) add(width);
  for (const width of floatingIn(bench)) add(width);
  for (const width of stillsIn(bench)) add(width);
  for (const width of constantsIn(bench))
    if (axes.length === 0 || width.assumed !== 'iris') add(width);
  for (const width of axes) add(width);
  for (const width of entryAxes(bench)) add(width);
  return [...found.values()];
}

/** Keys of a lens that its bench speaks of. */
const FITTED: ReadonlySet<string> = new Set(['focal-length', 'closest', 'pupil-ratio', 'bench']);

/** Nearly everything lies between two standard deviations to either side. */
const SIGMAS = 2;

/** What the lens's bench leaves uncertain of it; none where it has no bench. */
function lensAxes({ lens, body, source }: Bench): readonly Width[] {
  if (!lens) return [];
  const { reader } = source;
  const always = reader.constants.lensStands !== null;
  const fit = fittedLens(reader, lens, body?.fields, always);
  return (fit?.axes ?? []).map((direction, axis) => ({
    key: 'bench',
    of: lens.name,
    at: lens.fields.bench.at,
    assumed: null,
    low: { kind: 'lens-axis', axis, value: -SIGMAS },
    high: { kind: 'lens-axis', axis, value: SIGMAS },
    middle: 0,
    between: [],
    group: lens.name,
    direction,
  }));
}

/** What the benches of the other entries leave uncertain. */
function entryAxes(bench: Bench): readonly Width[] {
  const { body, lights, source } = bench;
  const { reader } = source;
  const parts = partsOf(bench).flatMap(({ kind, entry }): readonly Named<object>[] =>
    kind === 'converter' || kind === 'close-up' ? [entry] : [],
  );
  const lit = (lights.known ? lights.value : []).flatMap(
    ({ name }) => reader.find('lights', name) ?? [],
  );
  return [...(body ? [body] : []), ...parts, ...lit].flatMap((entry: Named<object>) => {
    const written = writtenOf(entry) as { readonly bench?: Field<unknown> };
    const at = written.bench?.at;
    const said = entryBench(entry.group, written, reader.constants.incident);
    const { file, entry: id, name, group } = entry;
    const end = (axis: number, value: number): Change => ({
      kind: 'entry-axis',
      file,
      entry: id,
      axis,
      value,
    });
    return ((said && fitOf(said)?.axes) ?? []).map(
      (_, axis): Width => ({
        key: 'bench',
        of: name,
        at: at ?? null,
        assumed: null,
        low: end(axis, -SIGMAS),
        high: end(axis, SIGMAS),
        middle: 0,
        between: [],
        group: `${group} ${name}`,
      }),
    );
  });
}

interface Entry {
  readonly name: string;
  readonly fields: object;
}

/** The shot and all that it names, as far as it can be looked up. */
function entriesOf(bench: Bench): readonly Entry[] {
  const { shot, fields, rig, subject, filters, lights } = bench;
  return [
    { name: shot, fields },
    ...(rig ? [rig] : []),
    ...(subject ? [subject] : []),
    ...partsOf(bench).map(({ entry }) => entry),
    ...(filters.known ? filters.value : []),
    ...(lights.known ? lights.value : []),
  ];
}

/** The entries of the rig's parts. */
function partsOf({ parts, source }: Bench): readonly AnyPart[] {
  if (!parts.known) return [];
  return parts.value.flatMap(({ name }) => findPart(source.reader, name) ?? []);
}

type AnyField = Field<unknown>;

const isField = (value: unknown): value is AnyField =>
  typeof value === 'object' && value !== null && 'state' in value && 'at' in value;

/** The ranges written in an entry, found once for all shots. */
function rangesIn(fields: object, of: string): readonly Width[] {
  let found = foundRanges.get(fields);
  if (found?.of !== of) {
    found = { of, ranges: rangesBelow(fields, of) };
    foundRanges.set(fields, found);
  }
  return found.ranges;
}

const foundRanges = new WeakMap<object, { readonly of: string; readonly ranges: Width[] }>();

/** In a record and in the records below it. */
function rangesBelow(fields: object, of: string): Width[] {
  return Object.entries(fields).flatMap(([key, field]): Width[] => {
    // A bench tells its widths by what it leaves uncertain.
    if (key === 'bench' || !isField(field) || field.state !== 'known') return [];
    const { value, at, range } = field;
    if (!range)
      return typeof value === 'object' && value !== null && !(value instanceof Map)
        ? rangesBelow(value, of)
        : [];
    const end = (to: unknown): Change => ({ kind: 'field', at, value: to });
    const [low, high] = [range.low as number, range.high as number];
    return [
      {
        key: keyAt(at),
        of,
        at,
        assumed: null,
        low: end(low),
        high: end(high),
        middle: value as number,
        between: turnsBetween(at, low, value as number, high),
      },
    ];
  });
}

type MaybeAssumed = readonly [field: AnyField, of: string, assumed: Assumed | undefined];

function assumptionsIn(bench: Bench): readonly MaybeAssumed[] {
  const { body, lens, filters } = bench;
  const found: MaybeAssumed[] = [];
  if (body) found.push([body.fields['flange-distance'], body.name, flangeOf(body.fields)]);
  const { subject } = bench;
  const { stand } = bench.carriers;
  if (stand) found.push([stand.fields.vibration, stand.name, vibrationOfStand(stand.fields)]);
  if (subject && isGloss(bench)) {
    found.push([subject.fields.reflectance, subject.name, glossReflectanceOf(subject.fields)]);
    if (body) found.push([body.fields['highlight-latitude'], body.name, highlightLatitudeOf()]);
  }
  if (lens) {
    const { name, fields } = lens;
    if (fields['t-stop'].state === 'missing') found.push([fields.loss, name, glassLoss.lens]);
    found.push([fields['front-diameter'], name, frontDiameterOf(fields)]);
    found.push([fields['pupil-ratio'], name, pupilRatioOf(fields, body?.fields)]);
    const closest = fields.closest.state === 'known' ? fields.closest.value : undefined;
    if (closest) {
      found.push([closest['from-sensor'], name, closestDistanceOf(fields)]);
      found.push([closest.magnification, name, closestMagnificationOf(fields)]);
    }
  }
  for (const { kind, entry } of partsOf(bench))
    if (kind === 'converter' || kind === 'close-up')
      found.push([entry.fields.loss, entry.name, glassLoss[kind]]);
  for (const { name, fields } of filters.known ? filters.value : [])
    found.push([fields.loss, name, filterLoss(fields)]);
  return found;
}

function assumedWidth(at: Place, of: string, assumed: Assumed | undefined): Width | undefined {
  if (!assumed || assumed.prior.low === assumed.prior.high) return undefined;
  const { id, prior } = assumed;
  const end = (value: number): Change => ({ kind: 'field', at, value });
  return {
    key: keyAt(at),
    of,
    at,
    assumed: id,
    prior,
    low: end(prior.low),
    high: end(prior.high),
    middle: prior.middle,
    between: [],
  };
}

/** Lights without a size that were moved since they were read: the wide end gives them a face. */
function pointsIn(bench: Bench): readonly Width[] {
  const { lights } = bench;
  return (lights.known ? lights.value : []).flatMap((light) => {
    const { name, fields } = light;
    const width = assumedWidth(fields.diameter.at, name, pointSizeOf(light, bench));
    const { at } = fields['emitting-size'];
    return width ? [{ ...width, key: keyAt(at), at }] : [];
  });
}

/** A film on a liquid whose thickness isn't given returns between its least and its most. */
function floatingIn(bench: Bench): readonly Width[] {
  const { subject, tiltRad } = bench;
  if (!subject || mirrorKind(bench) !== 'surface') return [];
  const { reflectance } = subject.fields;
  const layer = layerOf(bench);
  if (reflectance.state !== 'missing' || layer?.thickness.state !== 'missing') return [];
  const prior = unknownThickness(layer, tiltRad);
  if (!prior.known) return [];
  const assumed: Assumed = { id: 'floating-film', prior: prior.value };
  const width = assumedWidth(reflectance.at, subject.name, assumed);
  const { at } = layer.thickness;
  return width ? [{ ...width, key: keyAt(at), at }] : [];
}

/** Stills whose size isn't given are as large as their pixels make them. */
function stillsIn(bench: Bench): readonly Width[] {
  const size = stillsField(bench, 'size');
  const width = size && assumedWidth(size.at, bench.body!.name, assumedStillOf(bench));
  if (!width) return [];
  const { middle, low, high } = STILL_BYTES_PER_PIXEL;
  const end = (value: number): Change => ({ kind: 'constant', key: 'stillBytesPerPixel', value });
  return [{ ...width, key: 'stills.size', low: end(low), high: end(high), middle }];
}

/** What no key says: which light counts as right, and what the iris does up close. */
function constantsIn(bench: Bench): readonly Width[] {
  const { lights, lens } = bench;
  const found: Width[] = [];
  const add = (key: ConstantKey, id: AssumptionId, words: string, prior: Prior): void => {
    const end = (value: number): Change => ({ kind: 'constant', key, value });
    found.push({
      key: words,
      of: null,
      at: null,
      assumed: id,
      prior,
      low: end(prior.low),
      high: end(prior.high),
      middle: prior.middle,
      between: [],
      ...(key === 'irisKeepsSize' && { hides: true }),
    });
  };
  if (lens && lens.fields.closest.state === 'known')
    add('irisKeepsSize', 'iris', later`the iris at close focus`, IRIS_KEEPS_SIZE);
  const isMirror = mirrorKind(bench) !== undefined || isGloss(bench) || isClear(bench);
  // An exposure read on the subject is right by itself; a mirror shows the lamp, which is converted.
  const isRead = (light: LightInUse): boolean => light.fields.reading.state !== 'missing';
  if (lights.known && lights.value.some((light) => isMirror || !isRead(light)))
    add('incident', 'incident-constant', later`the meter constant C`, INCIDENT);
  if (lights.known && lights.value.length > 0 && isMirror)
    add('reflected', 'reflected-constant', later`the meter constant K`, REFLECTED);
  if (lights.known && lights.value.some(({ sheetsAdded }) => sheetsAdded !== 0))
    add('sheetStops', 'sheet-loss', later`the light lost in the sheet`, POLARISER_LOSS);
  if (lights.known && lights.value.some(({ isDiffused }) => isDiffused))
    add('diffuserStops', 'diffuser-loss', later`the light lost in the diffuser`, DIFFUSER_LOSS);
  for (const { name, fields } of lights.known ? lights.value : [])
    if (
      fields.modulation.state === 'missing' &&
      fields.kind.state === 'known' &&
      fields.kind.value === 'led' &&
      fields.supply.state === 'known' &&
      fields.supply.value === 'mains'
    ) {
      const { at } = fields.modulation;
      const end = (value: unknown): Change => ({ kind: 'field', at, value });
      const hz = bench.mainsHz.known ? 2 * bench.mainsHz.value : 'none';
      found.push({
        key: 'modulation',
        of: name,
        at,
        assumed: 'modulation',
        low: end('none'),
        high: end(hz),
        middle: null,
        between: [],
      });
    }
  return found;
}
