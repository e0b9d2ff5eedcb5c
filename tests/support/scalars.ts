/** The values that stand in a plan, each with the keys that lead to it. */
import { parse } from 'yaml';

export interface Scalar {
  /** As `changed` takes it: 'shots/frost/aperture'. */
  readonly at: string;
  readonly text: string;
}

export function scalarsIn(text: string): readonly Scalar[] {
  const found: Scalar[] = [];
  const walk = (value: unknown, path: readonly string[]): void => {
    if (typeof value === 'object' && value !== null && !Array.isArray(value))
      for (const [key, inner] of Object.entries(value)) walk(inner, [...path, key]);
    else if (typeof value === 'string' || typeof value === 'number')
      found.push({ at: path.join('/'), text: String(value) });
  };
  walk(parse(text), []);
  return found;
}
