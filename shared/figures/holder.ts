/** The holder of a film, and its effect on the film. */
import { addsRearReflection, HOLDERS, longerHolders } from '../film/life.ts';
import { ifKnown } from '../plan/field.ts';
import type { Place } from '../plan/place.ts';
import type { Bench } from './bench.ts';

export interface FilmHolder {
  readonly at: Place;
  readonly subject: string;
  readonly holder: string;
  /** Holders on which a film of this orientation lasts longer. */
  readonly longer: readonly string[];
  /** It shows a reflection of its own behind the film. */
  readonly rear: boolean;
}

/** null: no film, or no holder that is known to do anything. */
export function holderOf({ subject }: Bench): FilmHolder | null {
  if (!subject || ifKnown(subject.fields.kind) !== 'film') return null;
  const { holder, orientation } = subject.fields;
  const stance = ifKnown(orientation);
  const held = HOLDERS.find((each) => each === ifKnown(holder));
  const enclosed = ifKnown(holder) === 'enclosed-holder';
  if (!held && !enclosed) return null;
  return {
    at: holder.at,
    subject: subject.name,
    holder: ifKnown(holder) ?? '',
    longer: held && stance ? longerHolders(stance, held) : [],
    // A level film is recorded from above, looking down into its vessel, which is kept dark.
    rear: enclosed || (held !== undefined && stance === 'upright' && addsRearReflection(held)),
  };
}
