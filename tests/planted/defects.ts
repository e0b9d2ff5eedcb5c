/** Single defects, as a tired hand makes them, planted one at a time into a plan that is right. */

import { SHAPES } from '../../shared/plan/generated/shapes.ts';

export interface Defect {
  readonly kind: string;
  /** The line it stands on, from 0. */
  readonly line: number;
  readonly text: string;
  /** Rules one of which has to say so, there. */
  readonly rules: readonly string[];
  /** Of which shot, where it stands in one. */
  readonly shot: string | undefined;
}

const KEY = /^( +)([a-z][a-z0-9-]*): (.*)$/;
/** A quantity that stands alone behind its key, with a unit that it can't do without. */
const LENGTH = /^[0-9.]+ mm$/;
/** Keys of the language; other keys are names of the plan's own. */
const KEYS = new Set(Object.values(SHAPES).flatMap(({ keys }) => Object.keys(keys)));
const REFERENCE = new Set(['subject', 'rig', 'record']);
const REQUIRED_IN_SHOTS = new Set(['subject', 'rig']);

/** All defects of one plan. */
export function defectsOf(plan: string): Defect[] {
  const lines = plan.split('\n');
  const defects: Defect[] = [];
  let section = '';
  let entry = '';
  lines.forEach((line, index) => {
    if (/^[a-z]/.test(line)) section = line.slice(0, line.indexOf(':'));
    if (/^ {2}[a-z][a-z0-9-]*:/.test(line)) entry = line.trim().slice(0, line.trim().indexOf(':'));
    const shot = section === 'shots' ? entry : undefined;
    const plant = (kind: string, written: string | null, rules: readonly string[]) => {
      const text = [
        ...lines.slice(0, index),
        ...(written === null ? [] : [written]),
        ...lines.slice(index + 1),
      ].join('\n');
      defects.push({ kind, line: index, text, rules, shot });
    };
    const match = KEY.exec(line.replace(/ +#.*$/, ''));
    if (!match) {
      if (/^ +parts: \[/.test(line)) return;
      return;
    }
    const [, indent = '', key = '', value = ''] = match;
    if (section === 'preflight' || key === 'about' || key === 'title') return;
    if (LENGTH.test(value)) {
      plant('wrong unit', `${indent}${key}: ${value.replace('mm', 'kg')}`, ['unit']);
      plant('no unit', `${indent}${key}: ${value.replace(' mm', '')}`, ['unit']);
      plant(
        'decimal comma',
        `${indent}${key}: ${value.replace(/^([0-9]+)\.?/, '$1,')}`.replace(', mm', ',5 mm'),
        ['misread-scalar'],
      );
    }
    // One letter less may be another name that is there.
    const isThere = lines.some((other) => other.trim().startsWith(`${value.slice(0, -1)}:`));
    if (/^[a-z]/.test(value) && REFERENCE.has(key) && !isThere)
      plant('misspelt name', `${indent}${key}: ${value.slice(0, -1)}`, ['unknown-name']);
    if (key === 'parts') {
      const parts = /\[(.*)\]/.exec(value)?.[1]?.split(', ') ?? [];
      if (parts.length > 1)
        plant('exchanged order', `${indent}${key}: [${[...parts].reverse().join(', ')}]`, [
          'wrong-value',
        ]);
    }
    if (key.length > 3 && KEYS.has(key) && indent.length >= (section === 'kit' ? 6 : 4)) {
      const slip = key.slice(0, 2) + key.charAt(3) + key.charAt(2) + key.slice(4);
      if (slip !== key) plant('misspelt key', `${indent}${slip}: ${value}`, ['unknown-key']);
    }
    if (!/["'[{|>]/.test(value)) plant('unclosed quote', `${indent}${key}: "${value}`, ['syntax']);
    plant('tab', `\t${line.trim()}`, ['syntax']);
    if (shot !== undefined && REQUIRED_IN_SHOTS.has(key))
      plant('removed key', null, ['missing-key']);
    if (shot !== undefined && ['shutter', 'iso', 'light', 'record'].includes(key))
      plant('removed key', null, ['not-known']);
    if (key === 'aperture' && shot !== undefined)
      plant(
        'a decade off',
        `${indent}${key}: ${value.replace(/f\/([0-9.]+)/, (_, n) => `f/${Number(n) * 10}`)}`,
        ['aperture-not-on-lens'],
      );
    if (key === 'field' && shot !== undefined)
      plant('a decade off', `${indent}${key}: ${Number.parseFloat(value) / 10} mm`, [
        'field-out-of-reach',
      ]);
    if (key === 'iso' && shot !== undefined)
      plant('a decade off', `${indent}${key}: ${Number(value) * 10}`, [
        'exposure-off',
        'iso-out-of-range',
      ]);
    if (key === 'shutter' && shot !== undefined)
      plant(
        'a decade off',
        `${indent}${key}: ${value.replace(/1\/([0-9]+)/, (_, n) => `1/${Number(n) / 10}`)}`,
        ['shutter-too-slow'],
      );
    if (key === 'tilt' && shot !== undefined)
      plant('a decade off', `${indent}${key}: ${Number.parseFloat(value) / 10} deg`, [
        'lens-in-the-mirror',
        'source-too-small',
      ]);
    if (section === 'subjects' && key === 'lasts')
      plant('a mirror’s number', `${indent}${key}: ${Number.parseFloat(value) / 10} s`, [
        'outlasts-the-film',
      ]);
    if (section === 'subjects' && key === 'background')
      plant('a mirror’s number', `${indent}${key}: ${Number.parseFloat(value) * 1000} cd/m2`, [
        'background-washes',
      ]);
    if (section === 'subjects' && key === 'holder')
      plant('a mirror’s number', `${indent}${key}: smooth container`, ['holder-works-against']);
    const isShown = lines.slice(index, index + 6).some((other) => other.includes('luminance:'));
    if (section === 'lights' && key === 'at' && /up: /.test(value) && isShown)
      plant(
        'a mirror’s number',
        `${indent}${key}: ${value.replace(/up: [0-9.]+ deg/, 'up: 75 deg')}`,
        ['source-too-small'],
      );
  });
  return defects;
}
