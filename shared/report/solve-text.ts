/** "Solve this shot" as people read it: in a terminal, and before it is applied in an editor. */

import { type Block, type Item, list, paragraph, section, toned } from '../api/document.ts';
import type { SolvedFinding, SolvedShot, UnaffectedFinding } from '../api/solved.ts';
import { inLanguage, later, message } from '../words/message.ts';
import { figureLabel } from './figures-text.ts';

/** In one line. */
export function solvedTitle({ shot, outcome, changes, others }: SolvedShot): string {
  if (outcome === 'clear')
    return others.length === 0
      ? message`Nothing in ${shot} needs a change of settings.`
      : others.some(({ fixes }) => fixes.length > 0)
        ? message`No change of settings alone can clear ${shot}; see what to do by hand.`
        : message`No change of settings can clear ${shot}.`;
  if (outcome === 'no-way') return message`No settings meet every requirement of ${shot}.`;
  if (outcome === 'not-found') return message`No change of settings was found that clears ${shot}.`;
  return changes.length === 1
    ? message`1 change clears ${shot}:`
    : message`${changes.length} changes clear ${shot}:`;
}

/** A setting as people call it: a light that stands elsewhere in this shot by its own name. */
export function settingWords(setting: string): string {
  const light = /^relight\.(.+)\.at\.distance$/.exec(setting)?.[1];
  return light === undefined ? setting : message`distance of ${light}`;
}

/** Of a search that ended at its limit, by what it found. */
const CUT_SHORT = {
  solved: later`The search stopped at its limit. A smaller change may exist.`,
  'no-way': later`The search for the reasons stopped at its limit. There may be more.`,
  'not-found': later`The search stopped at its limit. A change that clears the shot may exist.`,
} as const;

const HOLDS = {
  'worst-case': later`It holds wherever the uncertain values lie.`,
  middle: later`It holds for the middle of the uncertain values. The worst case would cost more changes.`,
} as const;

/** Whether the worst case costs more was not found out. */
const MIDDLE = later`It holds for the middle of the uncertain values.`;

/** The rest: what is changed and why, what stands in the way, what is left. */
export function solvedBlocks(solved: SolvedShot): readonly Block[] {
  const { changes, leaves, others, notKnown, demands, openings, holds, outcome, cutShort } = solved;
  const listed = (lead: string, items: readonly string[]): Block => list(items, { lead });
  return [
    // What nobody could judge comes before what was done without it.
    listed(
      message`Not checked, because data is missing:`,
      Object.entries(notKnown).map(([figure, why]) => `${figureLabel(figure)}: ${why}`),
    ),
    list(
      changes.map(({ setting, from, to, because }) => ({
        text: [toned('heading', settingWords(setting)), `: ${from} \u2192 ${to}`],
        more: because.map(({ what }) => message`needed because: ${what}`),
      })),
    ),
    paragraph(holds ? inLanguage(holds === 'middle' && cutShort ? MIDDLE : HOLDS[holds]) : ''),
    paragraph(cutShort && outcome !== 'clear' ? inLanguage(CUT_SHORT[outcome]) : ''),
    listed(
      message`Conflicting requirements:`,
      demands.map(({ what, at }) => message`${what} At best, with ${at}.`),
    ),
    listed(
      message`What would make it possible:`,
      openings.map(({ what, at }) => message`${what}, with ${at}`),
    ),
    listed(message`Remaining notes:`, leaves.map(whatOf)),
    list(others.map(withFixes), { lead: message`Not affected by settings:` }),
  ];
}

const withFixes = ({ what, fixes }: UnaffectedFinding): Item => ({
  text: what,
  more: fixes.map(({ title, sideEffects }) =>
    sideEffects === undefined
      ? message`by hand: ${title}`
      : message`by hand: ${title} (${sideEffects})`,
  ),
});

const whatOf = ({ what }: SolvedFinding): string => what;

export const solvedDocument = (solved: SolvedShot): readonly Block[] =>
  section(1, solvedTitle(solved), solvedBlocks(solved), true);
