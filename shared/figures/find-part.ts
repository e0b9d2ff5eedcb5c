/** An entry that a rig may list among its parts, by its name. */
import type { Spaces } from '../plan/generated/names.ts';
import type { Body, CloseUp, Converter, Lens, Tube } from '../plan/generated/types.ts';
import type { Finder, Named } from './named.ts';

export type AnyPart =
  | { readonly kind: 'body'; readonly entry: Named<Body> }
  | { readonly kind: 'converter'; readonly entry: Named<Converter> }
  | { readonly kind: 'tube'; readonly entry: Named<Tube> }
  | { readonly kind: 'lens'; readonly entry: Named<Lens> }
  | { readonly kind: 'close-up'; readonly entry: Named<CloseUp> };

export function findPart(reader: Finder, name: string): AnyPart | undefined {
  for (const group of Object.keys(KIND_OF) as PartGroup[]) {
    const entry = reader.find(group, name);
    if (!entry) continue;
    const kind = KIND_OF[group];
    return { kind, entry } as AnyPart;
  }
  return undefined;
}

/** The groups that parts of a rig come from. */
type PartGroup = Spaces['parts'];

const KIND_OF: Readonly<Record<PartGroup, AnyPart['kind']>> = {
  bodies: 'body',
  converters: 'converter',
  tubes: 'tube',
  lenses: 'lens',
  'close-up-lenses': 'close-up',
};
