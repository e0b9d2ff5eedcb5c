/** The examples' plan with an edit: two bars and more at 90 bpm, 25 fps, where a beat is 16 2/3 frames. */
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed } from './plans.ts';

export const MUSIC = 'music: { tempo: 90 bpm, first-beat: 0 s, bar: 4 beats }';

export const FAST_SETTING =
  '{ resolution: 1920 x 1080, rate: 50 fps, bitrate: 60 Mb/s, area: 36 x 20.25 mm }';

/** Cuts as block YAML, each one a line: `one: { shot: frost, duration: 4 s }`. */
export const withEdit = (
  cuts: readonly string[],
  more: readonly string[] = [MUSIC],
  change: Readonly<Record<string, string | null>> = {},
): string =>
  `${changed(EXAMPLE_PLAN, {
    'shots/frost/take': '{ duration: 20 s }',
    ...change,
  })}
edit:
${more.map((line) => `  ${line}\n`).join('')}  cuts:
${cuts.map((line) => `    ${line}\n`).join('')}`;
