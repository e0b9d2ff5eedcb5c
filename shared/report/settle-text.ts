/** "Settle this shot" as people read it: in a terminal, and before it is applied in an editor. */
import type { SettledFinding, SettledShot } from '../api/settled.ts';
import { message } from '../words/message.ts';
import { figureLabel } from './figures-text.ts';
import { inertLine } from './inert.ts';
import { type Paint, painter } from './paint.ts';

/** In one line. */
export function settledTitle({ shot, outcome, changes }: SettledShot): string {
  if (outcome === 'clear') return message`Nothing that a setting of ${shot} could clear.`;
  if (outcome === 'no-way') return message`No setting of ${shot} meets all that it asks for.`;
  return changes.length === 1
    ? message`${shot} is settled by changing one setting.`
    : message`${shot} is settled by changing ${changes.length} settings.`;
}

/** A setting as people call it: a light that stands elsewhere in this shot by its own name. */
export function settingWords(setting: string): string {
  const light = /^relight\.(.+)\.at\.distance$/.exec(setting)?.[1];
  return light === undefined ? setting : message`distance of ${light}`;
}

/** The rest, a line each. */
export function settledLines(settled: SettledShot, paint: Paint = (_, text) => text): string[] {
  const { changes, leaves, others, notKnown, demands, openings } = settled;
  const rows = changes.flatMap(({ setting, from, to, because }) => [
    `${paint('heading', inertLine(settingWords(setting)))}: ${inertLine(from)} \u2192 ${inertLine(to)}`,
    ...because.map(({ what }) => `  ${message`without it: ${inertLine(what)}`}`),
  ]);
  const excluding = demands.map(
    ({ what, at }) => message`${inertLine(what)} At best, with ${inertLine(at)}.`,
  );
  const unknown = Object.entries(notKnown).map(
    ([figure, why]) => `${figureLabel(figure)}: ${inertLine(why)}`,
  );
  const open = openings.map(({ what, at }) => message`${inertLine(what)}, with ${inertLine(at)}`);
  return [
    // What nobody could judge comes before what was done without it.
    ...titled(message`Not known, so nothing was held to it:`, unknown),
    ...rows,
    ...titled(message`These exclude each other:`, excluding),
    ...titled(message`What would open it:`, open),
    ...titled(message`Still to be said of it then:`, leaves.map(whatOf)),
    ...titled(message`No setting has to do with:`, others.map(whatOf)),
  ];
}

const whatOf = ({ what }: SettledFinding): string => inertLine(what);

const titled = (title: string, rows: readonly string[]): string[] =>
  rows.length === 0 ? [] : [title, ...rows.map((row) => `  ${row}`)];

export function settledText(settled: SettledShot, colour: boolean): string {
  const paint = painter(colour);
  const lines = settledLines(settled, paint).map((line) => `  ${line}`);
  return `${[paint('heading', inertLine(settledTitle(settled))), ...lines].join('\n')}\n`;
}
