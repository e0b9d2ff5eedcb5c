/**
 * FCPXML against its published DTD: the declarations below are the published ones for what is
 * written here (developer documentation of the format, document type definition of 1.10; that 1.11
 * keeps them is from memory). Elements and attributes that are never written are left out, so
 * whatever passes here passes there. They are enforced by libxml2.
 */
import { DtdValidator, XmlDocument, XmlDtd } from 'libxml2-wasm';
import { expect, it } from 'vitest';
import { withEdit } from '../support/edits.ts';
import { coreWith, PLAN } from '../support/plans.ts';

/** A name, its content and its attributes: `!` required, `#` an id, `>` a reference, `a|b` one of them. */
const DECLARED: readonly (readonly [name: string, content: string, attributes: string])[] = [
  ['fcpxml', '(resources?, event*)', 'version=1.11!'],
  ['resources', '(asset | format)*', ''],
  ['format', 'EMPTY', 'id# name frameDuration width height'],
  ['asset', '(media-rep+)', 'id# name start duration hasVideo format>'],
  ['media-rep', 'EMPTY', 'kind=original-media|proxy-media src!'],
  ['event', '(project)*', 'name'],
  ['project', '(sequence)', 'name'],
  ['sequence', '(spine)', 'format>! duration tcStart tcFormat=DF|NDF'],
  ['spine', '(asset-clip | video | gap | transition)*', ''],
  [
    'asset-clip',
    '(note?, (conform-rate?, timeMap?), adjust-transform?, (marker | keyword)*)',
    'ref>! offset name start duration',
  ],
  [
    'video',
    '(note?, (conform-rate?, timeMap?), adjust-transform?, (marker | keyword)*)',
    'ref>! offset name start duration!',
  ],
  ['gap', '((marker)*)', 'name offset start duration!'],
  ['transition', 'EMPTY', 'name offset duration!'],
  [
    'conform-rate',
    'EMPTY',
    'scaleEnabled=0|1 srcFrameRate=23.98|24|25|29.97|30|60|47.95|48|50|59.94 frameSampling=floor|nearest-neighbor|frame-blending',
  ],
  ['timeMap', '(timept)*', 'frameSampling=floor|nearest-neighbor|frame-blending'],
  ['timept', 'EMPTY', 'time! value! interp=smooth2|linear|smooth'],
  ['adjust-transform', 'EMPTY', 'scale'],
  ['marker', 'EMPTY', 'start! duration value!'],
  ['keyword', 'EMPTY', 'start duration value!'],
  ['note', '(#PCDATA)', ''],
];

function declaration([name, content, attributes]: (typeof DECLARED)[number]): string {
  const list = attributes.split(' ').filter(Boolean);
  return [
    `<!ELEMENT ${name} ${content}>`,
    ...list.map((each) => {
      const [, attribute, id, reference, values, required] =
        /^([\w-]+)(#)?(>)?(?:=([^!]*))?(!)?$/.exec(each)!;
      const choice = values?.includes('|') ? `(${values})` : undefined;
      const type = id ? 'ID' : reference ? 'IDREF' : (choice ?? 'CDATA');
      const rest =
        values && !choice ? `#FIXED "${values}"` : id || required ? '#REQUIRED' : '#IMPLIED';
      return `<!ATTLIST ${name} ${attribute} ${type} ${rest}>`;
    }),
  ].join('\n');
}

const DTD = DECLARED.map(declaration).join('\n');

/** What libxml2 has against it; empty: nothing. */
function against(text: string): string {
  const dtd = XmlDtd.fromString(DTD);
  const document = XmlDocument.fromString(text);
  try {
    new DtdValidator(dtd).validate(document);
    return '';
  } catch (cause) {
    return (cause as Error).message;
  } finally {
    document.dispose();
    dtd.dispose();
  }
}

const HOSTILE = '<b> & \\"x\\" \\u0001 \\u202e ]]> {0} \\ud800';

const TEXT = withEdit(
  [
    `one: { shot: skin, from: 2 s, duration: 2 bars, about: "${HOSTILE}", grade: cold, reframe: 1.2x }`,
    'two: { shot: frost, duration: 3 beats, speed: 100 to 25 %, transition: dissolve 13 frames }',
    'three: { shot: skin, duration: 1 bar, speed: 50 % }',
    'four: { shot: glow, duration: 1 bar, transition: dissolve 4 frames }',
  ],
  undefined,
  { 'shots/glow': '{ subject: soap, rig: far, field: 48 mm }', title: `"${HOSTILE}"` },
);

const STILLS = `
clips:
  glow: [{ file: "stacks/<1> & 2.tif", verdict: keep }]
  skin: [{ file: 'C:\\rushes\\a b.mov', verdict: keep }]
`;

// Document type definition at https://developer.apple.com/documentation/professional-video-applications.
it('is valid, with whatever the plan has in it', () => {
  const made = coreWith(TEXT + STILLS).timeline(PLAN, 'fcpxml');
  if (!made.ok) throw new Error(made.why);
  expect(against(made.text)).toBe('');
  expect(made.text).toContain('&lt;b&gt; &amp; &quot;x&quot; \\u{1} \\u{202e} ]]&gt; {0}');
  expect(made.text).toContain('src="file:///C:/rushes/a%20b.mov"');
  expect(made.text).toContain('<video ref=');
});

// What that definition doesn't have: https://www.w3.org/TR/xml/#proc-types (validating processors).
it('is checked by a validator that finds what is wrong', () => {
  const made = coreWith(TEXT).timeline(PLAN, 'fcpxml');
  if (!made.ok) throw new Error(made.why);
  for (const [from, to] of [
    ['interp="linear"', 'interp="straight"'],
    ['<spine>', '<spine><clip/>'],
    [' version="1.11"', ' version="1.0"'],
  ] as const)
    expect(against(made.text.replace(from, to)), to).not.toBe('');
});
