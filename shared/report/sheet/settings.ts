/** What to set for a shot, large, and what to put up for it. */

import type { Setting } from '../../api/sheet.ts';
import type { LightInUse } from '../../figures/bench.ts';
import { sourceOf } from '../../figures/light-source.ts';
import { clipRateOf, isConformed, slowedTimes } from '../../figures/playback.ts';
import { type Field, ifKnown } from '../../plan/field.ts';
import type { Move } from '../../plan/generated/types.ts';
import type { QuantityId } from '../../quantity/index.ts';
import { isoRangeOf, neededIso } from '../../rules/needed-iso.ts';
import { asFound, sizeWords } from '../../say/figures.ts';
import { miredWords, type Say } from '../../say/say.ts';
import { shown, shownField } from '../../say/shown.ts';
import { allOf } from '../../words/listed.ts';
import { message } from '../../words/message.ts';
import { atSubject } from '../at-subject.ts';
import { ringPlace } from '../ring.ts';
import { placeWords } from './drawings/set-up.ts';
import { positionWords } from './focus-marks.ts';
import { around, aroundField, exposureSaid, type SaidShot, settable } from './said.ts';

/** "gels half-orange (+81 mired, 3850 K)" */
function gelWords({ gels, gelShift, fields }: LightInUse): string {
  const names = gels.join(', ');
  const colour = ifKnown(fields['colour-temperature']);
  if (gelShift === null) return message`gels ${names}`;
  const shift = miredWords(gelShift);
  return colour === undefined
    ? message`gels ${names} (${shift})`
    : message`gels ${names} (${shift}, ${Math.round(colour / 10) * 10} K)`;
}

/** The words that are there, with commas; undefined where none is. */
/** The polarising sheet on a light: nobody who builds the shot may forget it. */
function sheetWords({ fields }: LightInUse): string | undefined {
  const how = ifKnown(fields.polarised);
  if (how === 'crossed') return message`polarising sheet, crossed with the one on the lens`;
  return how === 'parallel'
    ? message`polarising sheet, in line with the one on the lens`
    : undefined;
}

/** The diffuser that the shot puts before a light, whether its loss is known or assumed. */
function diffuserWords({ name }: LightInUse, { bench, say }: SaidShot): string | undefined {
  const change = ifKnown(bench.fields.relight)?.get(name);
  const face = change && ifKnown(change) && ifKnown(ifKnown(change)!['emitting-size']);
  return face && message`through a diffuser of ${sizeWords([face.width, face.height], say)}`;
}

const joined = (...words: readonly (string | false | null | undefined)[]): string | undefined => {
  const said = words.filter((word): word is string => Boolean(word));
  return said.length > 0 ? said.join(', ') : undefined;
};

/** Between which values it was written; undefined where it is one value. */
const rangeOf = (
  id: QuantityId,
  field: Field<unknown> | undefined,
  say: Say,
): string | undefined =>
  field?.state === 'known' && field.range ? shownField(id, field, say) : undefined;

export function settingsOf(shot: SaidShot): readonly Setting[] {
  return [
    aperture(shot),
    shutter(shot),
    iso(shot),
    whiteBalance(shot),
    record(shot),
    field(shot),
    distance(shot),
    ...tilt(shot),
    ...focus(shot),
    shot.bench.stack ? stack(shot) : shot.bench.timeLapse ? timeLapse(shot) : take(shot),
  ];
}

function aperture(shot: SaidShot): Setting {
  const { bench, figures, say } = shot;
  const { marked, bodyShows } = bench;
  const effective = figures.effectiveFNumber;
  const displays = bodyShows === 'effective' ? effective : marked;
  return {
    label: message`Aperture`,
    key: 'aperture',
    value: marked.known ? say.fNumber(marked.value) : null,
    note: joined(
      effective.known &&
        `${say.effective(effective.value, effective.measured)}${around(
          shot,
          (of) => of.effectiveFNumber,
          (n) => say.fNumber(n),
        )}`,
      bodyShows && displays.known && message`camera displays ${say.fNumber(displays.value)}`,
    ),
  };
}

function shutter({ bench, figures, say }: SaidShot): Setting {
  const { shutterSeconds: seconds, shutterAngleDeg: angle } = figures;
  const isAngle = bench.shutter.known && bench.shutter.value.kind === 'angle';
  return {
    label: message`Shutter`,
    key: 'shutter',
    value: bench.shutter.known ? shown('shutter', bench.shutter.value, say) : null,
    note: isAngle
      ? seconds.known
        ? say.shutter(seconds.value)
        : undefined
      : angle.known && !bench.timeLapse
        ? `${say.number(angle.value)}°`
        : undefined,
  };
}

function iso(shot: SaidShot): Setting {
  const { bench, figures, say } = shot;
  const { exposureErrorStops: error, isoNeeded } = figures;
  const auto = bench.iso.known && bench.iso.value === 'auto';
  return {
    label: message`ISO`,
    key: 'iso',
    value: bench.iso.known ? String(bench.iso.value) : null,
    note: auto
      ? isoNeeded.known
        ? message`needs ${neededIso(isoNeeded.value, isoRangeOf(bench), say)}${around(
            shot,
            (of) => of.isoNeeded,
            (needed) => say.iso(needed),
          )}`
        : undefined
      : error.known
        ? (exposureSaid(shot) ?? undefined)
        : undefined,
  };
}

function whiteBalance({ bench, say }: SaidShot): Setting {
  const set = ifKnown(bench.fields['white-balance']);
  return {
    label: message`White balance`,
    key: 'white-balance',
    value: set === undefined ? null : shown('white-balance', set, say),
  };
}

function record({ bench, say }: SaidShot): Setting {
  if (bench.timeLapse?.isStills || bench.stack?.isStills)
    return {
      label: message`Recording`,
      key: bench.stack ? 'stack' : 'time-lapse',
      value: message`stills`,
      note: bench.recordedPixels.known ? say.resolution(bench.recordedPixels.value) : undefined,
    };
  const { recording } = bench;
  const size = recording && ifKnown(recording.fields.resolution);
  const rate = recording && ifKnown(recording.fields.rate);
  const name = ifKnown(bench.fields.record);
  return {
    label: message`Recording`,
    key: 'record',
    value: rate ? shown('rate', rate, say) : (name ?? null),
    note: joined(size && shown('pixels', size, say), rate && name, playsWords(bench, say)),
  };
}

/** "plays at 25 fps, 21% of real speed" */
function playsWords(bench: SaidShot['bench'], say: Say): string | null {
  const times = slowedTimes(bench);
  const rate = clipRateOf(bench);
  if (!isConformed(bench) || !times.known || !rate.known) return null;
  return message`plays at ${shown('rate', rate.value, say)}, ${say.percent(1 / times.value)} of real speed`;
}

function field(shot: SaidShot): Setting {
  const { bench, figures, say } = shot;
  const { fieldMm, magnification, ringMagnification: ring } = figures;
  const hasEnd = fieldMm.known && Number.isFinite(fieldMm.value[0]);
  return {
    label: message`Field`,
    key: String(bench.wantedAt?.path[0] ?? 'field'),
    value: hasEnd ? sizeWords(fieldMm.value, say) : wanted(bench, say),
    note: joined(
      hasEnd && message`frame width ${settable(fieldMm.value[0], shot)}`,
      hasEnd && aroundField(shot).trim(),
      magnification.known &&
        asFound(
          magnification,
          `${say.magnification(magnification.value)}${around(
            shot,
            (of) => of.magnification,
            (m) => say.magnification(m),
          )}`,
        ),
      atSubject(figures, say),
      ring.known && message`focus ring at ${ringPlace(bench, figures, say)!}`,
    ),
  };
}

/** What the shot asks for, where it can't be had. */
function wanted({ fields }: SaidShot['bench'], say: Say): string | null {
  const [field, magnification] = [ifKnown(fields.field), ifKnown(fields.magnification)];
  if (field !== undefined) return shown('length', field, say);
  return magnification === undefined ? null : shown('magnification', magnification, say);
}

function distance(shot: SaidShot): Setting {
  const { bench, figures, say } = shot;
  const length = (mm: number): string => say.length(mm);
  const { workingDistanceMm: room, subjectToSensorMm: whole } = figures;
  return {
    label: message`Working distance`,
    key: bench.wantedAt ? String(bench.wantedAt.path[0]) : 'field',
    follows: true,
    value: room.known ? length(room.value) : null,
    note: joined(
      around(shot, (of) => of.workingDistanceMm, length).trim(),
      room.known && room.measured && message`measured`,
      whole.known &&
        message`${length(whole.value)}${around(shot, (of) => of.subjectToSensorMm, length)} to the sensor`,
    ),
  };
}

function tilt({ bench, say }: SaidShot): readonly Setting[] {
  const { tiltRad, tiltAxis } = bench;
  if (!tiltRad.known || tiltRad.value === 0) return [];
  return [
    {
      label: message`Tilt`,
      key: 'tilt',
      value: say.angle(tiltRad.value),
      note: joined(
        rangeOf('angle', bench.fields.tilt, say),
        tiltAxis === 'level' ? leansWords(bench) : turnsWords(bench),
      ),
    },
  ];
}

const isFilm = ({ subject }: SaidShot['bench']): boolean =>
  subject !== undefined && ifKnown(subject.fields.kind) === 'film';

const leansWords = (bench: SaidShot['bench']): string =>
  isFilm(bench) ? message`film leans back` : message`subject leans back`;

const turnsWords = (bench: SaidShot['bench']): string =>
  isFilm(bench) ? message`film turned sideways` : message`subject turned sideways`;

function focus(shot: SaidShot): readonly Setting[] {
  const { figures, say } = shot;
  const length = (mm: number): string => say.length(mm);
  const { focusBehindNearestMm: behind } = figures;
  if (!behind.known) return [];
  const value = length(behind.value);
  const bounds = around(shot, (of) => of.focusBehindNearestMm, length).trim();
  return [
    {
      label: message`Focus`,
      key: 'subject',
      value,
      note: joined(bounds, message`behind the nearest point`),
    },
  ];
}

/** As it is set on the body or the intervalometer, and what comes of it. */
function timeLapse({ bench, figures, say }: SaidShot): Setting {
  const { timeLapse: lapse } = bench;
  const { timeLapseFrames: frames, timeLapseS: real, playingS: plays } = figures;
  return {
    label: message`Time-lapse`,
    key: 'time-lapse',
    value: lapse?.intervalS.known
      ? message`a frame every ${say.seconds(lapse.intervalS.value)}`
      : null,
    note: joined(
      frames.known &&
        (lapse?.isStills
          ? message`${frames.value} stills`
          : message`${frames.value} frames of video`),
      real.known && message`runs ${say.seconds(real.value)}`,
      // Who waits for the last frame need not wait for the interval after it.
      real.known &&
        lapse?.intervalS.known &&
        message`the last frame ${say.seconds(lapse.intervalS.value)} before the end`,
      plays.known && message`plays ${say.seconds(plays.value)}`,
      figures.growthPx.known &&
        figures.growthPx.value > 0 &&
        message`${say.pixels(figures.growthPx.value)} of growth per frame`,
      lapse?.fields && ifKnown(lapse.fields.supply) === 'mains' && message`on mains power`,
    ),
  };
}

function take({ bench, figures, say }: SaidShot): Setting {
  const record = ifKnown(bench.fields.take);
  const [duration, count, settle] = [
    record && ifKnown(record.duration),
    record && ifKnown(record.count),
    record && ifKnown(record.settle),
  ];
  return {
    label: message`Takes`,
    key: 'take',
    value:
      duration === undefined
        ? null
        : count === undefined
          ? shown('time', duration, say)
          : `${count} × ${shown('time', duration, say)}`,
    note: joined(
      settle !== undefined && message`wait ${shown('time-or-zero', settle, say)} before each`,
      figures.playingS.known && message`plays ${say.seconds(figures.playingS.value)}`,
    ),
  };
}

/** How many frames, what moves between them, and how long it takes. */
function stack(shot: SaidShot): Setting {
  const { bench, figures, say } = shot;
  const { stackFrames: frames, stackStepMm: step, stackTimeS: time } = figures;
  const { moves, settleS } = bench.stack!;
  return {
    label: message`Focus stack`,
    key: 'stack',
    value: frames.known ? framesWords(frames.value) : null,
    note: joined(
      step.known && message`${positionWords(step.value, step.value, say)} apart`,
      moves.known && (moves.value === 'rail' ? message`by rail` : message`by focus ring`),
      settleS.known && message`wait ${say.seconds(settleS.value)} before each`,
      time.known && message`takes ${say.seconds(time.value)}`,
      bench.stack!.isStills && dataWords(shot),
    ),
  };
}

/** "1.2 GB (0.3 to 2)" */
function dataWords(shot: SaidShot): string | null {
  const { recordedBytes: data } = shot.figures;
  const bytes = (value: number): string => shot.say.bytes(value);
  return data.known ? `${bytes(data.value)}${around(shot, (of) => of.recordedBytes, bytes)}` : null;
}

const framesWords = (count: number): string =>
  count === 1 ? message`${count} frame` : message`${count} frames`;

/** How fast it goes, or from which mark of the ring to which. */
function moveNote(move: Move, say: Say): string | undefined {
  const [speed, from, to] = [ifKnown(move.speed), ifKnown(move.from), ifKnown(move.to)];
  if (from !== undefined && to !== undefined)
    return message`lens from ${shown('ring', from, say)} to ${shown('ring', to, say)}`;
  return speed === undefined ? undefined : shown('move-speed', speed, say);
}

export function benchOf(shot: SaidShot): readonly Setting[] {
  const { bench, say } = shot;
  const { subject, rig, parts, lights, filters, fields, carriers } = bench;
  const subjectFields = subject?.fields;
  const carried = [carriers.head, carriers.rail, carriers.stand].flatMap(
    (carrier) => carrier?.name ?? [],
  );
  const move = ifKnown(fields.move);
  const flow = fields['subject-speed'];
  const rows: (Setting | null)[] = [
    {
      label: message`Subject`,
      key: 'subject',
      value: subject?.name ?? ifKnown(fields.subject) ?? null,
      note: subjectFields && joined(ifKnown(subjectFields.kind), ifKnown(subjectFields.holder)),
    },
    {
      label: message`Rig`,
      key: 'rig',
      value: rig?.name ?? ifKnown(fields.rig) ?? null,
      note: joined(
        parts.known && parts.value.map(({ name }) => name).join(' + '),
        carried.length > 0 && message`on ${allOf(carried)}`,
      ),
    },
    ...(lights.known
      ? lights.value.map((light): Setting => {
          const source = sourceOf(light);
          const dimmed = light.dimmedStops.known ? light.dimmedStops.value : 0;
          return {
            label: message`Light`,
            key: 'light',
            value: light.name,
            note: joined(
              source.known && placeWords(source.value, say),
              rangeOf('length', ifKnown(light.fields.at)?.distance, say),
              diffuserWords(light, shot),
              light.setColour?.state === 'known' &&
                message`set to ${shown('colour-temperature', light.setColour.value, say)}`,
              light.gels.length > 0 && gelWords(light),
              sheetWords(light),
              dimmed !== 0 &&
                `${dimmed > 0 ? message`dimmed` : message`raised`} ${say.stops(dimmed)}`,
            ),
          };
        })
      : (ifKnown(fields.light) ?? []).flatMap((light): Setting[] => {
          const name = ifKnown(light);
          return name === undefined ? [] : [{ label: message`Light`, key: 'light', value: name }];
        })),
    filters.known && filters.value.length > 0
      ? {
          label: message`Filters`,
          key: 'filters',
          value: filters.value.map(({ name }) => name).join(', '),
        }
      : null,
    move
      ? {
          label: message`Move`,
          key: 'move',
          value: ifKnown(move.kind) ?? null,
          note: moveNote(move, say),
        }
      : null,
    flow.state !== 'known'
      ? null
      : {
          label: message`Subject speed`,
          key: 'subject-speed',
          value: shownField('speed', flow, say),
        },
  ];
  return rows.filter((row) => row !== null);
}
