/** Times as people read them. */

export interface Spread {
  readonly p50: number;
  readonly p95: number;
}

export function spread(times: readonly number[]): Spread {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number) =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
  return { p50: at(0.5), p95: at(0.95) };
}

/** Milliseconds that `work` takes. */
export function timed(work: () => void): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

export const ms = (value: number): string =>
  Number.isNaN(value) ? '—' : value < 10 ? value.toFixed(2) : value.toFixed(0);

export const both = ({ p50, p95 }: Spread): string => `${ms(p50)} / ${ms(p95)}`;

export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [line(head), line(head.map(() => '---')), ...rows.map(line)].join('\n');
}
