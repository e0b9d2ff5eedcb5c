/** Fixes that build the rig from other parts: in its own entry, or as a new rig beside it. */

import type { Bench } from '../figures/bench.ts';
import type { KitRig } from '../figures/kit-search.ts';
import { homeOf } from '../plan/entry-id.ts';
import { ifKnown } from '../plan/field.ts';
import { setTo } from '../plan/fixes.ts';
import type { PlanFix } from '../plan/problem.ts';
import { KINDS } from '../quantity/index.ts';
import { Say } from '../say/say.ts';
import { allOf } from '../words/listed.ts';
import { message } from '../words/message.ts';
import type { ShotView } from './shot-rule.ts';

/** Each of the rigs as the shot's own; where other shots use its rig, or another file has it, as a new one. */
export function rigFixes(bench: Bench, rigs: readonly KitRig[], newName: string): PlanFix[] {
  const { rig, offer, file } = bench;
  if (!rig) return [];
  const others = offer.shotsWith(rig.name) - 1;
  const isOwn = others < 1 && rig.file === file;
  return rigs.flatMap((one): PlanFix[] => {
    const list = `[${one.parts.join(', ')}]`;
    const numbers = numbersOf(one);
    const inPlace: PlanFix = {
      title: message`Build the rig as ${one.parts.join(' + ')}${numbers}`,
      ...(others > 0 && {
        sideEffects:
          others === 1
            ? message`${others} other shot uses it`
            : message`${others} other shots use it`,
      }),
      edits: [{ op: 'set', at: { file: rig.file, entry: rig.entry, path: ['parts'] }, text: list }],
    };
    if (isOwn) return [inPlace];
    const name = freeName(newName, offer.names('rigs'));
    const beside: PlanFix = {
      title: message`Add rig ${name} with ${one.parts.join(' + ')}${numbers}`,
      edits: [
        { op: 'add-entry', file, section: homeOf.rigs, name, text: bodyOf(bench, list) },
        { op: 'set', at: bench.fields.rig.at, text: name },
      ],
    };
    return rig.file === file ? [beside, inPlace] : [beside];
  });
}

/** Most rigs of the plan that are offered. */
const MOST_STANDING = 3;

/**
 * Existing rigs of the plan that reach what the shot needs: those that lose the smallest amount of
 * light first.
 */
export function standingRigFixes({ bench, withRig }: ShotView): readonly PlanFix[] {
  const others = withRig ? bench.offer.names('rigs').filter((name) => name !== bench.rigName) : [];
  return others
    .flatMap((name) => {
      const { bench: there, figures } = withRig!(name);
      const lost = filtersOf(bench).filter((filter) => !filtersOf(there).includes(filter));
      return figures.magnification.known ? [{ name, figures, lost }] : [];
    })
    .sort((a, b) => lostIn(a.figures) - lostIn(b.figures))
    .slice(0, MOST_STANDING)
    .map(({ name, figures, lost }) =>
      setTo(
        message`Use rig ${name}${numbersOf({ figures })}`,
        bench.fields.rig.at,
        name,
        lost.length > 0
          ? message`without ${allOf(lost.map((filter) => `\`${filter}\``))}`
          : undefined,
      ),
    );
}

const filtersOf = ({ filters }: Bench): readonly string[] =>
  filters.known ? filters.value.map(({ name }) => name) : [];

const lostIn = ({ lightLossStops: lost }: KitRig['figures']): number =>
  lost.known ? lost.value : Number.POSITIVE_INFINITY;

/** The new rig has the support and the filters of the old one. */
function bodyOf({ rig }: Bench, parts: string): string {
  const support = rig && ifKnown(rig.fields.support);
  const filters = (rig && ifKnown(rig.fields.filters)) ?? [];
  const names = filters.flatMap((item) => ifKnown(item) ?? []);
  const held = support
    ? [
        ...(['head', 'stand'] as const).flatMap((key) => {
          const name = ifKnown(support[key]);
          return name === undefined ? [] : [`${key}: ${name}`];
        }),
        ...(ifKnown(support.foot) === undefined
          ? []
          : [`foot: ${KINDS.offset.print(ifKnown(support.foot)!)}`]),
        ...(ifKnown(support.overhead) === undefined
          ? []
          : [`overhead: ${ifKnown(support.overhead) ? 'yes' : 'no'}`]),
      ]
    : [];
  return [
    `parts: ${parts}`,
    ...(held.length > 0 ? [`support: { ${held.join(', ')} }`] : []),
    ...(names.length > 0 ? [`filters: [${names.join(', ')}]`] : []),
  ].join('\n');
}

function freeName(wanted: string, taken: readonly string[]): string {
  for (let count = 1; ; count++) {
    const name = count === 1 ? wanted : `${wanted}-${count}`;
    if (!taken.includes(name)) return name;
  }
}

/** " (f/44 effective, 312 mm working distance, 1.4 mm depth of field, 2.9 stops lost)", as far as is known. */
function numbersOf({ figures }: Pick<KitRig, 'figures'>): string {
  const say = new Say(() => 'mm');
  const { effectiveFNumber: n, workingDistanceMm: room, usableDepthMm: depth } = figures;
  const { lightLossStops: lost } = figures;
  const said = [
    n.known && say.effective(n.value),
    room.known && message`${say.length(room.value)} working distance`,
    depth.known && message`${say.length(depth.value)} depth of field`,
    lost.known && message`${say.stops(lost.value)} lost`,
  ].filter((words) => words !== false);
  return said.length > 0 ? ` (${said.join(', ')})` : '';
}
