import { message } from '../words/message.ts';
import { openChecks } from './checks-called-for.ts';
import type { ShotRule } from './shot-rule.ts';

interface Facts {
  readonly checks: readonly string[];
}

export const checkOpen: ShotRule<Facts> = {
  name: 'check-open',
  severity: 'warning',
  docs: {
    when: 'a shot has clips while its checks are still open.',
    why: 'Either the check was skipped, and the clips need a review, or it was done and not recorded.',
    remedy:
      'Review the clips for the problem that the check prevents. Then record who did the check and when.',
    bad: [
      {
        says: 'clips, but focus never checked',
        change: {
          'shots/frost/preflight': '{ focus-at-full-size: open }',
          clips: '{ frost: [{ file: media/0001.mp4 }] }',
        },
      },
    ],
    good: [
      {
        says: 'checked before the clips were recorded',
        change: {
          'preflight/every-shot': '[focus-at-full-size]',
          'preflight/once': '{ card-and-battery: { done: 2027-03-02 } }',
          'shots/frost/preflight': '{ focus-at-full-size: { done: 2027-03-02, by: op } }',
          'shots/frost/allow': '{ check-missing: { because: a test clip } }',
          clips: '{ frost: [{ file: media/0001.mp4 }] }',
        },
      },
    ],
  },
  check({ bench }) {
    if (!bench.hasClips) return [];
    const open = openChecks(bench);
    if (open.length === 0) return [];
    const at = bench.fields.preflight.at;
    return [{ at: { ...at, part: 'key' as const }, facts: { checks: open } }];
  },
  words: ({ checks }) => ({
    what:
      checks.length === 1
        ? message`Clips were recorded with a check open: ${checks.join()}.`
        : message`Clips were recorded with ${checks.length} checks open: ${checks.slice(0, 2).join(', ')}${checks.length > 2 ? message` and ${checks.length - 2} more` : ''}.`,
    ...(checks.length > 2 && { why: message`All of them: ${checks.join(', ')}.` }),
  }),
  beyond(now, then) {
    const checks = now.checks.filter((name) => !then.checks.includes(name));
    return checks.length > 0 ? { checks } : null;
  },
  numbers: ({ checks }) => ({ open: checks.length }),
};
