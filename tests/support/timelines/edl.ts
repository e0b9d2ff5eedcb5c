/**
 * A reader of lists in the form of CMX 3600, written from its published description (from memory):
 * events with source and record timecode, C for a cut and D for a dissolve of so many frames that
 * begins with its event, in two lines of one number; M2 gives frames of the source a second, for the
 * event with that reel and source timecode. Timecode is counted by the npm package smpte-timecode.
 */
import Timecode from 'smpte-timecode';
import {
  Ratio,
  type ReadDissolve,
  type ReadTimeline,
  type Segment,
  type ShownAt,
  type ShownFrame,
} from './shown.ts';

const EVENT = /^(\d{3,}) {2}(\S+) +V +(C|D) +(?:(\d{3}) )? *(\S{11}) (\S{11}) (\S{11}) (\S{11})$/;
const MOTION = /^M2 +(\S+) +(-?\d+\.\d+) +(\S{11})$/;

interface Event {
  readonly reel: string;
  readonly dissolve: number;
  readonly source: readonly [number, number];
  readonly record: readonly [number, number];
  speed: Ratio | null;
  clip: string;
  /** Its cut, by our own comment. */
  cut: string;
}

/** A decimal, exactly. */
const decimal = (text: string): Ratio => {
  const [whole = '', part = ''] = text.split('.');
  return Ratio.of(BigInt(whole + part), 10n ** BigInt(part.length));
};

/**
 * @param rate of the edit, as numerator and denominator
 * @param start record timecode of the edit's first frame, and what each clip's own timecode is
 */
export function readEdl(
  text: string,
  rate: readonly [number, number],
  start: string,
  timecodeOf: (clip: string) => string,
): ReadTimeline {
  const isDrop = text.includes('\r\nFCM: DROP FRAME\r\n');
  const count = (timecode: string): number =>
    new Timecode(timecode, [rate[0], rate[1]], isDrop).frameCount;
  const groups = groupsOf(text, count);
  const fps = Ratio.of(rate[0], rate[1]);
  const show = ({ reel, source, speed, clip }: Event, at: number): ShownFrame | null => {
    if (reel === 'BL') return null;
    const place = Ratio.of(source[0]).plus(Ratio.of(at).times((speed ?? fps).over(fps)));
    return { clip, frame: place.floor() - count(timecodeOf(clip)) };
  };
  const origin = count(start);
  const frames: ShownAt[] = [];
  const dissolves: ReadDissolve[] = [];
  let last: Event | null = null;
  for (const { event } of groups) {
    const from = event.record[0] - origin;
    if (from !== frames.length) throw new Error(`a hole in the list at ${frames.length}`);
    for (let at = 0; at < event.record[1] - event.record[0]; at++) {
      const own = show(event, at);
      // The outgoing event simply goes on.
      const out: Event | null = at < event.dissolve ? last : null;
      frames.push(out ? { own, out: show(out, at + out.record[1] - out.record[0]) } : { own });
    }
    if (event.dissolve > 0) dissolves.push({ from, to: from + event.dissolve, into: event.cut });
    if (event.source[1] <= event.source[0]) throw new Error('an event without a source');
    if (event.dissolve > event.record[1] - event.record[0])
      throw new Error('a dissolve longer than its event');
    last = event;
  }
  const segments = groups.flatMap(({ event }): Segment[] => {
    const { reel, clip, source, record, speed } = event;
    if (reel === 'BL') return [];
    const per = (speed ?? fps).over(fps);
    return [
      {
        clip,
        from: record[0] - origin,
        frames: record[1] - record[0],
        place: source[0] - count(timecodeOf(clip)),
        perFrame: Number(per.n) / Number(per.d),
      },
    ];
  });
  return { frames, dissolves, segments };
}

/** Events by number, each with its outgoing line where it dissolves. */
function groupsOf(text: string, count: (timecode: string) => number): readonly { event: Event }[] {
  const groups: { number: string; lines: Event[]; event: Event }[] = [];
  for (const line of text.split('\r\n')) {
    const [, number, reel, , length, ...times] = EVENT.exec(line) ?? [];
    if (number !== undefined) {
      const [a, b, c, d] = times.map((each) => count(each!)) as [number, number, number, number];
      const event: Event = {
        ...{ reel: reel!, dissolve: Number(length ?? 0), speed: null, clip: '', cut: '' },
        ...{ source: [a, b], record: [c, d] },
      };
      const group = groups.at(-1);
      if (group?.number === number) {
        group.lines.push(event);
        group.event = event;
      } else groups.push({ number, lines: [event], event });
      continue;
    }
    const motion = MOTION.exec(line);
    const group = groups.at(-1);
    if (motion && group) {
      const at = count(motion[3]!);
      const of = group.lines.find(({ source, speed }) => source[0] === at && speed === null);
      if (!of) throw new Error(`M2 of no event: ${line}`);
      of.speed = decimal(motion[2]!);
    }
    const cut = /^\* CUT: (.*)$/.exec(line);
    if (cut && group) group.event.cut = cut[1]!;
    const name = /^\* (FROM|TO) CLIP NAME: (.*)$/.exec(line);
    if (name && group) {
      if (name[1] === 'TO') group.event.clip = name[2]!;
      else group.lines[0]!.clip = name[2]!;
    }
  }
  return groups;
}
