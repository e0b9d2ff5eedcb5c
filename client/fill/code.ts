/// <reference lib="dom" />
/** The text of the day as a QR code (ISO/IEC 18004), where a phone's screen shows it large enough. */
import { encodeQR } from 'qr';

const NAMESPACE = 'http://www.w3.org/2000/svg';

/**
 * Bytes that a code of version 27 holds at the lowest level of correction (ISO/IEC 18004, table 7). With
 * its margin it has 133 modules a side: 2 px each in a window 320 px wide, which is a third of a
 * millimetre on a usual phone.
 */
const MOST_BYTES = 1465;
/** A version of which a common reader has the alignment marks wrong: the next is taken instead. */
const MISREAD = 23;
/** Modules on each side, as the standard asks. */
const MARGIN = 4;

/** CSS px that the code may be wide, and that the dialog around it takes from the window. */
const MOST_ACROSS = 420;
const AROUND = 50;

/** @returns null: the text is too long for one code */
export function codeOf(text: string, label: string): SVGSVGElement | null {
  if (new TextEncoder().encode(text).length > MOST_BYTES) return null;
  const options = { ecc: 'low', encoding: 'byte', border: MARGIN } as const;
  const least = encodeQR(text, 'raw', options);
  const isMisread = least.length === 4 * MISREAD + 17 + 2 * MARGIN;
  const modules = isMisread ? encodeQR(text, 'raw', { ...options, version: MISREAD + 1 }) : least;
  const size = modules.length;
  // Whole pixels a module: none is wider than its neighbour.
  const across =
    size * Math.max(2, Math.floor(Math.min(MOST_ACROSS, window.innerWidth - AROUND) / size));
  const svg = element('svg', {
    class: 'code',
    viewBox: `0 0 ${size} ${size}`,
    width: String(across),
    height: String(across),
    role: 'img',
    'aria-label': label,
    'shape-rendering': 'crispEdges',
  });
  // Dark on light by night too: readers of codes need it so.
  svg.append(
    element('rect', { width: String(size), height: String(size), fill: '#fff' }),
    element('path', { d: modules.map(runsOf).join(''), fill: '#000' }),
  );
  return svg;
}

/** The dark runs of a row, one rectangle each. */
function runsOf(row: readonly boolean[], y: number): string {
  let path = '';
  for (let x = 0; x < row.length; x++) {
    if (!row[x]) continue;
    const from = x;
    while (row[x + 1]) x++;
    const length = x - from + 1;
    path += `M${from} ${y}h${length}v1h-${length}z`;
  }
  return path;
}

function element<K extends keyof SVGElementTagNameMap>(
  tag: K,
  attributes: Readonly<Record<string, string>>,
): SVGElementTagNameMap[K] {
  const made = document.createElementNS(NAMESPACE, tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
  return made;
}
