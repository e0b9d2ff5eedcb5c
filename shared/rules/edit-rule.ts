/** What rules about the edit share: its cuts, its frames in words, and examples to run. */
import type { CutFigures, EditFigures } from '../figures/edit-figures.ts';
import type { Place } from '../plan/place.ts';
import type { Fraction, Sec } from '../quantity/brands.ts';
import { KINDS } from '../quantity/index.ts';
import { significant } from '../say/say.ts';
import { message } from '../words/message.ts';
import type { PlanView } from './plan-rule.ts';

/** The cuts that can be read, each with the one before it. */
export const cutsIn = ({
  edit,
}: PlanView): readonly { edit: EditFigures; cut: CutFigures; previous: CutFigures | undefined }[] =>
  edit?.cuts.flatMap((cut, index) =>
    cut.fields ? [{ edit, cut, previous: edit.cuts[index - 1] }] : [],
  ) ?? [];

/** The written value, or the cut's own name where nothing is written. */
export const valueOrName = (
  { at }: CutFigures,
  field: { readonly state: string; readonly at: Place } | undefined,
): Place => (field?.state === 'known' ? field.at : { ...at, part: 'key' });

/** "1 frame", "6.3 frames" */
export function frames(count: number): string {
  const text = significant(count, Math.abs(count) < 100 ? 2 : 6);
  return text === '1' ? message`${text} frame` : message`${text} frames`;
}

/** A whole number of frames as a plan writes it. */
export const framesText = (count: number): string => `${count} ${count === 1 ? 'frame' : 'frames'}`;

export const speedText = (from: number, to: number): string =>
  KINDS['playback-speed'].print({ from: from as Fraction, to: to as Fraction });

/** In hundredths of a second, on the side that leaves the clip enough. */
export const timeText = (seconds: number): string =>
  KINDS['time-or-zero'].print((Math.floor(seconds * 100 + 1e-6) / 100) as Sec);

/** Frames per second as the trade writes them. */
export const rateText = (rate: Parameters<(typeof KINDS)['rate']['print']>[0]): string =>
  KINDS.rate.print(rate);

/** An edit for examples: its cuts by name as flow YAML, after any other fields of the edit. */
export const withCuts = (
  cuts: Readonly<Record<string, string>>,
  more = '',
): Readonly<Record<string, string>> => ({
  edit: `{ ${more}cuts: { ${Object.entries(cuts)
    .map(([name, cut]) => `${name}: { ${cut} }`)
    .join(', ')} } }`,
});

/** For examples: shots recorded at 50 fps. */
export const at50 = (...shots: readonly string[]): Readonly<Record<string, string>> => ({
  'kit/bodies/body-a/recording-modes/full-50':
    '{ resolution: 1920 x 1080, rate: 50 fps, bitrate: 60 Mb/s, area: 36 x 20.25 mm }',
  ...Object.fromEntries(shots.map((shot) => [`shots/${shot}/record`, 'full-50'])),
});
