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
import { parseXml } from '../support/timelines/fcpxml.ts';

/** A name, its content and its attributes: `!` required, `#` an id, `>` a reference, `a|b` one of them. */
const DECLARED: readonly (readonly [name: string, content: string, attributes: string])[] = [
  ['fcpxml', '(resources?, event*)', 'version=1.11!'],
  ['resources', '(asset | format)*', ''],
  ['format', 'EMPTY', 'id# name frameDuration width height'],
  ['asset', '(media-rep+)', 'id# name start duration hasVideo format> hasAudio audioSources'],
  ['media-rep', 'EMPTY', 'kind=original-media|proxy-media src!'],
  ['event', '(project)*', 'name'],
  ['project', '(sequence)', 'name'],
  ['sequence', '(spine)', 'format>! duration tcStart tcFormat=DF|NDF'],
  ['spine', '(asset-clip | video | gap | transition)*', ''],
  [
    'asset-clip',
    '(note?, (conform-rate?, timeMap?), adjust-transform?, (asset-clip)*, (marker | keyword)*)',
    'ref>! lane offset name start duration audioRole',
  ],
  [
    'video',
    '(note?, (conform-rate?, timeMap?), adjust-transform?, (asset-clip)*, (marker | keyword)*)',
    'ref>! offset name start duration!',
  ],
  ['gap', '(note?, (asset-clip)*, (marker)*)', 'name offset start duration!'],
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
  frost: [{ file: frost.mov, verdict: keep }]
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
  // Without any file: gaps, with the music connected to the first.
  const bare = coreWith(TEXT).timeline(PLAN, 'fcpxml');
  if (!bare.ok) throw new Error(bare.why);
  expect(against(bare.text)).toBe('');
  expect(bare.text.match(/<gap /g)).toHaveLength(4);
});

// What that definition doesn't have: https://www.w3.org/TR/xml/#proc-types (validating processors).
it('is checked by a validator that finds what is wrong', () => {
  const made = coreWith(TEXT + STILLS).timeline(PLAN, 'fcpxml');
  if (!made.ok) throw new Error(made.why);
  for (const [from, to] of [
    ['interp="linear"', 'interp="straight"'],
    ['<spine>', '<spine><clip/>'],
    [' version="1.11"', ' version="1.0"'],
    [' lane="-1"', ' track="-1"'],
  ] as const)
    expect(against(made.text.replace(from, to)), to).not.toBe('');
});

// "offset": an item's place in its parent's time; lanes below 0 lie below the spine (reference of
// story elements, https://developer.apple.com/documentation/professional-video-applications).
it.each([
  ['a clip from its in point', 'skin, from: 2 s', '2s'],
  ['a clip with a time map', 'frost, from: 2 s, speed: 50 %', '0s'],
  ['a still', 'glow', '3600s'],
  ['a gap', 'drip', '0s'],
])('has the music below the whole edit, connected to %s', (_, first, offset) => {
  const text = withEdit([`one: { shot: ${first}, duration: 10 s }`], undefined, {
    'shots/glow': '{ subject: soap, rig: far, field: 48 mm }',
    'shots/drip': '{ subject: soap, rig: far, field: 48 mm }',
  });
  const made = coreWith(text + STILLS).timeline(PLAN, 'fcpxml', { startTimecode: '01:00:00:00' });
  if (!made.ok) throw new Error(made.why);
  const document = parseXml(made.text);
  const item = document.querySelector('spine')!.children[0]!;
  const music = item.querySelector('asset-clip[lane="-1"]')!;
  expect(music.getAttribute('offset')).toBe(offset);
  expect(music.getAttribute('offset')).toBe(item.getAttribute('start'));
  expect(music.getAttribute('duration')).toBe('10s');
  expect(document.getElementById(music.getAttribute('ref')!)?.getAttribute('hasAudio')).toBe('1');
  // 90 bpm from 0 s on: a beat every 2/3 s, on the nearest of 25 frames a second.
  const marks = [...music.children].map((mark) => [
    mark.getAttribute('value'),
    mark.getAttribute('start'),
  ]);
  expect(marks).toHaveLength(15);
  expect(marks.slice(0, 4)).toEqual([
    ['bar 1', '0s'],
    ['beat 2', '17/25s'],
    ['beat 3', '33/25s'],
    ['beat 4', '2s'],
  ]);
  expect(made.notes).toContain(
    'Link the music to its file in the editing program; its beats are markers.',
  );
});

// A gap is a placeholder, with a note of its own (reference of story elements,
// https://developer.apple.com/documentation/professional-video-applications).
it('keeps the place of a take without a file by a gap that says what belongs there', () => {
  const text = withEdit([
    'one: { shot: skin, duration: 2 s, about: "close, slow", reframe: 1.2x, grade: cold }',
    'two: { shot: frost, duration: 3 s, transition: dissolve 10 frames }',
  ]);
  const made = coreWith(text).timeline(PLAN, 'fcpxml');
  if (!made.ok) throw new Error(made.why);
  const document = parseXml(made.text);
  const items = [...document.querySelector('spine')!.children];
  expect(items.map(({ tagName }) => tagName)).toEqual(['gap', 'gap']);
  expect(items[0]!.querySelector('note')!.textContent).toBe(
    'skin, take 1; close, slow; 1.2x; cold',
  );
  expect(document.querySelectorAll('asset')).toHaveLength(1);
  expect(made.notes).toContain('skin, take 1 has no file yet. A gap keeps its place.');
});
