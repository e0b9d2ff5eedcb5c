/** What a key is for, what a value comes to and from what, what a name stands for. */

import type { Hover } from '../api/facade.ts';
import type { Position } from '../api/located.ts';
import type { Group } from '../plan/generated/names.ts';
import type { FileId } from '../plan/place.ts';
import type { Context } from '../workspace/context.ts';
import { shotShownAt } from './frame.ts';
import { cutHover } from './hover/cut.ts';
import { dayHover } from './hover/day.ts';
import { keyHover } from './hover/key.ts';
import { laidOut } from './hover/layout.ts';
import { paragraphs } from './hover/markdown.ts';
import { nameHover, recordingHover, shotHover } from './hover/name.ts';
import { picturesAt } from './hover/pictures.ts';
import { ruleHover } from './hover/rule.ts';
import { figuresHover, valueHover } from './hover/value.ts';
import { type PlanSpot, spotAt } from './spot.ts';

export function hoverAt(context: Context, file: FileId, position: Position): Hover | null {
  const spot = spotAt(context, file, position);
  if (!spot) return null;
  const markdown = spot.on === 'key' ? onKey(context, spot) : onValue(context, spot);
  if (!markdown) return null;
  const frameOf = shotShownAt(context, spot);
  const pictures = picturesAt(context, spot);
  return {
    markdown: laidOut(markdown),
    range: spot.range,
    ...(frameOf !== null && { frameOf }),
    ...(pictures.length > 0 && { pictures }),
  };
}

function onKey(context: Context, spot: PlanSpot): string | null {
  const { meaning, kind, place } = spot;
  const { name } = meaning;
  // The section's own name; its keys say what they are for.
  if (name === undefined && meaning.key === 'day' && place.path.length === 0)
    return paragraphs(dayHover(context, place), keyHover(meaning));
  if (name === undefined) return paragraphs(figuresHover(context, spot), keyHover(meaning));
  if (meaning.key === 'allow' || meaning.key === 'severity') return ruleHover(name);
  if (meaning.of === 'body' && meaning.key === 'recording-modes')
    return recordingHover(context, place, name) ?? keyHover(meaning);
  if (meaning.refersTo) return nameHover(context, place.file, meaning.refersTo, name);
  if (kind.kind === 'entry' && place.path.length === 0)
    return onEntry(context, spot, kind.home.group);
  return keyHover(meaning);
}

/** An entry's own name: itself, also where another entry of the name comes first. */
function onEntry(context: Context, { place, meaning }: PlanSpot, group: string): string | null {
  if (group === 'shots') return shotHover(context, place);
  if (group === 'cuts') return cutHover(context, place.file, place.entry) ?? keyHover(meaning);
  const named = nameHover(context, place.file, [group as Group], meaning.name ?? '');
  return named ?? keyHover(meaning);
}

function onValue(context: Context, spot: PlanSpot): string | null {
  const { file, entry, path } = spot.place;
  const { entries } = context.analysis;
  const source = entries.source(file, entry);
  const node = source && entries.node(file, { ...source, within: [...source.within, ...path] });
  return node?.kind === 'scalar' ? valueHover(context, spot, node) : null;
}
