/**
 * All figures of the edit and of its cuts, by their keys in the JSON and in its order. A key of the
 * contract that is forgotten here doesn't compile, nor one that it doesn't have.
 */
import { ifKnown } from '../../plan/field.ts';
import { framesWords, secondsWords, speedWords } from '../../say/timeline.ts';
import { toNumber } from '../../timeline/exact.ts';
import { timecode } from '../../timeline/timecode.ts';
import { later, message } from '../../words/message.ts';
import type { CutFigures, EditFigures } from '../edit-figures.ts';
import type { CutJson, EditJson } from '../edit-json.ts';
import { derive, type Figure, known, notKnown, silent } from '../figure.ts';

/** How a change of it is told. `null`: to programs only. */
export interface Compared<V> {
  readonly label: string;
  readonly words: (value: V) => string;
}

interface EditDeclared<F extends readonly unknown[], V> {
  readonly of: (...from: F) => Figure<V | null>;
  /** Left out: a comparison of two plans leaves it out. */
  readonly compared?: Compared<V> | null;
}

type Declared<J, Given extends keyof J, F extends readonly unknown[]> = {
  readonly [K in Exclude<keyof J, Given | 'notKnown'>]: EditDeclared<F, NonNullable<J[K]>>;
};

type Speed = NonNullable<CutJson['speed']>;

const NO_TIMECODE = later`the rate has no timecode`;

const frames = (value: number): string => framesWords(Number(value.toFixed(1)));

const told = <F extends readonly unknown[], V>(
  of: EditDeclared<F, V>['of'],
  compared?: Compared<V> | null,
): EditDeclared<F, V> => ({ of, ...(compared !== undefined && { compared }) });

export const EDIT: Declared<EditJson, 'cuts', [EditFigures]> = {
  rateFps: told(({ rate }) => derive([rate], ({ n, d }) => n / d)),
  totalFrames: told(({ totalFrames }) => totalFrames, {
    label: later`length of the edit`,
    words: frames,
  }),
  totalS: told(({ totalFrames, rate }) =>
    derive([totalFrames, rate], (count, fps) => (count * fps.d) / fps.n),
  ),
  // The length says it to people.
  totalTimecode: told(
    ({ totalFrames, rate }) =>
      derive([totalFrames, rate], (count, fps) => timecode(count, fps) ?? notKnown(NO_TIMECODE)),
    null,
  ),
  framesPerBeat: told(({ music, rate }) =>
    derive([music, rate], ({ tempo }, fps) => (60 * fps.n) / fps.d / toNumber(tempo)),
  ),
};

export const CUT: Declared<CutJson, never, [CutFigures, EditFigures]> = {
  cut: told(({ name }) => known(name)),
  shot: told(({ shot }) => known(shot)),
  startFrame: told(({ track }) => derive([track], ({ startFrame }) => startFrame), {
    label: later`begins at frame`,
    words: String,
  }),
  startTimecode: told(({ track }, { rate }) =>
    derive(
      [track, rate],
      ({ startFrame }, fps) => timecode(startFrame, fps) ?? notKnown(NO_TIMECODE),
    ),
  ),
  durationFrames: told(
    ({ track }) => derive([track], ({ startFrame, endFrame }) => endFrame - startFrame),
    { label: later`length`, words: frames },
  ),
  durationS: told(({ lengthS }) => derive([lengthS], toNumber)),
  speed: told(
    ({ speed }) => derive([speed], ({ from, to }): Speed => [toNumber(from), toNumber(to)]),
    { label: later`speed`, words: speedWords },
  ),
  // Its own speed and the recording of its shot say it to people.
  realSpeed: told(
    ({ realSpeed }) => derive([realSpeed], ({ from, to }): Speed => [from, to]),
    null,
  ),
  slowestSpeedWithoutRepeats: told(({ slowestWithoutRepeats }) =>
    derive([slowestWithoutRepeats], toNumber),
  ),
  repeatsFrames: told(({ repeatsFrames }) => repeatsFrames, {
    label: later`repeats frames`,
    words: (does) => (does ? message`yes` : message`no`),
  }),
  sourceS: told(({ sourceS }) => derive([sourceS], toNumber), {
    label: later`clip used`,
    words: secondsWords,
  }),
  clip: told(({ laid }) => derive([laid], ({ clip }) => clip + 1)),
  clipFile: told(({ clipFile }) => known(clipFile)),
  sourceStartS: told(({ laid, sourceS, footage }) =>
    derive([laid, footage?.isHeld ? sourceS : laid], ({ start }) => toNumber(start)),
  ),
  sourceEndS: told(({ laid, sourceS, footage }) =>
    derive([laid, footage?.isHeld ? sourceS : laid], ({ end }) => toNumber(end)),
  ),
  fromBeatFrames: told(({ fromBeatFrames }) => fromBeatFrames, {
    label: later`from the beat`,
    words: frames,
  }),
  dissolveFrames: told(({ join }) => derive([join], ({ before, after }) => before + after)),
  handleBeforeNeededFrames: told(({ handleBefore }) =>
    derive([handleBefore], ({ neededFrames }) => neededFrames),
  ),
  handleBeforeThereFrames: told(({ handleBefore }) =>
    derive([handleBefore], ({ thereFrames }) => thereFrames),
  ),
  handleAfterNeededFrames: told(({ handleAfter }) =>
    derive([handleAfter], ({ neededFrames }) => neededFrames),
  ),
  handleAfterThereFrames: told(({ handleAfter }) =>
    derive([handleAfter], ({ thereFrames }) => thereFrames),
  ),
  holdsPicture: told(({ footage }) => (footage ? known(footage.isHeld) : silent), null),
  uncoveredFrames: told(({ uncoveredFrames }) => uncoveredFrames, {
    label: later`not covered by a clip`,
    words: frames,
  }),
  reframe: told(({ fields }) => {
    const factor: number | undefined = fields ? ifKnown(fields.reframe) : undefined;
    return known(factor ?? null);
  }),
  grade: told(({ fields }) => known((fields && ifKnown(fields.grade)) ?? null)),
  about: told(({ fields }) => known((fields && ifKnown(fields.about)) ?? null)),
};
