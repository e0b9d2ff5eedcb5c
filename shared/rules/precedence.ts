/**
 * One cause gives one finding. If the first rule has a finding in a shot, the rules after it are
 * silent: they would repeat it, or use numbers that it shows to be wrong. Findings about the text
 * need no row, since a value that can't be read silences every rule that would read it.
 */
export const PRECEDENCE: Readonly<Record<string, readonly string[]>> = {
  // Nothing is in focus, so there is no picture to judge.
  'field-out-of-reach': [
    'no-room',
    'effective-aperture',
    'depth-short',
    'diffraction-eats-detail',
    'exposure-off',
    'iso-out-of-range',
    'highlight-clips',
    'lens-reflected',
    'source-too-small',
    'background-washes',
    'backlight-too-small',
    'motion-blur',
    'focus-drifts',
  ],
  // An f-number that can't be set has no effective aperture.
  'aperture-not-on-lens': [
    'effective-aperture',
    'depth-short',
    'diffraction-eats-detail',
    'exposure-off',
    'iso-out-of-range',
    'highlight-clips',
  ],
  // Pixels that aren't recorded can't be softened, and the recording mode has to change anyway.
  'smaller-than-delivery': ['better-recording-mode', 'diffraction-eats-detail'],
  // Frames that are missing make every other jump meaningless.
  'interval-does-not-fit': ['growth-jumps'],
  // Exposure, motion blur and flicker of a shutter that can't be recorded mean nothing.
  'shutter-too-slow': [
    'lamp-flicker',
    'exposure-off',
    'iso-out-of-range',
    'highlight-clips',
    'motion-blur',
  ],
  // The travel of the move is part of the depth of field needed: without it there may be enough.
  'focus-drifts': ['depth-short'],
  // A slower move is the remedy of both.
  'motion-blur': ['crosses-too-fast'],
  // Depth of field and detail conflict: the finding on depth of field states both and the compromise.
  'depth-short': ['diffraction-eats-detail'],
  // Another tilt is needed, or none works: depth of field and light at this one don't matter.
  'lens-reflected': ['depth-short', 'source-too-small'],
  // A stack of something that moves fails, whatever its frames.
  'moves-in-stack': ['stack-short', 'stack-steps-too-coarse', 'stack-outlasts-subject'],
  // Setting another ISO is part of the remedy.
  'exposure-off': ['highlight-clips'],
  'iso-out-of-range': ['exposure-off', 'highlight-clips'],
};

interface Ruled {
  readonly rule: string;
}

/** The findings of one shot without those that another's cause explains. */
export function withoutSilenced<T extends Ruled>(findings: readonly T[]): readonly T[] {
  if (findings.length < 2) return findings;
  const present = new Set(findings.map((finding) => finding.rule));
  const silenced = new Set<string>();
  for (const rule of present) for (const other of PRECEDENCE[rule] ?? []) silenced.add(other);
  return silenced.size === 0 ? findings : findings.filter((finding) => !silenced.has(finding.rule));
}
