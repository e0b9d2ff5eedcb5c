/** A whole shot of what there is: each setting the best of what it could be, one after the other. */

import { isFlatMirror } from '../../figures/mirror-kind.ts';
import type { FileId } from '../../plan/place.ts';
import type { Ref } from '../../plan/ref.ts';
import type { Context } from '../../workspace/context.ts';
import { nearestField } from './first.ts';
import { apertures } from './marks.ts';
import { bestRecording } from './named.ts';
import { bestText, SETTINGS, tryText } from './settings.ts';
import { TrialShot } from './trial-shot.ts';

/**
 * Block YAML; null where there is no subject or no rig yet.
 * @param fieldMm width that the frame should take in, as near as the rig comes; left out: what
 *   subject and rig suggest
 */
export function newShot(context: Context, file: FileId, fieldMm?: number): string | null {
  const { names } = context.analysis;
  const [subject] = names.namesIn(file, 'subjects');
  const [rig] = names.namesIn(file, 'rigs');
  if (subject === undefined || rig === undefined) return null;
  const [light] = names.namesIn(file, 'lights');
  const lines = [`subject: ${subject}`, `rig: ${rig}`];
  let shot = TrialShot.blank(context, file)
    .with('subject', subject as Ref)
    .with('rig', rig as Ref);
  if (light !== undefined) shot = shot.with('light', listOf(shot, light));
  const record = bestRecording(shot);
  if (record !== undefined) shot = shot.with('record', record as Ref);
  const set = (
    key: 'field' | 'tilt' | 'shutter' | 'aperture' | 'iso' | 'white-balance',
    text?: string,
  ) => {
    const tried = text === undefined ? null : tryText(shot, key, text);
    if (!tried) return;
    shot = tried;
    lines.push(`${key}: ${text}`);
  };
  set('field', fieldMm === undefined ? SETTINGS.field?.first(shot) : nearestField(shot, fieldMm));
  set('shutter', SETTINGS.shutter?.first(shot));
  if (isFlatMirror(shot.now.bench)) {
    // How far it may be tilted follows from the depth, how much depth it needs from the tilt.
    const aperture = apertureForTilt(shot);
    set('aperture', aperture);
    if (aperture !== undefined) set('tilt', bestText(shot, 'tilt'));
  } else set('aperture', apertureOf(shot));
  set('iso', bestText(shot, 'iso'));
  if (record !== undefined) lines.push(`record: ${record}`);
  set('white-balance', SETTINGS['white-balance']?.first(shot));
  if (light !== undefined) lines.push(`light: [${light}]`);
  lines.push(`take: { duration: ${takeOf(shot)}, count: 3, settle: 5 s }`);
  return lines.join('\n');
}

/** The widest from f/8 on that leaves a tilt to choose; where none does, the usual one. */
function apertureForTilt(shot: TrialShot): string | undefined {
  const usual = SETTINGS.aperture?.first(shot);
  const least = usual === undefined ? 0 : numberOf(usual);
  const opens = apertures(shot).find((text) => {
    if (numberOf(text) < least) return false;
    const window = tryText(shot, 'aperture', text)?.now.figures.tiltWindow;
    return window?.known === true && window.value.openRad > ROOM_RAD;
  });
  return opens ?? usual;
}

/** Of a window of tilts: a degree, which a hand and a level can set. */
const ROOM_RAD = Math.PI / 180;

const numberOf = (text: string): number => Number.parseFloat(text.replace('f/', ''));

/** The usual one where it holds the depth, else the one that does best. */
function apertureOf(shot: TrialShot): string | undefined {
  const usual = SETTINGS.aperture?.first(shot);
  const tried = usual === undefined ? null : tryText(shot, 'aperture', usual);
  const holds = tried && (SETTINGS.aperture?.outcome(tried).rank ?? 1) < 0.3;
  return holds ? usual : bestText(shot, 'aperture');
}

function listOf(shot: TrialShot, light: string) {
  const at = shot.fields.light.at;
  return [{ state: 'known', value: light as Ref, at: { ...at, path: ['light', 0] } }] as never;
}

/** Twenty seconds, or what a film's life leaves. */
function takeOf(shot: TrialShot): string {
  const { lifeS } = shot.now.figures;
  const seconds = lifeS.known ? Math.max(5, Math.min(20, Math.floor(lifeS.value - 5))) : 20;
  return `${seconds} s`;
}
