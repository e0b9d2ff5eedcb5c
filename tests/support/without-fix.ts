/** Rules whose way out is a decision about the picture, or lies outside the text. */
export const WITHOUT_FIX: ReadonlySet<string> = new Set([
  'effective-aperture',
  'background-washes',
  'boom-may-tip',
  // Another lamp is to be had or not.
  'colour-rendering-low',
  'check-open',
  // Only who plans the shot knows the answer.
  'comment-unanswered',
  'duplicate-name',
  'head-overloaded',
  'holder-works-against',
  'hot-lamp-near-subject',
  'mains-near-liquid',
  'missing-key',
  'not-known',
  'overhead-load',
  'proxy-advised',
  'rule-failed',
  'shot-unused',
  'stand-overloaded',
  'too-much',
  'use-in-a-circle',
  'use-not-found',
  // What was not measured, nobody can write.
  'bench-says-nothing',
  // What a file on the disk is, no word in the plan changes.
  'clip-not-found',
  'clip-unreadable',
  'clip-differs',
  // A take is as it was shot.
  'take-off-plan',
  'clip-drifts',
  'clip-exposure',
  'clip-flickers',
  'clip-repeats',
  'clip-soft',
  'clip-sound',
]);
