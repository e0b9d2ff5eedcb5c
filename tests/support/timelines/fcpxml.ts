/**
 * A reader of FCPXML, written from its published reference: items of a spine stand at their `offset`
 * for their `duration`; `start` is the item's own time there. Without a time map that is the clip's
 * time; with one, `time` of its points is, and `value` the clip's, linear in between. The frame that
 * is on at a moment is shown (`floor`). Sums are exact. The XML is parsed by jsdom.
 */
import { JSDOM } from 'jsdom';
import {
  Ratio,
  type ReadDissolve,
  type ReadTimeline,
  type Segment,
  type ShownAt,
  type ShownFrame,
  within,
} from './shown.ts';

const parser = new new JSDOM().window.DOMParser();

export function parseXml(text: string): Document {
  const document = parser.parseFromString(text, 'application/xml');
  const wrong = document.querySelector('parsererror');
  if (wrong) throw new Error(wrong.textContent);
  return document;
}

function seconds(text: string | null): Ratio {
  const [, n, d = '1'] = /^(-?\d+)(?:\/(\d+))?s$/.exec(text ?? '') ?? [];
  if (n === undefined) throw new Error(`no time: ${text}`);
  // "a 64-bit numerator and a 32-bit denominator"
  if (BigInt(d) >= 2n ** 31n || BigInt(n) >= 2n ** 63n) throw new Error(`terms too large: ${text}`);
  return Ratio.of(BigInt(n), BigInt(d));
}

interface Asset {
  readonly name: string;
  readonly start: Ratio;
  /** Length of a frame, s. */
  readonly frame: Ratio;
}

interface MapPoint {
  readonly time: Ratio;
  readonly value: Ratio;
}

interface Item {
  readonly element: globalThis.Element;
  /** Frames of the edit. */
  readonly from: number;
  readonly to: number;
  readonly points: readonly MapPoint[];
}

export function readFcpxml(text: string): ReadTimeline {
  const document = parseXml(text);
  const by = (selector: string) => [...document.querySelectorAll(selector)];
  const frameOf = new Map(
    by('format').map((format) => [format.id, format.getAttribute('frameDuration')]),
  );
  const assets = new Map(
    by('asset').map((asset): [string, Asset] => [
      asset.id,
      {
        name: asset.getAttribute('name')!,
        start: seconds(asset.getAttribute('start')),
        frame: seconds(frameOf.get(asset.getAttribute('format')!) ?? '1s'),
      },
    ]),
  );
  const sequence = document.querySelector('sequence')!;
  const frame = seconds(frameOf.get(sequence.getAttribute('format')!)!);
  const origin = seconds(sequence.getAttribute('tcStart'));
  const items = [...sequence.querySelector('spine')!.children].map((element): Item => {
    const from = seconds(element.getAttribute('offset')).minus(origin).over(frame).whole();
    const to = from + seconds(element.getAttribute('duration')).over(frame).whole();
    const points = [...element.getElementsByTagName('timept')].map((point) => ({
      time: seconds(point.getAttribute('time')),
      value: seconds(point.getAttribute('value')),
    }));
    return { element, from, to, points };
  });
  const parts = items.filter(({ element }) => element.tagName !== 'transition');
  const frames: ShownAt[] = parts.flatMap((item) =>
    Array.from({ length: item.to - item.from }, (_, at) => ({
      own: shownAt(item, at, assets, frame),
    })),
  );
  parts.reduce((end, { from, to }) => {
    if (from !== end) throw new Error(`a hole in the spine at ${end}`);
    return to;
  }, 0);
  const dissolves = items.flatMap((item, index): ReadDissolve[] => {
    if (item.element.tagName !== 'transition') return [];
    const [before, after] = [items[index - 1]!, items[index + 1]!];
    for (let at = item.from; at < item.to; at++)
      frames[at] = {
        own: shownAt(after, at - after.from, assets, frame),
        out: shownAt(before, at - before.from, assets, frame),
      };
    return [{ from: item.from, to: item.to, into: after.element.getAttribute('name')! }];
  });
  const segments = parts.flatMap((item) => segmentsOf(item, assets, frame));
  return { frames, dissolves, segments };
}

const toNumber = ({ n, d }: Ratio): number => Number(n) / Number(d);

function segmentsOf(
  { element, points, from, to }: Item,
  assets: ReadonlyMap<string, Asset>,
  frame: Ratio,
): readonly Segment[] {
  if (element.tagName !== 'asset-clip') return [];
  const asset = assets.get(element.getAttribute('ref')!)!;
  const start = seconds(element.getAttribute('start'));
  const inClip = (value: Ratio): number => toNumber(value.minus(asset.start).over(asset.frame));
  const frames = to - from;
  if (points.length === 0)
    return [
      {
        clip: asset.name,
        from,
        frames,
        place: inClip(start),
        perFrame: toNumber(frame.over(asset.frame)),
      },
    ];
  return points.slice(1).flatMap((next, index) => {
    const last = points[index]!;
    const begins = last.time.minus(start).over(frame).whole();
    const lasts = next.time.minus(last.time).over(frame).whole();
    const whole = {
      clip: asset.name,
      from: from + begins,
      frames: lasts,
      place: inClip(last.value),
    };
    const perFrame = (inClip(next.value) - whole.place) / lasts;
    return within({ ...whole, perFrame }, from, to) ?? [];
  });
}

function shownAt(
  { element, points }: Item,
  at: number,
  assets: ReadonlyMap<string, Asset>,
  frame: Ratio,
): ShownFrame | null {
  if (element.tagName === 'gap') return null;
  const asset = assets.get(element.getAttribute('ref')!)!;
  if (element.tagName === 'video') return { clip: asset.name, frame: 0 };
  const own = seconds(element.getAttribute('start')).plus(frame.times(Ratio.of(at)));
  const time = points.length === 0 ? own : mapped(points, own);
  return { clip: asset.name, frame: time.minus(asset.start).over(asset.frame).floor() };
}

function mapped(points: readonly MapPoint[], at: Ratio): Ratio {
  const next = points.findIndex(({ time }) => at.order(time) <= 0);
  if (next < 0 || at.order(Ratio.of(0)) < 0) throw new Error('a moment that the time map has not');
  const [a, b] = [points[Math.max(0, next - 1)]!, points[Math.max(1, next)]!];
  if (a.time.order(b.time) >= 0) throw new Error('points of a time map out of order');
  const share = at.minus(a.time).over(b.time.minus(a.time));
  return a.value.plus(b.value.minus(a.value).times(share));
}
