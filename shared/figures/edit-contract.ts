/** The edit as JSON, in the names and the order of its catalogue, and what the day's shares. */
import { CUT, EDIT } from './catalogue/edit.ts';
import type { EditFigures } from './edit-figures.ts';
import type { CutJson, EditJson } from './edit-json.ts';
import type { Figure } from './figure.ts';
import { type Reason, type Reasons, reasonFor, reasonsOf } from './reasons.ts';

export function editJson(edit: EditFigures | null): EditJson | null {
  if (!edit) return null;
  const cuts = edit.cuts.map((cut) => toldOf(CUT, cut, edit) as unknown as CutJson);
  const { notKnown, ...told } = toldOf(EDIT, edit);
  return { ...told, cuts, notKnown } as unknown as EditJson;
}

/** What is declared of something, and why what is null is null. */
export function toldOf<F extends readonly unknown[]>(
  declared: Readonly<Record<string, { readonly of: (...from: F) => Figure<unknown> }>>,
  ...from: F
): { readonly notKnown: Reasons } {
  const reasons: Reason[] = [];
  const values = Object.entries(declared).map(([key, { of }]): [string, unknown] => {
    const figure = of(...from);
    if (!figure.known) reasons.push(reasonFor(key, figure));
    return [key, figure.known ? figure.value : null];
  });
  return { ...Object.fromEntries(values), notKnown: reasonsOf(reasons) };
}
