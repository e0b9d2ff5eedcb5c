/**
 * The edit as FCPXML 1.11, by its published DTD and reference: a spine of clips, gaps and
 * transitions, with the music connected below its first item. A gap keeps the place of a take that
 * has no file yet. Times are fractions of a second, 64 bits over 32. A time map carries every speed but
 * real time: `time` counts from its first point, `value` in the clip's own time from its timecode.
 * Frames of a clip are those that are on at a moment (`floor`), never blended.
 */
import type { Rational } from '../../quantity/rational.ts';
import {
  type Exact,
  exact,
  fromRational,
  order,
  over,
  plus,
  wholeBelow,
  ZERO,
} from '../../timeline/exact.ts';
import {
  firstFrameOf,
  type LaidCut,
  type Material,
  type Programme,
} from '../../timeline/programme.ts';
import { timeMap } from '../../timeline/time-map.ts';
import { musicAsset, musicClip } from './fcpxml-music.ts';
import { seconds } from './fcpxml-time.ts';
import { type Element, element, xml } from './xml.ts';

/** The picture that is delivered, in pixels; null: not known. */
interface DeliveredSize {
  readonly width: number;
  readonly height: number;
}

/** Rates that `srcFrameRate` has words for, by frames in 1001 s. */
const NAMED_RATES = new Map(
  ['23.98', '24', '25', '29.97', '30', '47.95', '48', '50', '59.94', '60'].map((name) => [
    name.includes('.') ? Math.round(Number(name)) * 1000 : Number(name) * 1001,
    name,
  ]),
);

/** A still has no time of its own; readers begin it an hour in, so that it has handles. */
const STILL_START = '3600s';

export function fcpxml(programme: Programme, size: DeliveredSize | null): string {
  const { title, rate, start, frames } = programme;
  const inEdit = (count: number): Exact => over(exact(count), fromRational(rate));
  const resources = new Resources();
  const format = resources.format(rate, size);
  const spine = spineOf(programme, resources, inEdit);
  const sequence = element(
    'sequence',
    {
      format,
      duration: seconds(inEdit(frames)),
      tcStart: seconds(inEdit(start.frame)),
      tcFormat: start.isDrop ? 'DF' : 'NDF',
    },
    [element('spine', {}, spine)],
  );
  const project = element('project', { name: title }, [sequence]);
  return xml(
    element('fcpxml', { version: '1.11' }, [
      element('resources', {}, resources.all),
      element('event', { name: title }, [project]),
    ]),
    'fcpxml',
  );
}

/** Formats and clips, each once and with an id of its own. */
class Resources {
  readonly all: Element[] = [];
  readonly #ids = new Map<string, string>();

  #once(key: string, make: (id: string) => Element): string {
    const known = this.#ids.get(key);
    if (known) return known;
    const id = `r${this.#ids.size + 1}`;
    this.#ids.set(key, id);
    this.all.push(make(id));
    return id;
  }

  format({ n, d }: Rational, size: { width: number | null; height: number | null } | null): string {
    const picture = { width: size?.width ?? undefined, height: size?.height ?? undefined };
    return this.#once(`format ${n}/${d} ${picture.width}x${picture.height}`, (id) =>
      element('format', { id, frameDuration: seconds({ n: BigInt(d), d: BigInt(n) }), ...picture }),
    );
  }

  /** Of stills: a picture that lasts as long as it is shown. */
  #stillFormat({ width, height }: Material): string {
    const picture = { width: width ?? undefined, height: height ?? undefined };
    return this.#once(`still ${width}x${height}`, (id) =>
      element('format', { id, name: 'FFVideoFormatRateUndefined', ...picture }),
    );
  }

  /** What is connected to the first item, which begins at `origin` in its own time. */
  music(programme: Programme, inEdit: InEdit): (origin: Exact) => readonly Element[] {
    if (!programme.music) return () => [];
    const ref = this.#once('music', (id) => musicAsset(id, inEdit(programme.frames)));
    return (origin) => [musicClip(programme, ref, origin, inEdit)];
  }

  /** @param shown frames of the clip that the edit needs, where its own length isn't known */
  asset(material: Material, shown: number): string {
    const { key, name, url, rate, isStill, frames, plannedFrames } = material;
    const format = isStill ? this.#stillFormat(material) : this.format(rate, material);
    return this.#once(`asset ${key}`, (id) =>
      element(
        'asset',
        {
          id,
          name,
          start: isStill ? '0s' : seconds(inClip(material, 0)),
          duration: isStill
            ? '0s'
            : seconds(
                over(exact(frames ?? Math.max(plannedFrames ?? 0, shown)), fromRational(rate)),
              ),
          hasVideo: 1,
          format,
        },
        [element('media-rep', { kind: 'original-media', src: url ?? encodeURIComponent(name) })],
      ),
    );
  }
}

/** When a frame of a clip begins, s, from its timecode. */
const inClip = (material: Material, frame: number): Exact =>
  over(exact(firstFrameOf(material) + frame), fromRational(material.rate));

type InEdit = (frames: number) => Exact;

/** What is connected to an item that begins at `origin` in its own time, s. */
type Connected = (origin: Exact) => readonly Element[];

function spineOf(programme: Programme, resources: Resources, inEdit: InEdit): readonly Element[] {
  const { cuts, start, rate } = programme;
  const needed = neededFrames(cuts);
  const music = resources.music(programme, inEdit);
  return cuts.flatMap((cut, index) => {
    const { dissolve, startFrame, endFrame, covered, material } = cut;
    const after = cuts[index + 1]?.dissolve.after ?? 0;
    const at = (frame: number): string => seconds(inEdit(start.frame + frame));
    const connected: Connected = (origin) => (startFrame === 0 ? music(origin) : []);
    // Between two gaps there is nothing to dissolve.
    const isShown = [cuts[index - 1], cut].some((each) => each && each.material.url !== null);
    const join = isShown ? dissolve.before + dissolve.after : 0;
    const elements: Element[] = [];
    if (join > 0)
      elements.push(
        element('transition', {
          name: 'Cross Dissolve',
          offset: at(startFrame - dissolve.before),
          duration: seconds(inEdit(join)),
        }),
      );
    const end = material.url === null ? startFrame : startFrame + covered;
    if (end > startFrame)
      elements.push(
        clip(
          cut,
          { after, inEdit, rate, offset: at(startFrame) },
          connected,
          resources.asset(material, needed.get(material.key)!),
        ),
      );
    if (end < endFrame)
      elements.push(
        element(
          'gap',
          {
            name: cut.name,
            offset: at(end),
            start: '0s',
            duration: seconds(inEdit(endFrame - end)),
          },
          [...placeNote(cut), ...(end === startFrame ? connected(ZERO) : [])],
        ),
      );
    return elements;
  });
}

/** What belongs in a gap that has no file yet, in the words of the plan. */
function placeNote({ material, about, reframe, grade }: LaidCut): readonly Element[] {
  if (material.url !== null) return [];
  const parts = [material.name, about, reframe === null ? null : `${reframe}x`, grade];
  return [{ ...element('note'), text: parts.filter((part) => part !== null).join('; ') }];
}

/** Frames from the first that the edit needs of each clip. */
function neededFrames(cuts: readonly LaidCut[]): ReadonlyMap<string, number> {
  const needed = new Map<string, number>();
  for (const [index, { material, course }] of cuts.entries()) {
    const after = cuts[index + 1]?.dissolve.after ?? 0;
    const last = timeMap(course, 0, endOf(cuts[index]!, after)).at(-1)!.place;
    needed.set(material.key, Math.max(needed.get(material.key) ?? 1, wholeBelow(last) + 1));
  }
  return needed;
}

interface Around {
  /** Frames in which the next dissolve shows it after the cut. */
  readonly after: number;
  readonly inEdit: InEdit;
  readonly rate: Rational;
  readonly offset: string;
}

function clip(cut: LaidCut, around: Around, connected: Connected, ref: string): Element {
  const { name, material, course, covered, about, grade, reframe } = cut;
  const { inEdit, offset, rate } = around;
  const duration = seconds(inEdit(covered));
  const note: readonly Element[] = about === null ? [] : [{ ...element('note'), text: about }];
  const scale =
    reframe === null ? [] : [element('adjust-transform', { scale: `${reframe} ${reframe}` })];
  const graded = (start: string): readonly Element[] =>
    grade === null ? [] : [element('keyword', { start, duration, value: `grade ${grade}` })];
  if (material.isStill)
    return element('video', { ref, offset, name, start: STILL_START, duration }, [
      ...note,
      ...scale,
      ...connected(exact(3600)),
      ...graded(STILL_START),
    ]);
  const isRealTime =
    order(course.from, course.to) === 0 &&
    order(course.from, over(fromRational(material.rate), fromRational(rate))) === 0;
  const origin = isRealTime ? inClip(material, course.start) : inEdit(cut.dissolve.before);
  return element('asset-clip', { ref, offset, name, start: seconds(origin), duration }, [
    ...note,
    ...conform(material, rate),
    ...(isRealTime ? [] : [retimed(cut, around)]),
    ...scale,
    ...connected(origin),
    ...graded(seconds(origin)),
  ]);
}

/** A clip of another rate keeps its speed, frame by frame. */
function conform({ rate }: Material, edit: Rational): readonly Element[] {
  if (rate.n === edit.n && rate.d === edit.d) return [];
  const name = NAMED_RATES.get((rate.n * 1001) / rate.d);
  return [element('conform-rate', { scaleEnabled: 0, srcFrameRate: name, frameSampling: 'floor' })];
}

/** The first frame of a cut in which it isn't shown any more. */
const endOf = ({ covered, course }: LaidCut, after: number): number =>
  covered < course.frames ? covered : covered + after;

function retimed(cut: LaidCut, { after, inEdit }: Around): Element {
  const { course, dissolve, material } = cut;
  const points = timeMap(course, dissolve.before, endOf(cut, after));
  return element(
    'timeMap',
    { frameSampling: 'floor' },
    points.map(({ at, place }) =>
      element('timept', {
        time: seconds(inEdit(at + dissolve.before)),
        value: seconds(plus(inClip(material, 0), over(place, fromRational(material.rate)))),
        interp: 'linear',
      }),
    ),
  );
}
