/** What passes and what fails of the results that a shot's setting goes into, in words. */
import type { Figure } from '../../figures/figure.ts';
import { idOf } from '../../plan/entry-id.ts';
import type { FileId } from '../../plan/place.ts';
import { SHOT_RULES } from '../../rules/registry.ts';
import type { Finding } from '../../rules/rule.ts';
import type { ShotView } from '../../rules/shot-rule.ts';
import { inLanguage, later, message } from '../../words/message.ts';
import type { Context } from '../../workspace/context.ts';
import { withSeverities } from '../../workspace/severities.ts';
import { runShotRules } from '../../workspace/shot-findings.ts';
import { first } from './markdown.ts';

interface Topic {
  /** English; see `inLanguage`. */
  readonly words: string;
  /** The rules that judge it. */
  readonly rules: readonly string[];
  /** What they judge by: nothing passes that is not known. */
  readonly by: (shot: ShotView) => readonly Figure<unknown>[];
}

const TOPICS = {
  reach: {
    words: later`field in reach`,
    rules: ['field-out-of-reach'],
    by: ({ figures }) => [figures.reach, figures.magnification],
  },
  room: {
    words: later`working distance`,
    rules: ['no-room'],
    by: ({ figures }) => [figures.workingDistanceMm],
  },
  depth: {
    words: later`depth of field`,
    rules: ['depth-short'],
    by: ({ figures }) => [figures.usableDepthMm, figures.depthMm.needed],
  },
  stack: {
    words: later`stack`,
    rules: ['stack-short', 'stack-steps-too-coarse', 'stack-outlasts-subject', 'moves-in-stack'],
    by: ({ figures }) => [figures.stackFrames, figures.stackDepthMm],
  },
  detail: {
    words: later`fine detail`,
    rules: ['diffraction-eats-detail'],
    by: ({ figures }) => [figures.contrast],
  },
  exposure: {
    words: later`exposure`,
    rules: ['exposure-off', 'iso-out-of-range'],
    by: ({ bench: { iso }, figures }) => [
      iso.known && iso.value === 'auto' ? figures.isoNeeded : figures.exposureErrorStops,
    ],
  },
  shutter: {
    words: later`shutter speed`,
    rules: ['shutter-too-slow'],
    by: ({ bench, figures }) => [figures.shutterSeconds, bench.recordRate],
  },
  flicker: {
    words: later`flicker`,
    rules: ['lamp-flicker'],
    by: ({ figures }) => [figures.flickerResidual],
  },
  blur: {
    words: later`motion blur`,
    rules: ['motion-blur'],
    by: ({ figures }) => [figures.smearPx],
  },
  crossing: {
    words: later`time in the frame`,
    rules: ['crosses-too-fast'],
    by: ({ figures }) => [figures.crossingS],
  },
  drift: {
    words: later`focus over the move`,
    rules: ['focus-drifts'],
    by: ({ figures }) => [figures.travelMm, figures.usableDepthMm],
  },
  reflection: {
    words: later`reflection of the lens`,
    rules: ['lens-reflected'],
    by: ({ bench, figures }) => [figures.leastTiltRad, bench.tiltRad],
  },
  resolution: {
    words: later`resolution`,
    rules: ['smaller-than-delivery'],
    by: ({ bench }) => [bench.recordedPixels, bench.deliveredPixels],
  },
  film: {
    words: later`take within the film's lifetime`,
    rules: ['take-exceeds-lifetime'],
    by: ({ figures }) => [figures.shareOfLife],
  },
  interval: {
    words: later`interval`,
    rules: ['interval-does-not-fit'],
    by: ({ figures }) => [figures.intervalLeftS],
  },
} as const satisfies Record<string, Topic>;

type TopicName = keyof typeof TOPICS;

const OF_SIZE: readonly TopicName[] = ['reach', 'room', 'depth', 'exposure'];
const OF_MOVE: readonly TopicName[] = ['depth', 'drift', 'blur', 'crossing'];

/** By the first key below a shot. */
const OF_SETTING: Readonly<Record<string, readonly TopicName[]>> = {
  field: OF_SIZE,
  magnification: OF_SIZE,
  ring: OF_SIZE,
  aperture: ['depth', 'detail', 'exposure'],
  iso: ['exposure'],
  shutter: ['exposure', 'shutter', 'flicker', 'blur'],
  tilt: ['depth', 'reflection'],
  'tilt-axis': ['depth', 'reflection'],
  record: ['resolution', 'shutter', 'flicker'],
  move: OF_MOVE,
  'subject-speed': ['blur', 'crossing'],
  take: ['film', 'drift'],
  'time-lapse': ['interval'],
  stack: ['stack'],
};

/** How a topic stands, worst first. */
const STATES = ['fails', 'may-fail', 'note', 'accepted', 'passes'] as const;
type State = (typeof STATES)[number];

const SAID: Readonly<Record<State, (topics: string) => string>> = {
  fails: (topics) => message`Fails: ${topics}`,
  'may-fail': (topics) => message`May fail: ${topics}`,
  note: (topics) => message`Worth a look: ${topics}`,
  accepted: (topics) => message`Accepted in the plan: ${topics}`,
  passes: (topics) => message`Passes: ${topics}`,
};

/**
 * The verdict on a shot, or on what one of its settings decides; empty where nothing is judged: what
 * is not known, and what does not apply, neither passes nor fails.
 * @param setting the first key below the shot; left out: all of it
 */
export function verdictOn(
  context: Context,
  file: FileId,
  shot: ShotView,
  setting?: string,
): string {
  const id = idOf('shots', shot.bench.shot);
  const { analysis } = context;
  if (analysis.textFindings(file, id).some(({ severity }) => severity === 'error')) return '';
  const names = setting === undefined ? Object.keys(TOPICS) : (OF_SETTING[setting] ?? []);
  const topics = names.map((name): Topic => TOPICS[name as TopicName]);
  const told = tellsOf(context, file, shot);
  const byState = new Map<State, string[]>();
  for (const topic of topics) {
    const state = stateOf(topic, shot, told);
    if (state === null) continue;
    byState.set(state, [...(byState.get(state) ?? []), inLanguage(topic.words)]);
  }
  const said = STATES.flatMap((state) => {
    const words = byState.get(state);
    return words ? [SAID[state](words.join(', '))] : [];
  });
  const [worst, ...others] = said;
  return worst === undefined ? '' : first([`**${worst}**`, ...others].join(' · '));
}

interface Told {
  /** As they are shown, with how sure they are and the severity that the plan sets. */
  readonly shown: readonly Finding[];
  /** Names of rules that find something, accepted or not. */
  readonly found: ReadonlySet<string>;
  readonly accepted: ReadonlySet<string>;
}

function tellsOf({ analysis }: Context, file: FileId, shot: ShotView): Told {
  const findings = analysis
    .shotFindings(file, idOf('shots', shot.bench.shot))
    .map((one) => analysis.certain(one));
  const allowed = [shot.bench.fields.allow, analysis.reader(file).plan('allow')].flatMap((field) =>
    field.state === 'known' ? [...field.value.keys()] : [],
  );
  const judges = SHOT_RULES.filter(({ name }) => JUDGES.has(name));
  return {
    shown: withSeverities(findings, analysis.names.reaches(file), (one) => analysis.reader(one)),
    found: new Set(runShotRules(shot, judges).map(({ rule }) => rule)),
    accepted: new Set(allowed),
  };
}

const JUDGES: ReadonlySet<string> = new Set(
  Object.values(TOPICS).flatMap(({ rules }): readonly string[] => rules),
);

function stateOf(topic: Topic, shot: ShotView, told: Told): State | null {
  const shown = told.shown.filter(({ rule }) => topic.rules.includes(rule));
  const isSure = shown.filter(({ unsure }) => unsure === undefined);
  if (isSure.some(({ severity }) => severity === 'error' || severity === 'warning')) return 'fails';
  if (shown.length > isSure.length) return 'may-fail';
  if (shown.length > 0) return 'note';
  // What is found and not shown is accepted, or follows from a cause that is shown elsewhere.
  const found = topic.rules.filter((rule) => told.found.has(rule));
  if (found.some((rule) => !told.accepted.has(rule))) return 'fails';
  if (found.length > 0) return 'accepted';
  return topic.by(shot).every(({ known }) => known) ? 'passes' : null;
}
