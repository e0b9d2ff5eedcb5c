/** Numbers as somebody types them in a hurry, and as the plan writes them. */

const NUMBER = String.raw`(\d{1,7}(?:\.\d{1,4})?)`;
const form = (pattern: string): RegExp => new RegExp(`^${pattern}$`, 'i');

/** By key of the shot: what is typed, and what is written for it. */
const FORMS: Readonly<Record<string, readonly (readonly [typed: RegExp, written: string])[]>> = {
  aperture: [[form(`(?:f ?/? ?)?${NUMBER}`), 'f/$1']],
  iso: [[form(String.raw`(?:iso ?)?(\d{1,7})`), '$1']],
  shutter: [
    [form(`1/${NUMBER} ?s?`), '1/$1 s'],
    [form(`${NUMBER} ?(?:°|deg)`), '$1°'],
    [form(`${NUMBER} ?s`), '$1 s'],
  ],
  'white-balance': [[form(String.raw`(\d{4,5}) ?k?`), '$1 K']],
  tilt: [[form(`${NUMBER} ?(?:°|deg)?`), '$1°']],
  used: [[form(`${NUMBER} ?s? ?(?:to|-|–) ?${NUMBER} ?s?`), '$1 to $2 s']],
  exposure: [
    [form(`${NUMBER} ?(?:stops?|ev)? ?(over|under)`), '$1 stops $2'],
    [form(String.raw`\+ ?${NUMBER} ?(?:stops?|ev)?`), '$1 stops over'],
    [form(`[-−–] ?${NUMBER} ?(?:stops?|ev)?`), '$1 stops under'],
    [form('0'), '0 stops over'],
  ],
  marked: [[form(`(?:f ?/? ?)?${NUMBER}`), 'f/$1']],
  'effective-f-number': [[form(`(?:f ?/? ?)?${NUMBER}`), '$1']],
};

/** @returns null where it is not what such a value looks like */
export function asWritten(key: string, typed: string): string | null {
  const text = typed.trim().replaceAll(',', '.').toLowerCase();
  for (const [known, written] of FORMS[key] ?? [])
    if (known.test(text)) return text.replace(known, written);
  return null;
}

/** No character that a plan can't hold or that acts on who reads it. */
const ODD =
  /[\p{Cc}\p{Cs}\u061c\u200e\u200f\u202a-\u202e\u2028\u2029\u2066-\u2069\ufeff\ufffe\uffff]/gu;

export const plain = (text: string): string => text.replace(ODD, ' ').trim();

/** Of a shot or a check; what has another form is no entry of a plan. */
export const isName = (text: string): boolean => /^[a-z][a-z0-9-]{0,63}$/.test(text);
