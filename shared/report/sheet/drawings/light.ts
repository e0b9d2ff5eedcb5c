/** The exposure as a ladder: what each part of the rig takes, and what is left over or short. */

import type { Drawing } from '../../../api/drawing.ts';
import { canBeSet, isoRangeOf, neededIso, needsIso } from '../../../rules/needed-iso.ts';
import { exposureWords } from '../../../say/figures.ts';
import { inLanguage, later, message } from '../../../words/message.ts';
import { el } from '../../markup.ts';
import { label, line, MARGIN, rect, roundBelow, WIDTH } from '../canvas.ts';
import { exposureSaid, notKnownWords, type SaidShot, toTenth } from '../said.ts';

/** Less light than this is not worth a rung. */
const LEAST_STOPS = 0.005;
const NAMES = 128;
const LEFT = MARGIN + NAMES;
const ROOM = WIDTH - MARGIN - LEFT - 66;
const STEP = 20;

/** No part is called so: names hold no blanks. */
const GLASS = later`glass and filters`;

interface Rung {
  readonly name: string;
  readonly stops: number;
}

/** A third of a stop is what apertures, times and speeds are set in. */
const THIRD = 1 / 3;
/** The gauge ends here; an error beyond it is drawn at its end with its number. */
const GAUGE_STOPS = 3;

const outcomeOf = (iso: number, { bench, say }: SaidShot): string => {
  const range = isoRangeOf(bench);
  return canBeSet(iso, range)
    ? message`Auto ISO will need about ISO ${neededIso(iso, range, say)}.`
    : message`The exposure ${needsIso(iso, range, say)}.`;
};

export function lightDrawing(shot: SaidShot): Drawing | null {
  const { bench, figures, say } = shot;
  const { exposureErrorStops: error, lossByPart, glassLossStops: glass, isoNeeded } = figures;
  const drawing = { id: 'light', title: message`Light loss`, key: 'iso' } as const;
  const rungs: Rung[] = [
    ...(lossByPart.known
      ? lossByPart.value
          .filter(({ stops }) => Math.abs(stops) >= LEAST_STOPS)
          .map(({ part, stops }) => ({ name: part, stops }))
      : []),
    ...(glass.known && glass.value >= LEAST_STOPS
      ? [{ name: inLanguage(GLASS), stops: glass.value }]
      : []),
  ];
  const auto = bench.iso.known && bench.iso.value === 'auto';
  const outcome = error.known
    ? auto
      ? isoNeeded.known && outcomeOf(isoNeeded.value, shot)
      : message`Exposure: ${exposureSaid(shot)!}.`
    : notKnownWords([error], message`Exposure`);
  const words = [
    ...rungs.map(({ name, stops }) =>
      name === inLanguage(GLASS)
        ? message`Glass and filters cost ${tenths(stops, say)}.`
        : name === bench.lens?.name
          ? message`Focusing close costs ${tenths(stops, say)} (\`${name}\`).`
          : message`\`${name}\` costs ${tenths(stops, say)}.`,
    ),
    rungs.length > 1 && message`Together ${tenths(sum(rungs), say)}.`,
    outcome,
  ].filter((one) => one);
  if (words.length === 0) return null;
  if (rungs.length === 0 && !error.known)
    return { ...drawing, words: words.join(' '), picture: null };
  const gauge =
    error.known && !auto ? gaugeShapes(error.value, exposureWords(toTenth(error.value), say)) : [];
  const top = gauge.length > 0 ? 76 : 8;
  return {
    ...drawing,
    words: words.join(' '),
    caption: words.slice(rungs.length).join(' '),
    picture: {
      height: top + rungs.length * STEP + (rungs.length > 0 ? 26 : 0),
      shapes: [...gauge, ...ladder(rungs, top, say)],
    },
  };
}

const tenths = (stops: number, say: SaidShot['say']): string => say.stops(toTenth(stops) || stops);

const sum = (rungs: readonly Rung[]): number => rungs.reduce((all, { stops }) => all + stops, 0);

function gaugeShapes(error: number, words: string) {
  const room = WIDTH - 4 * MARGIN;
  const x = (stops: number): number =>
    2 * MARGIN +
    ((Math.max(-GAUGE_STOPS, Math.min(GAUGE_STOPS, stops)) + GAUGE_STOPS) / (2 * GAUGE_STOPS)) *
      room;
  const y = 28;
  const marks = Array.from(
    { length: 2 * GAUGE_STOPS * 3 + 1 },
    (_, third) => third * THIRD - GAUGE_STOPS,
  );
  return [
    rect('there', x(-THIRD), y - 6, x(THIRD) - x(-THIRD), 12),
    line('edge', x(-GAUGE_STOPS), y, x(GAUGE_STOPS), y),
    el('path', { class: 'edge', d: marks.map((stops) => tick(x(stops), y, stops)).join('') }),
    ...[-3, -2, -1, 0, 1, 2, 3].map((stops) =>
      label(stops > 0 ? `+${stops}` : stops < 0 ? `−${-stops}` : '0', x(stops), y + 22),
    ),
    line('limit', x(error), y - 12, x(error), y + 8),
    label(words, x(error), 12),
    rect('mark', x(error) - 3, y - 10, 6, 20, { 'data-mark': 'exposure' }),
  ];
}

/** Long at whole stops. */
function tick(x: number, y: number, stops: number): string {
  const half = Math.abs(stops - Math.round(stops)) < 1e-6 ? 6 : 3;
  return `M${x.toFixed(1)} ${y - half}v${2 * half}`;
}

function ladder(rungs: readonly Rung[], top: number, say: SaidShot['say']) {
  const total = Math.max(1, sum(rungs));
  const perStop = ROOM / total;
  let at = 0;
  const rows = rungs.flatMap(({ name, stops }, index) => {
    const y = top + index * STEP;
    const x = LEFT + Math.max(0, at) * perStop;
    at += stops;
    return [
      label(name, LEFT - 6, y + 14, 'end', NAMES - 8),
      rect('part', x, y + 3, Math.max(0.8, Math.abs(stops) * perStop), STEP - 6, {
        'data-loss': name,
      }),
      label(tenths(stops, say), x + Math.abs(stops) * perStop + 5, y + 14, 'start'),
    ];
  });
  const bottom = top + rungs.length * STEP;
  const step = Math.max(1, roundBelow(total / 3));
  const marks = Array.from(
    { length: Math.floor(total / step + 1e-9) + 1 },
    (_, index) => index * step,
  );
  return rungs.length === 0
    ? []
    : [
        ...marks.flatMap((stops) => [
          line('grid', LEFT + stops * perStop, bottom, LEFT + stops * perStop, bottom + 5),
          label(
            stops === 0 ? message`0 stops` : String(stops),
            LEFT + stops * perStop,
            bottom + 18,
          ),
        ]),
        ...rows,
      ];
}
