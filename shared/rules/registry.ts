/**
 * Every rule, once. A rule that is not listed here does not run; a test in tests/tidy reports it.
 */

import { allowUnused } from './allow-unused.ts';
import { apertureNotOnLens } from './aperture-not-on-lens.ts';
import { backgroundWashes } from './background-washes.ts';
import { backlightTooSmall } from './backlight-too-small.ts';
import { batteryInTimeLapse } from './battery-in-time-lapse.ts';
import { batteryShort } from './battery-short.ts';
import { benchDiffers } from './bench-differs.ts';
import { benchSaysNothing } from './bench-says-nothing.ts';
import { betterRecordingMode } from './better-recording-mode.ts';
import { boomMayTip } from './boom-may-tip.ts';
import { cardTooSmall } from './card-too-small.ts';
import { checkMissing } from './check-missing.ts';
import { checkOpen } from './check-open.ts';
import { clipDiffers } from './clip-differs.ts';
import { clipDrifts } from './clip-drifts.ts';
import { clipExposure } from './clip-exposure.ts';
import { clipFlickers } from './clip-flickers.ts';
import { clipNotFound } from './clip-not-found.ts';
import { clipRepeats } from './clip-repeats.ts';
import { clipSoft } from './clip-soft.ts';
import { clipSound } from './clip-sound.ts';
import { clipTooLong } from './clip-too-long.ts';
import { clipUnreadable } from './clip-unreadable.ts';
import { colourOutOfRange } from './colour-out-of-range.ts';
import { colourRenderingLow } from './colour-rendering-low.ts';
import { commentUnanswered } from './comment-unanswered.ts';
import { crossesTooFast } from './crosses-too-fast.ts';
import { cutOutrunsClips } from './cut-outruns-clips.ts';
import { cutWithoutFrames } from './cut-without-frames.ts';
import { dayTooShort } from './day-too-short.ts';
import { depthShort } from './depth-short.ts';
import { diffractionEatsDetail } from './diffraction-eats-detail.ts';
import { durationDiffers } from './duration-differs.ts';
import { effectiveAperture } from './effective-aperture.ts';
import { exposureOff } from './exposure-off.ts';
import { fieldOutOfReach } from './field-out-of-reach.ts';
import { focusBreathes } from './focus-breathes.ts';
import { focusDrifts } from './focus-drifts.ts';
import { gradeSplits } from './grade-splits.ts';
import { growthJumps } from './growth-jumps.ts';
import { headOverloaded } from './head-overloaded.ts';
import { highlightClips } from './highlight-clips.ts';
import { holderWorksAgainst } from './holder-works-against.ts';
import { hotLampNearSubject } from './hot-lamp-near-subject.ts';
import { intervalDoesNotFit } from './interval-does-not-fit.ts';
import { isoOutOfRange } from './iso-out-of-range.ts';
import { joinWithoutHandles } from './join-without-handles.ts';
import { lampFlicker } from './lamp-flicker.ts';
import { lensReflected } from './lens-reflected.ts';
import { mainsNearLiquid } from './mains-near-liquid.ts';
import { measuredDiffers } from './measured-differs.ts';
import { smear } from './motion-blur.ts';
import { movesInStack } from './moves-in-stack.ts';
import { noRoom } from './no-room.ts';
import { notKnown } from './not-known.ts';
import { offTheBeat } from './off-the-beat.ts';
import { overheadLoad } from './overhead-load.ts';
import type { PlanRule } from './plan-rule.ts';
import { polariserIdle } from './polariser-idle.ts';
import { polariserTakesTheColour } from './polariser-takes-the-colour.ts';
import { proxyAdvised } from './proxy-advised.ts';
import { reframedTooFar } from './reframed-too-far.ts';
import { rigOrder } from './rig-order.ts';
import { rigPitches } from './rig-pitches.ts';
import type { RuleCore } from './rule.ts';
import { ruleFailed } from './rule-failed.ts';
import type { ShotRule } from './shot-rule.ts';
import { shotStartsLate } from './shot-starts-late.ts';
import { shotUnused } from './shot-unused.ts';
import { shutterTooSlow } from './shutter-too-slow.ts';
import { slowerThanRecorded } from './slower-than-recorded.ts';
import { smallerThanDelivery } from './smaller-than-delivery.ts';
import { sourceTooSmall } from './source-too-small.ts';
import { stackOutlastsSubject } from './stack-outlasts-subject.ts';
import { stackShort } from './stack-short.ts';
import { stackStepsTooCoarse } from './stack-steps-too-coarse.ts';
import { standOverloaded } from './stand-overloaded.ts';
import { takeExceedsLifetime } from './take-exceeds-lifetime.ts';
import { takeOffPlan } from './take-off-plan.ts';
import { duplicateName } from './text/duplicate-name.ts';
import { misreadScalar } from './text/misread-scalar.ts';
import { missingKey } from './text/missing-key.ts';
import { outsideTheProfile } from './text/outside-the-profile.ts';
import { syntax } from './text/syntax.ts';
import { unit } from './text/unit.ts';
import { unknownKey } from './text/unknown-key.ts';
import { unknownName } from './text/unknown-name.ts';
import { useInACircle } from './text/use-in-a-circle.ts';
import { useNotFound } from './text/use-not-found.ts';
import { usualSpelling } from './text/usual-spelling.ts';
import { wrongValue } from './text/wrong-value.ts';
import { timeLapseOnAuto } from './time-lapse-on-auto.ts';
import { tooMuch } from './too-much.ts';
import { unevenLight } from './uneven-light.ts';
import { unusedName } from './unused-name.ts';
import { vibrationSeen } from './vibration-seen.ts';
import { whiteBalanceAdrift } from './white-balance-adrift.ts';

/** Found while reading the text, its shape and its names. */
export const TEXT_RULES: readonly RuleCore<unknown>[] = [
  syntax,
  outsideTheProfile,
  misreadScalar,
  unit,
  unknownKey,
  missingKey,
  wrongValue,
  unknownName,
  duplicateName,
  useNotFound,
  useInACircle,
  usualSpelling,
];

/** Look at one shot with its rig, subject and light. */
export const SHOT_RULES: readonly ShotRule<unknown>[] = [
  fieldOutOfReach,
  apertureNotOnLens,
  effectiveAperture,
  rigOrder,
  noRoom,
  depthShort,
  diffractionEatsDetail,
  exposureOff,
  isoOutOfRange,
  highlightClips,
  unevenLight,
  shutterTooSlow,
  lampFlicker,
  colourOutOfRange,
  smear,
  crossesTooFast,
  vibrationSeen,
  focusDrifts,
  focusBreathes,
  movesInStack,
  stackShort,
  stackStepsTooCoarse,
  stackOutlastsSubject,
  polariserIdle,
  polariserTakesTheColour,
  lensReflected,
  sourceTooSmall,
  backgroundWashes,
  backlightTooSmall,
  takeExceedsLifetime,
  smallerThanDelivery,
  clipTooLong,
  intervalDoesNotFit,
  growthJumps,
  batteryInTimeLapse,
  timeLapseOnAuto,
  checkOpen,
  commentUnanswered,
  takeOffPlan,
];

/** Look at the plan as a whole, by a summary of each shot. */
export const PLAN_RULES: readonly PlanRule<unknown>[] = [
  notKnown,
  benchDiffers,
  benchSaysNothing,
  betterRecordingMode,
  checkMissing,
  measuredDiffers,
  unusedName,
  allowUnused,
  whiteBalanceAdrift,
  holderWorksAgainst,
  headOverloaded,
  standOverloaded,
  rigPitches,
  boomMayTip,
  overheadLoad,
  mainsNearLiquid,
  hotLampNearSubject,
  colourRenderingLow,
  cardTooSmall,
  batteryShort,
  slowerThanRecorded,
  cutOutrunsClips,
  cutWithoutFrames,
  joinWithoutHandles,
  offTheBeat,
  durationDiffers,
  gradeSplits,
  reframedTooFar,
  shotUnused,
  proxyAdvised,
  dayTooShort,
  shotStartsLate,
];

/** Rules about the clips on the disk, which run when clips are checked. */
export const CLIP_RULES: readonly RuleCore<unknown>[] = [
  clipNotFound,
  clipUnreadable,
  clipDiffers,
  clipRepeats,
  clipExposure,
  clipFlickers,
  clipSoft,
  clipDrifts,
  clipSound,
];

export const ALL_RULES: readonly RuleCore<unknown>[] = [
  ...TEXT_RULES,
  ...SHOT_RULES,
  ...PLAN_RULES,
  ...CLIP_RULES,
  tooMuch,
  ruleFailed,
];

const BY_NAME = new Map(ALL_RULES.map((rule) => [rule.name, rule]));

export const ruleNamed = (name: string): RuleCore<unknown> | undefined => BY_NAME.get(name);

/** Names of removed rules. They stay reserved, and plans that name them still check cleanly. */
export const RESERVED_NAMES: readonly string[] = ['not-read-yet'];

export const RULE_NAMES: readonly string[] = ALL_RULES.map((rule) => rule.name);
