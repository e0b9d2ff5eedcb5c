/** What the rules are for, by topic, as the head of their reference lists them. */
export const RULE_TOPICS: readonly (readonly [topic: string, rules: readonly string[]])[] = [
  [
    'The text is a plan',
    ['syntax', 'misread-scalar', 'unit', 'unknown-key', 'wrong-value', 'unknown-name'],
  ],
  [
    'The rig reaches the field, with working distance',
    [
      'field-out-of-reach',
      'no-room',
      'aperture-not-on-lens',
      'effective-aperture',
      'rig-order',
      'measured-differs',
      'bench-differs',
      'bench-says-nothing',
    ],
  ],
  [
    'It is sharp where it has to be',
    ['depth-short', 'diffraction-eats-detail', 'stack-short', 'stack-steps-too-coarse'],
  ],
  [
    'The light is right and steady',
    [
      'exposure-off',
      'iso-out-of-range',
      'shutter-too-slow',
      'lamp-flicker',
      'white-balance-adrift',
      'colour-out-of-range',
      'colour-rendering-low',
    ],
  ],
  [
    'Mirror-like subjects reflect the light and not the lens',
    [
      'lens-reflected',
      'source-too-small',
      'background-washes',
      'polariser-idle',
      'polariser-takes-the-colour',
    ],
  ],
  ['The liquid film lasts', ['take-exceeds-lifetime', 'holder-works-against']],
  [
    'Moving subjects stay sharp',
    ['motion-blur', 'focus-drifts', 'focus-breathes', 'moves-in-stack', 'stack-outlasts-subject'],
  ],
  [
    'Supports carry the rig',
    ['head-overloaded', 'stand-overloaded', 'rig-pitches', 'boom-may-tip'],
  ],
  [
    'Safety hazards are pointed out',
    ['overhead-load', 'mains-near-liquid', 'hot-lamp-near-subject'],
  ],
  ['Cards and batteries suffice', ['card-too-small', 'clip-too-long', 'battery-short']],
  [
    'The takes cover the edit',
    [
      'slower-than-recorded',
      'cut-outruns-clips',
      'cut-without-frames',
      'join-without-handles',
      'off-the-beat',
      'duration-differs',
      'grade-splits',
      'reframed-too-far',
      'shot-unused',
      'proxy-advised',
    ],
  ],
  ['The shots fit into the day', ['day-too-short', 'shot-starts-late']],
  [
    'The clips match the plan',
    [
      ...['clip-not-found', 'clip-differs', 'clip-unreadable', 'clip-repeats', 'clip-exposure'],
      ...['clip-flickers', 'clip-soft', 'clip-drifts', 'clip-sound'],
    ],
  ],
  [
    'The take can be used',
    [
      'smaller-than-delivery',
      'better-recording-mode',
      'check-missing',
      'check-open',
      'comment-unanswered',
    ],
  ],
];
