/** Plans as a person would write them, put together from rigs of a test. */
import type { ChainPart } from '../../../shared/optics/parts.ts';
import { TEXT_RULES } from '../../../shared/rules/registry.ts';
import { findingsOf } from '../../support/plans.ts';

/** A shot with a rig of its own. Values stand in the plan as they are given. */
export interface WrittenShot {
  readonly parts: readonly ChainPart[];
  /** Further keys of its lens: `loss: 0.3 stops`. */
  readonly lens?: Readonly<Record<string, string>>;
  /** Its recording mode; the usual one is `1920 x 1080` at 25 fps on 36 x 20.25 mm. */
  readonly record?: Readonly<Record<string, string>>;
  /** Its light, where it has one. */
  readonly light?: Readonly<Record<string, string>>;
  readonly subject?: Readonly<Record<string, string>>;
  readonly fields: Readonly<Record<string, string>>;
}

const ruleOfText = new Set(TEXT_RULES.map(({ name }) => name));

const RECORD = { resolution: '1920 x 1080', rate: '25 fps', area: '36 x 20.25 mm' };
const SUBJECT = { kind: 'solid', depth: '1 mm', finish: 'matt' };

/** Plans write numbers as plain decimals with at most nine places. */
export const plain = (value: number): string => value.toFixed(9).replace(/\.?0+$/, '');

const flow = (fields: Readonly<Record<string, string | undefined>>): string => {
  const given = Object.entries(fields).filter(([, value]) => value !== undefined);
  return `{ ${given.map(([key, value]) => `${key}: ${value}`).join(', ')} }`;
};

const mm = (length: number | undefined): string | undefined =>
  length === undefined ? undefined : `${plain(length)} mm`;

const GROUPS = {
  body: 'bodies',
  lens: 'lenses',
  tube: 'tubes',
  converter: 'converters',
  'close-up': 'close-up-lenses',
} as const;

/** A part as an entry of the kit. What says nothing of its glass loses nothing. */
function partFields(
  part: ChainPart,
  shot: WrittenShot,
): Readonly<Record<string, string | undefined>> {
  switch (part.kind) {
    case 'body': {
      const setting = flow({ ...RECORD, ...shot.record });
      return { 'flange-distance': mm(part.flangeMm), 'recording-modes': `{ setting: ${setting} }` };
    }
    case 'tube':
      return { length: mm(part.lengthMm) };
    case 'converter':
      return { factor: `${plain(part.factor)}x`, length: mm(part.lengthMm), loss: '0 stops' };
    case 'close-up':
      return {
        power: `${plain(part.powerDpt)} dpt`,
        length: part.lengthMm === undefined ? undefined : mm(part.lengthMm),
        loss: '0 stops',
      };
    case 'lens':
      return {
        'focal-length': mm(part.focalMm),
        length: mm(part.lengthMm),
        extends: mm(part.growsMm),
        'pupil-ratio': part.pupilRatio === undefined ? undefined : plain(part.pupilRatio),
        closest:
          part.closest &&
          flow({
            'from-sensor': mm(part.closest.fromSensorMm),
            magnification: `${plain(part.closest.magnification)}x`,
          }),
        loss: '0 stops',
        ...shot.lens,
      };
  }
}

/** One plan that holds all shots, `head` being further keys of the plan. */
export function writtenPlan(
  shots: Readonly<Record<string, WrittenShot>>,
  head: Readonly<Record<string, string>> = {},
): string {
  const kit = new Map<string, string[]>(Object.values(GROUPS).map((group) => [group, []]));
  const sections: Record<'rigs' | 'lights' | 'subjects' | 'shots', string[]> = {
    rigs: [],
    lights: [],
    subjects: [],
    shots: [],
  };
  for (const [name, shot] of Object.entries(shots)) {
    const parts = shot.parts.map((part, index) => {
      const its = `${name}-${part.kind}-${index}`;
      kit.get(GROUPS[part.kind])?.push(`    ${its}: ${flow(partFields(part, shot))}`);
      return its;
    });
    sections.rigs.push(`  ${name}-rig: { parts: [${parts.join(', ')}] }`);
    sections.subjects.push(`  ${name}-subject: ${flow(shot.subject ?? SUBJECT)}`);
    if (shot.light) sections.lights.push(`  ${name}-light: ${flow(shot.light)}`);
    const named = {
      subject: `${name}-subject`,
      rig: `${name}-rig`,
      record: 'setting',
      light: shot.light ? `[${name}-light]` : undefined,
    };
    sections.shots.push(`  ${name}: ${flow({ ...named, ...shot.fields })}`);
  }
  const lines = ['shootplan: 1', ...Object.entries(head).map(([key, value]) => `${key}: ${value}`)];
  lines.push('kit:');
  for (const [group, entries] of kit) if (entries.length > 0) lines.push(`  ${group}:`, ...entries);
  for (const [section, entries] of Object.entries(sections)) {
    if (entries.length > 0) lines.push(`${section}:`, ...entries);
  }
  const text = `${lines.join('\n')}\n`;
  // A plan that is not read as it is meant would check nothing.
  const misread = findingsOf(text).find(
    ({ rule, severity }) => severity === 'error' && ruleOfText.has(rule),
  );
  if (misread) throw new Error(`${misread.rule} at line ${misread.range.start.line + 1}`);
  return text;
}
