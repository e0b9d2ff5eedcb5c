/** Makes long answers in slices. Trials in between leave the plan as it was, edits don't. */
import type { Making } from '../api/making.ts';
import type { Steps } from '../engine/steps.ts';
import type { Trials } from './trials.ts';

/** @param begin its steps must not keep what they have read past a change of the plan */
export function making<T>(trials: Trials, begin: () => Steps<T>): Making<T> {
  let steps = begin();
  let version = trials.version;
  return {
    work(until) {
      if (version !== trials.version) {
        steps = begin();
        version = trials.version;
      }
      for (;;) {
        const { done, value } = steps.next();
        if (done) return { answer: value };
        if (until()) return null;
      }
    },
  };
}
