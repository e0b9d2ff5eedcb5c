/** The chart of the aperture in words: where all limits are met, or which of them leave nothing. */
import {
  type BestContrast,
  bestContrast,
  contrastAtEnds,
  isSeen,
} from '../../../figures/best-contrast.ts';
import { MARKED_APERTURES } from '../../../optics/apertures.ts';
import type { ApertureLimit, ApertureSweep, Stretch } from '../../../rules/aperture-sweep.ts';
import { allOf } from '../../../words/listed.ts';
import { message } from '../../../words/message.ts';
import { notKnownWords, type SaidShot } from '../said.ts';

export const MET = 'met';

const ALL: readonly ApertureLimit[] = ['lens', 'depth', 'detail', 'exposure', 'iso'];

/** Where all limits are met as the shot is set, and where they would be with the ISO left to the body. */
export const stretchesOf = (
  sweep: ApertureSweep,
): { readonly asSet: readonly Stretch[]; readonly byAuto: readonly Stretch[] } => ({
  asSet: sweep.stretches(ALL),
  byAuto: sweep.stretches(ALL, 'missedByAuto'),
});

export function apertureWords(shot: SaidShot, sweep: ApertureSweep): string {
  const { bench, figures } = shot;
  const { asSet, byAuto } = stretchesOf(sweep);
  const isFixed = bench.iso.known && bench.iso.value !== 'auto';
  const best = bestContrast(bench, figures);
  return [
    asSet.length > 0
      ? message`All limits are met ${stretchWords(asSet)}.`
      : message`No aperture meets all limits.`,
    ...(asSet.length > 0 ? [] : conflictWords(sweep, isFixed)),
    isFixed &&
      (byAuto.length > 0
        ? message`With the ISO changed to match, they are met ${stretchWords(byAuto)}.`
        : asSet.length === 0 && message`No ISO changes that.`),
    ...acceptedWords(shot, sweep, asSet),
    contrastWords(shot),
    best && bestWords(best, shot),
    figures.isoNeeded.known && message`ISO needed: ${shot.say.iso(figures.isoNeeded.value)}.`,
    ...unknownWords(shot),
  ]
    .filter((one) => one)
    .join(' ');
}

/** "from f/8 to f/14"; marks that can be set, where there are any inside. */
function stretchWords(stretches: readonly Stretch[]): string {
  return allOf(
    stretches.map(({ from, to }) => {
      const marks = MARKED_APERTURES.filter((mark) => mark >= from * 0.9999 && mark <= to * 1.0001);
      const [first, last] = [marks[0] ?? from, marks.at(-1) ?? to].map(
        (n) => `f/${Number(n.toPrecision(2))}`,
      ) as [string, string];
      return first === last ? message`at ${first}` : message`from ${first} to ${last}`;
    }),
  );
}

/** Each limit that is missed somewhere, by where it is met. */
function conflictWords(sweep: ApertureSweep, isFixed: boolean): readonly string[] {
  const { from, to } = sweep.range;
  const said: Readonly<
    Record<Exclude<ApertureLimit, 'lens'>, [met: (where: string) => string, never: string]>
  > = {
    depth: [
      (where) => message`There is enough depth of field ${where}.`,
      message`There is too little depth of field at every aperture.`,
    ],
    detail: [
      (where) => message`Fine detail keeps its contrast ${where}.`,
      message`Diffraction softens fine detail at every aperture.`,
    ],
    exposure: [
      (where) => message`The exposure is right ${where}.`,
      message`The exposure is wrong at every aperture.`,
    ],
    iso: [
      (where) => message`The ISO is in the body's range ${where}.`,
      isFixed
        ? message`The ISO that is set is out of the body's range.`
        : message`The ISO needed is out of the body's range at every aperture.`,
    ],
  };
  return (['depth', 'detail', 'exposure', 'iso'] as const).flatMap((limit) => {
    const met = sweep.stretches([limit]);
    const isEverywhere = met.length === 1 && met[0]!.from <= from && met[0]!.to >= to;
    if (isEverywhere) return [];
    const [where, never] = said[limit];
    return [met.length === 0 ? never : where(stretchWords(met))];
  });
}

/** Limits that count as met only since the plan accepts that they are missed. */
function acceptedWords(
  { bench }: SaidShot,
  sweep: ApertureSweep,
  asSet: readonly Stretch[],
): readonly string[] {
  const marks = sweep.marks.filter((mark) =>
    asSet.some(({ from, to }) => mark >= from && mark <= to),
  );
  const looked = bench.marked.known ? [...marks, bench.marked.value] : marks;
  const accepted = new Set(looked.flatMap((mark) => [...sweep.at(mark).accepted]));
  const said: Readonly<Record<ApertureLimit, string>> = {
    lens: message`The plan accepts an aperture that the lens lacks.`,
    depth: message`The plan accepts too little depth of field.`,
    detail: message`The plan accepts soft detail.`,
    exposure: message`The plan accepts the exposure.`,
    iso: message`The plan accepts an ISO out of the body's range.`,
  };
  return ALL.filter((limit) => accepted.has(limit)).map((limit) => said[limit]);
}

function contrastWords({ bench, figures, say }: SaidShot): string | false {
  const { contrast, depthMm } = figures;
  const set = bench.marked.known ? bench.marked.value : null;
  if (set === null || !contrast.known) return false;
  const at = say.fNumber(set);
  const ends = contrastAtEnds(figures);
  const middle = say.percent(contrast.value);
  if (ends === null || !depthMm.needed.known)
    return message`In fine detail, ${at} leaves ${middle} contrast in focus.`;
  const rest = ends > 0 ? say.percent(ends) : message`nothing`;
  const needed = say.length(depthMm.needed.value);
  return message`In fine detail, ${at} leaves ${middle} contrast in focus and ${rest} at the ends of the ${needed} needed.`;
}

function bestWords(best: BestContrast, { say }: SaidShot): string {
  const most = message`${say.fNumber(best.marked)}, ${say.percent(best.ends)}`;
  if (best.ends - best.endsAsSet < 1e-9) return message`No aperture keeps more there.`;
  return isSeen(best)
    ? message`The ends keep the most contrast at ${most}.`
    : message`The ends keep the most contrast at ${most}; the difference is too small to see.`;
}

/** What the stretch leaves out. */
function unknownWords({ figures }: SaidShot): readonly string[] {
  const { usableDepthMm, depthMm, contrast, isoNeeded } = figures;
  const parts = [
    [[usableDepthMm, depthMm.needed], message`Depth of field`],
    [[contrast], message`Contrast`],
    [[isoNeeded], message`Exposure`],
  ] as const;
  const words = parts.flatMap(([of, what]) =>
    of.every(({ known }) => known) ? [] : (notKnownWords(of, what) ?? []),
  );
  return words.length === 0 ? [] : [...words, message`The shaded stretch leaves that out.`];
}
